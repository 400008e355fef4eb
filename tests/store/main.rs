//! Session files and tree files, by what can happen to them.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "what tests share stops the test, as the tests do"
)]

mod chain;
mod child;
mod disk;
mod hostile_files;
mod hostile_folders;
mod kept;
mod killed;
mod lines;
mod listing;
mod lock;
mod packs;
mod rewriting;
mod room;
mod support;
mod torn;
mod tree_files;
