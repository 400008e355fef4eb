//! The program in a terminal: a pseudo-terminal, tmux, and a line over SSH.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "what tests share stops the test, as the tests do"
)]

mod pty;
mod screens;
mod seat;
#[path = "../shared/mod.rs"]
mod shared;
mod signals;
mod sizes;
mod ssh;
mod tmux;
mod tools;
