//! Where the answers of a step lead.

use super::super::problem::What;
use super::super::raw;
use super::super::table::Id;
use super::super::tree::{Answers, BandAnswer, ChoiceAnswer, Edge, Kind, Tree};
use super::super::yaml::Entries;
use super::Resolver;
use super::edges::Within;
use super::lookup::{Owner, Valued};
use super::scope::Taken;
use crate::measure::Scale;

impl Resolver<'_> {
    /// A question with no answers, or with two kinds of them.
    pub(super) fn answers_wrong(&mut self, both: bool, key: &str, owner: &Owner<'_>) -> Option<Answers> {
        if both {
            self.malformed(
                owner.at,
                format!("{} says in two ways where its answers lead", owner.name),
                format!("keep `{key}`, or `go` where every answer leads to one step"),
            );
        } else {
            self.missing(owner.at, owner.name, key);
        }
        None
    }

    pub(super) fn band_answers(
        &mut self,
        entries: Entries<raw::Edge>,
        scale: Option<Scale>,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Answers> {
        let mut answers = Vec::with_capacity(entries.0.len());
        let mut whole = true;
        for entry in entries.0 {
            let edge = self.exit(entry.value, within, exits);
            let band = scale.and_then(|scale| self.band(&entry.key, scale, within.file));
            match (edge, band) {
                (Some(edge), Some(band)) => answers.push(BandAnswer {
                    at: entry.key.span(within.file),
                    text: entry.key.value,
                    band,
                    edge,
                }),
                (edge, _) => {
                    whole = false;
                    exits.edges.extend(edge);
                }
            }
        }
        let answers = Answers::Bands(answers);
        if whole {
            return Some(answers);
        }
        exits.edges.extend(answers.into_edges());
        None
    }

    pub(super) fn choice_answers(
        &mut self,
        entries: Entries<raw::Edge>,
        of: Option<Valued>,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Answers> {
        let file = within.file;
        let mut taken = Taken::default();
        let mut values = Vec::with_capacity(entries.0.len());
        for entry in &entries.0 {
            let at = entry.key.span(file);
            let new = self.claim_any(What::Value, &mut taken, &entry.key.value, at);
            let value = of.and_then(|of| self.find_value(of, &entry.key, file));
            values.push((at, value.filter(|_| new)));
        }
        let mut answers = Vec::with_capacity(values.len());
        let mut whole = true;
        for (entry, (at, value)) in entries.0.into_iter().zip(values) {
            match (self.exit(entry.value, within, exits), value) {
                (Some(edge), Some(value)) => answers.push(ChoiceAnswer { at, value, edge }),
                (edge, _) => {
                    whole = false;
                    exits.edges.extend(edge);
                }
            }
        }
        let answers = Answers::Choices(answers);
        if whole {
            return Some(answers);
        }
        exits.edges.extend(answers.into_edges());
        None
    }

    /// An edge that may be absent: none where it is there and could not be read.
    pub(super) fn way_out(
        &mut self,
        edge: Option<raw::Edge>,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Option<Edge>> {
        match edge {
            None => Some(None),
            Some(edge) => self.exit(edge, within, exits).map(Some),
        }
    }

    /// An edge; one that could not be read is noted among the exits.
    pub(super) fn exit(&mut self, edge: raw::Edge, within: &Within<'_>, exits: &mut Exits) -> Option<Edge> {
        let edge = self.edge(edge, within);
        exits.lost |= edge.is_none();
        edge
    }
}

/// The edges of a step that could be read only in part.
#[derive(Default)]
pub(super) struct Exits {
    pub edges: Vec<Edge>,
    /// Another one could not be read.
    pub lost: bool,
    /// The tree that the step visits, where that is known.
    pub visited: Option<Id<Tree>>,
}

impl Exits {
    /// Keeps what could be read of a step that is not whole; there is no kind for such a step.
    pub fn keep<const N: usize>(
        &mut self,
        answers: Option<Answers>,
        others: [Option<Option<Edge>>; N],
    ) -> Option<Kind> {
        self.edges
            .extend(answers.into_iter().flat_map(Answers::into_edges));
        self.edges.extend(others.into_iter().flatten().flatten());
        None
    }
}
