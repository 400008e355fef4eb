//! The two faces, with a scripted call behind them.

// Helpers outside a `#[test]` may fail a test too.
#![allow(clippy::unwrap_used)]

mod crowded;
mod hostile;
mod keys;
mod marks;
mod scene;
mod screens;
mod spoken;
mod terminal;
mod updates;
