//! Reading and checking a library takes time and memory in proportion to its size, whatever its shape.

#![allow(
    clippy::unwrap_used,
    reason = "helpers of tests stop the test, as the tests do"
)]

#[path = "../common/made/mod.rs"]
mod made;

mod deep;
mod hard;
mod sound;
