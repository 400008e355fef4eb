//! The audit: calls with known truth in, exact counts out.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "what tests share stops the test, as the tests do"
)]

mod alike;
mod by_hand;
mod closing;
#[path = "../common/mod.rs"]
mod common;
mod exported;
mod files;
mod findings;
mod index;
mod index_changes;
mod lines;
mod pages;
mod printed;
mod proofs;
mod replay;
mod said;
mod same_visit;
mod season;
mod settled;
mod told;
mod windows;
mod written;
