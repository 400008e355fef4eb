//! The picture of a tree: that it says everything once, that nothing in it overlaps, and that other programs read it.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "what tests share stops the test, as the tests do"
)]

mod command;
#[path = "../common/mod.rs"]
mod common;
mod content;
mod graphviz;
mod hostile;
mod large;
mod letters;
mod libraries;
mod part;
mod room;
mod sheet;
mod small;
#[path = "../terminal/tools.rs"]
mod tools;
