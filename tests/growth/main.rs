//! Reading, resolving, checking and walking take memory in proportion to a library's size.
//!
//! Allocations are counted, not seconds: the count is the same on every machine, and work that grows with the square of a
//! library nearly always asks for memory as often. They are counted for the whole process, so this is its only test.

#![allow(
    clippy::unwrap_used,
    reason = "helpers of tests stop the test, as the tests do"
)]

#[path = "../common/made/mod.rs"]
mod made;

use std::alloc::System;

use proofwalk::walk::{self, LibraryMark, Opened, State};
use proofwalk::{check, library};
use stats_alloc::{INSTRUMENTED_SYSTEM, Region, StatsAlloc};

use made::Shape;

#[global_allocator]
static ALLOCATOR: &StatsAlloc<System> = &INSTRUMENTED_SYSTEM;

/// How much larger the large library of each shape is than the small one.
const LARGER: usize = 8;

/// How many times the work that may be: lists grow by doubling, which is not seen evenly. The square would be 64 times.
const MOST: f64 = 12.0;

#[test]
fn eight_times_the_library_is_about_eight_times_the_work() {
    let mut wrong = Vec::new();
    for shape in Shape::ALL {
        let (small, large) = (phases(shape, 300), phases(shape, LARGER * 300));
        for ((phase, small), (_, large)) in small.into_iter().zip(large) {
            assert!(small.pieces > 0.0, "{shape:?}, {phase}");
            let (pieces, bytes) = (large.pieces / small.pieces, large.bytes / small.bytes);
            if pieces > MOST || bytes > MOST {
                wrong.push(format!(
                    "{shape:?}, {phase}: {pieces:.1} times the pieces, {bytes:.1} times the bytes"
                ));
            }
        }
    }
    assert_eq!(wrong, Vec::<String>::new());
}

/// What a piece of work asked the allocator for.
struct Asked {
    pieces: f64,
    bytes: f64,
}

fn phases(shape: Shape, size: usize) -> [(&'static str, Asked); 4] {
    let files = made::library(shape, size);
    let (written, read) = counted(|| library::read(files));
    let ((library, problems), resolve) = counted(|| written.resolve());
    let (found, check) = counted(|| check::run(&library, &problems));
    assert_eq!(made::faults(shape, found), [], "{shape:?}");
    let state = opened(&library);
    let (_, show) = counted(|| (walk::ask(&library, &state), walk::standing(&library, &state)));
    [
        ("read", read),
        ("resolve", resolve),
        ("check", check),
        ("show", show),
    ]
}

fn counted<T>(work: impl FnOnce() -> T) -> (T, Asked) {
    let region = Region::new(ALLOCATOR);
    let done = work();
    let asked = region.change();
    let asked = Asked {
        pieces: (asked.allocations + asked.reallocations) as f64,
        bytes: asked.bytes_allocated as f64,
    };
    (done, asked)
}

/// The first question of a call in the first tree that has a complaint.
fn opened(library: &library::Library) -> State {
    let mut trees = library.trees.iter();
    let (_, tree) = trees.find(|(_, tree)| tree.complaint.is_some()).unwrap();
    let opened = Opened {
        library: LibraryMark::default(),
        tree: tree.name.clone(),
        technician: None,
        site: None,
        equipment: None,
        program: String::new(),
        answered_from: None,
    };
    let mut state = State::default();
    for event in walk::open(library, opened).unwrap() {
        walk::apply(library, &mut state, &event).unwrap();
    }
    state
}
