//! How many calls a second a core walks: the walk alone, answered from worked calls.
//!
//! `cargo bench --bench calls` runs it at length; without cargo's `--bench` only once, to see that it does.

#![allow(
    clippy::expect_used,
    clippy::panic,
    missing_docs,
    reason = "a benchmark that cannot go on stops"
)]

#[path = "../library/clock.rs"]
mod clock;

use std::path::Path;
use std::time::Duration;

use clock::timed;
use proofwalk::bench::dice::Dice;
use proofwalk::bench::told::Told;
use proofwalk::bench::trials::{Door, walk};
use proofwalk::library::{Library, load};
use proofwalk::source::Files;
use proofwalk::store::read_library;

fn main() {
    let at_length = std::env::args().any(|argument| argument == "--bench");
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("trees");
    let files = read_library(&root).expect("the built-in library can be read");
    let (library, problems) = load(Files::new(files));
    assert!(problems.is_empty(), "{problems:?}");
    println!("{:28} {:>8} {:>12} {:>10}", "", "calls", "us a call", "a second");
    let rounds = if at_length { 200 } else { 1 };
    row("walk alone, worked calls", || worked(&library, rounds));
}

/// A line: how long so many calls took on one processor.
fn row(what: &str, work: impl FnOnce() -> usize) {
    let (calls, took): (usize, Duration) = timed(work);
    let each = took.as_secs_f64() / calls as f64;
    println!("{what:28} {calls:8} {:12.1} {:10.0}", each * 1e6, 1.0 / each);
}

/// Walks every worked call so often, each time with meters that err otherwise.
fn worked(library: &Library, rounds: u64) -> usize {
    for seed in 0..rounds {
        for scenario in &library.scenarios {
            let tree = &library.trees[scenario.tree].name;
            let mut machine = Told::new(library, scenario);
            walk(library, tree, Door::Tree, &mut machine, Dice::new(seed)).expect("it can be walked");
        }
    }
    rounds as usize * library.scenarios.len()
}
