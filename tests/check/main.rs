//! What the checker says about a library: each rule's findings, their places and their whole wording.

mod bands;
mod graph;
mod library;
mod names;
mod pages;
mod report;
mod text;
