//! What a diagnosis costs: the algorithms against outside values and brute force, and libraries against figures by hand.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "what tests share stops the test, as the tests do"
)]

mod built_in;
mod library;
mod random;
mod reference;
