//! The program in a terminal: a pseudo-terminal, tmux, and a line over SSH.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "what tests share stops the test, as the tests do"
)]

#[path = "../common/mod.rs"]
mod common;
mod practice;
mod pty;
mod screens;
mod seat;
mod signals;
mod sizes;
mod ssh;
mod tmux;
mod tools;
