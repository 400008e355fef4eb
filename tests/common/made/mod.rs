//! Libraries made to measure: any number of steps, of one shape or of a mix like the built-in library's.
//!
//! Each is sound, and made of nothing but its shape and size: the same ones give the same bytes on every machine.

#![allow(
    dead_code,
    reason = "what one of the programs that share this leaves unused, another uses"
)]

mod blocks;
mod dice;
mod mixed;
mod registry;
mod shapes;

use proofwalk::source::{Diagnostic, Files, SourceFile};

/// What a library is like.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// Trees of some hundred steps of every kind, which visit one another, with their worked calls.
    Mixed,
    /// The same steps in one tree.
    OneTree,
    /// One tree in which each step leads to the next.
    Chain,
    /// Trees that visit one another, each the next.
    Visits,
    /// One sign with so many values, and a step that sorts them all.
    Choices,
    /// One step with so many bands.
    Bands,
    /// So many readings, each taken once.
    Readings,
    /// Loops around loops, each bounded.
    Loops,
    /// Edges with as many limits as may nest, one after the other.
    Limits,
}

impl Shape {
    /// Every shape.
    pub const ALL: [Self; 9] = [
        Self::Mixed,
        Self::OneTree,
        Self::Chain,
        Self::Visits,
        Self::Choices,
        Self::Bands,
        Self::Readings,
        Self::Loops,
        Self::Limits,
    ];
}

/// A library of a shape with so many steps; for some shapes trees, values, bands or readings.
pub fn library(shape: Shape, size: usize) -> Files {
    let files = match shape {
        Shape::Mixed => mixed::library(size, TREE),
        Shape::OneTree => mixed::library(size, size),
        Shape::Chain => shapes::chain(size),
        Shape::Visits => shapes::visits(size),
        Shape::Choices => shapes::choices(size),
        Shape::Bands => shapes::bands(size),
        Shape::Readings => shapes::readings(size),
        Shape::Loops => shapes::loops(size),
        Shape::Limits => shapes::limits(size),
    };
    let files = files.into_iter().map(|(name, text)| SourceFile::new(name, text));
    Files::new(files.collect())
}

/// What a check finds that should not be there. No screen holds as many answers as the widest questions have.
pub fn faults(shape: Shape, found: Vec<Diagnostic>) -> Vec<Diagnostic> {
    let is_wide = matches!(shape, Shape::Choices | Shape::Bands);
    let wrong = found.into_iter();
    wrong
        .filter(|finding| !(is_wide && finding.rule == "crowded-screen"))
        .collect()
}

/// How long its files are together, in bytes.
pub fn bytes(files: &Files) -> usize {
    files.iter().map(|(_, file)| file.text().len()).sum()
}

/// How many steps a tree of a mixed library has.
const TREE: usize = 100;

/// A file's name and its text.
type File = (String, String);
