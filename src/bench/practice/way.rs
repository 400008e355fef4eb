//! By which answers the trees come to a verdict, and how far those were given.
//!
//! Most faults have no proof of their own in the registry: a tree comes to them by what was answered on its way. Where no tree
//! is walked, the same answers must stand all the same, in whatever order they were taken.

mod answers;
mod search;

use super::here::Here;
use crate::library::{Datum, Fault, Id, Library, Tree};
use crate::walk::{Holding, State};
use search::Ways;

/// What a way is to come to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Goal {
    /// A verdict.
    Verdict(Id<Fault>),
    /// An outcome of the tree, by its position.
    Return(usize),
    /// A verdict that nothing is to be done.
    NoFault,
    /// That, or the tree's own end without a verdict.
    Sound,
}

/// An answer on a way, and how it stands.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Needed {
    /// What is answered; in words, with the answer.
    pub words: String,
    /// How it stands.
    pub holding: Holding,
    /// What must be known for it.
    pub data: Vec<Datum>,
    /// It is asked again after work of the tree's own, which nobody does in free practice.
    pub after_work: bool,
    /// It was not taken, and the furnace would show something else, or nothing.
    pub otherwise: bool,
}

/// A way with what it costs: what was not taken, and what was taken and says otherwise.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Found {
    cost: u32,
    /// Its answers, in order.
    pub needed: Vec<Needed>,
}

impl Found {
    /// Whether nothing that was taken, and nothing that the furnace is known to show, speaks against it.
    pub fn is_open(&self) -> bool {
        self.cost < OTHERWISE
    }
}

/// What an answer costs that says otherwise: more than any way has questions that were not taken.
const OTHERWISE: u32 = 10_000;

/// What it costs to hope that a furnace does not show something: a way that asks more, of what every furnace shows, is nearer.
const NOT_SHOWN: u32 = 100;

/// The way from the start of one of some trees that lacks least; none where no way leads there. What the furnace shows,
/// `here`, keeps it from ways that this furnace does not have.
pub(super) fn way(
    library: &Library,
    state: &State,
    here: Option<&Here>,
    trees: impl IntoIterator<Item = Id<Tree>>,
    goal: Goal,
) -> Option<Found> {
    let mut ways = Ways::new(library, state, here);
    let found = trees.into_iter().filter_map(|tree| ways.through(tree, goal));
    let mut found = found.min_by_key(|found| found.cost)?;
    // A loop asks the same once more.
    let mut seen: Vec<String> = Vec::new();
    found.needed.retain(|needed| {
        let fresh = !seen.contains(&needed.words);
        seen.push(needed.words.clone());
        fresh
    });
    Some(found)
}
