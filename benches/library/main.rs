//! How long it takes to read and check a library, beside parsing its files and nothing else.
//!
//! `cargo bench` runs every size; without cargo's `--bench` only the smallest are run, to see that they do.

#![allow(
    clippy::expect_used,
    clippy::panic,
    missing_docs,
    reason = "a benchmark that cannot go on stops"
)]

#[path = "../../tests/common/made/mod.rs"]
mod made;

mod clock;
mod once;
mod opening;
mod ratio;
mod tables;
mod yardstick;

use made::Shape;

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    match arguments.as_slice() {
        [first, shape, size] if first == once::CHILD => {
            once::in_this_process(shape, size.parse().expect("a number"));
        }
        all if all.iter().any(|one| one == "--bench") => {
            ratio::table(27_000);
            tables::growth(&[1_000, 10_000, 100_000, 1_000_000]);
            tables::shapes(&[
                (Shape::OneTree, 100_000),
                (Shape::Chain, 1_000_000),
                (Shape::Visits, 10_000),
                (Shape::Choices, 10_000),
                (Shape::Bands, 5_000),
                (Shape::Readings, 100_000),
                (Shape::Loops, 100_000),
                (Shape::Limits, 20_000),
            ]);
            opening::table(&[1_000, 10_000, 100_000]);
        }
        _ => {
            ratio::table(500);
            tables::growth(&[500, 1_000]);
            tables::shapes(&[(Shape::Chain, 1_000), (Shape::Visits, 100)]);
            opening::table(&[500]);
        }
    }
}
