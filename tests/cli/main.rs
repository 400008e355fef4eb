//! The program as its user runs it, without a terminal.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "what tests share stops the test, as the tests do"
)]

mod answers;
mod asking;
mod benching;
mod broken_sessions;
mod calls;
mod checking;
mod classes;
#[path = "../common/mod.rs"]
mod common;
mod disk;
mod formulas;
mod ids;
mod overlays;
mod packing;
mod papers;
mod practising;
mod reading;
mod rehearsing;
mod schemas;
mod season;
mod streams;
mod watching;
mod which;
