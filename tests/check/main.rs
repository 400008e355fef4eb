//! What the checker says about a library: each rule's findings, their places and their whole wording.

// Helpers of tests stop a test as an assertion would.
#![allow(clippy::unwrap_used)]

mod bands;
mod graph;
mod library;
mod names;
mod pages;
mod random_bands;
mod report;
mod text;
