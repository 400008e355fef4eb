//! How many calls a second a core walks: whole calls at simulated furnaces, and what of that the furnace and the walk take.
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

use clock::timed;
use proofwalk::bench::condition::Condition;
use proofwalk::bench::dice::{Dice, seed_of};
use proofwalk::bench::faults;
use proofwalk::bench::furnace::Furnace;
use proofwalk::bench::make::Make;
use proofwalk::bench::simulated::{Probes, Simulated};
use proofwalk::bench::told::Told;
use proofwalk::bench::trials::{Door, Subject, play, walk};
use proofwalk::library::{Library, load};
use proofwalk::source::Files;
use proofwalk::store::read_library;

fn main() {
    let at_length = std::env::args().any(|argument| argument == "--bench");
    let rounds = if at_length { 100 } else { 1 };
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("trees");
    let files = read_library(&root).expect("the built-in library can be read");
    let (library, problems) = load(Files::new(files));
    assert!(problems.is_empty(), "{problems:?}");
    println!(
        "{:32} {:>8} {:>10} {:>10} {:>10}",
        "", "calls", "us a call", "a second", "of whole"
    );
    let whole = row("whole calls, every fault", None, || whole(&library, rounds));
    row("furnaces alone, run once", Some(whole), || furnaces(rounds));
    row("walks alone, from worked calls", Some(whole), || {
        worked(&library, rounds)
    });
}

/// A line: how long so many calls took on one processor, and beside a whole call; microseconds a call.
fn row(what: &str, whole: Option<f64>, work: impl FnOnce() -> usize) -> f64 {
    let (calls, took) = timed(work);
    let each = took.as_secs_f64() * 1e6 / calls as f64;
    let of_whole = each / whole.unwrap_or(each);
    println!(
        "{what:32} {calls:8} {each:10.1} {:10.0} {of_whole:10.2}",
        1e6 / each
    );
    each
}

/// Calls with every fault, from the drawn furnace to the judged verdict.
fn whole(library: &Library, rounds: u64) -> usize {
    let probes = Probes::of(library);
    let build = |make, condition| Simulated::new(&probes, Furnace { make, condition });
    let mut calls = 0;
    for fault in faults::all() {
        for seed in 0..rounds {
            let played = play(library, Subject::One(fault), seed, build).expect("it can be walked");
            calls += usize::from(played.is_some());
        }
    }
    calls
}

/// Furnaces with every fault, drawn and run through a call.
fn furnaces(rounds: u64) -> usize {
    let mut calls = 0;
    for fault in faults::all() {
        for seed in 0..rounds {
            let make = Make::random(seed_of(&[seed]));
            let mut condition = Condition::default();
            (fault.strike)(&mut condition, &make, Dice::new(seed).share());
            std::hint::black_box(Furnace { make, condition }.run());
            calls += 1;
        }
    }
    calls
}

/// Every worked call, each time with meters that err otherwise.
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
