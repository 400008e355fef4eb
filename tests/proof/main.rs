//! The checker's proof and the walk's guard, held against each other: random libraries, random answers.

#![allow(
    clippy::unwrap_used,
    reason = "helpers of tests stop the test, as the tests do"
)]

mod agree;
mod library;
mod tape;
mod ways;
