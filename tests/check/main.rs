//! What the checker says about a library: each rule's findings, their places and their whole wording.

#![allow(
    clippy::unwrap_used,
    reason = "helpers of tests stop the test, as the tests do"
)]

mod bands;
mod graph;
mod library;
mod names;
mod pages;
mod random_bands;
mod release;
mod report;
mod sarif;
#[path = "../common/schemas.rs"]
mod schemas;
mod text;
mod unused;
mod worth;
