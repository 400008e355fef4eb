//! What overlays make of a library.

use std::fmt;

use super::problem::What;
use crate::source::Span;

/// A folder of files that was laid over a library.
#[derive(Clone, Debug, PartialEq)]
pub struct Overlay {
    /// Its number, counted from 1 in the order they are laid.
    pub number: usize,
    /// Its name; where it gives none, that of its folder.
    pub name: String,
    /// What it is called on a screen.
    pub title: String,
    /// Its edition; empty where it gives none.
    pub edition: String,
    /// The start of its `library.yaml`, where it has one.
    pub at: Option<Span>,
}

impl Overlay {
    /// Its title, with its edition where it has one.
    pub fn titled(&self) -> String {
        match self.edition.as_str() {
            "" => self.title.clone(),
            edition => format!("{}, edition {edition}", self.title),
        }
    }
}

/// Something that an overlay replaced whole.
#[derive(Clone, Debug, PartialEq)]
pub struct Replaced {
    /// What kind of thing.
    pub what: Replaceable,
    /// Its name.
    pub name: String,
    /// Where the one stood that no longer counts.
    pub first: Span,
    /// Where the one stands that counts.
    pub by: Span,
}

/// The kinds of things that an overlay may replace.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Replaceable {
    /// A tree, or an entry of a registry.
    Named(What),
    /// The gate; its name is the tree's that was the gate.
    Gate,
    /// The tree after work; its name is that of the tree that it was.
    AfterWork,
    /// A danger; its name is its label.
    Danger,
    /// A worked call; its name is its file's.
    Scenario,
}

impl fmt::Display for Replaceable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Named(what) => what.fmt(f),
            Self::Gate => f.write_str("gate"),
            Self::AfterWork => f.write_str("tree after work"),
            Self::Danger => f.write_str("danger"),
            Self::Scenario => f.write_str("scenario"),
        }
    }
}
