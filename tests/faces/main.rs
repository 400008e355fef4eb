//! The two faces, with a scripted call behind them.

mod hostile;
mod keys;
mod scene;
mod screens;
mod transcript;
mod updates;
