//! The ways out of a step, each with what takes it.

use super::Library;
use super::registry::FieldKind;
use super::tree::{Answers, BandAnswer, ChoiceAnswer, Edge, Kind, Step};
use crate::source::Span;

/// A way out of a step.
#[derive(Clone, Copy, Debug)]
pub struct Exit<'a> {
    /// What takes it.
    pub by: By<'a>,
    /// How often the same answer must have been given before it takes this way: what comes after a limit.
    pub after: u32,
    /// The edge.
    pub edge: &'a Edge,
}

/// What takes a way out of a step.
#[derive(Clone, Copy, Debug)]
pub enum By<'a> {
    /// Whatever is answered, or work that is done.
    Any,
    /// A value in a band.
    Band(&'a BandAnswer),
    /// A choice.
    Choice(&'a ChoiceAnswer),
    /// It cannot be taken.
    Unable,
    /// The technician cannot tell.
    Unsure,
    /// The visited tree returned this outcome, by position.
    Outcome(usize),
    /// The visited tree came to a verdict.
    Verdict,
    /// The step could not be read.
    Unresolved,
}

impl Exit<'_> {
    /// Where the answer stands that takes it; of what comes after a limit, where that stands.
    pub fn at(&self) -> Span {
        match self.by {
            By::Band(answer) if self.after == 0 => answer.at,
            By::Choice(answer) if self.after == 0 => answer.at,
            _ => self.edge.at,
        }
    }

    /// What takes it, as its author names it.
    pub fn words(&self, library: &Library, step: &Step) -> String {
        let words = match self.by {
            By::Any => match step.kind {
                Kind::Do { .. } => "done",
                _ => "any answer",
            },
            By::Band(answer) => &answer.text,
            By::Choice(answer) => choice_name(library, step, answer.value),
            By::Unable => "unable",
            By::Unsure => "unsure",
            By::Outcome(position) => match step.kind {
                Kind::Visit { tree, .. } => (library.trees[tree].outcomes.get(position))
                    .map_or("an outcome", |outcome| outcome.name.as_str()),
                _ => "an outcome",
            },
            By::Verdict => "on_verdict",
            By::Unresolved => "an answer",
        };
        match self.after {
            0 => words.to_owned(),
            1 => format!("{words}, after 1 time"),
            times => format!("{words}, after {times} times"),
        }
    }
}

fn choice_name<'l>(library: &'l Library, step: &Step, value: usize) -> &'l str {
    let choices = match step.kind {
        Kind::Observe { sign, .. } => &library.signs[sign].values,
        Kind::Plate { field, .. } => match &library.plate[field].kind {
            FieldKind::Choices(choices) => choices,
            FieldKind::Number { .. } => return "a choice",
        },
        _ => return "a choice",
    };
    choices
        .get(value)
        .map_or("a choice", |choice| choice.name.as_str())
}

impl Step {
    /// Every way out of this step, in the author's order, each followed by what comes after its limit.
    pub fn exits(&self) -> Vec<Exit<'_>> {
        let by = |by| move |edge| (by, edge);
        let first: Vec<(By<'_>, &Edge)> = match &self.kind {
            Kind::Measure { answers, unable, .. } | Kind::Plate { answers, unable, .. } => {
                answers.exits().chain(unable.iter().map(by(By::Unable))).collect()
            }
            Kind::Observe {
                answers,
                unsure,
                unable,
                ..
            } => (answers.exits())
                .chain(unsure.iter().map(by(By::Unsure)))
                .chain(unable.iter().map(by(By::Unable)))
                .collect(),
            Kind::Do { go, .. } => vec![(By::Any, go)],
            Kind::Visit {
                returns, on_verdict, ..
            } => (returns.iter())
                .map(|(position, edge)| (By::Outcome(*position), edge))
                .chain(on_verdict.iter().map(by(By::Verdict)))
                .collect(),
            Kind::Unresolved { edges, .. } => edges.iter().map(by(By::Unresolved)).collect(),
            Kind::Verdict { .. } | Kind::Return { .. } => Vec::new(),
        };
        let mut exits = Vec::with_capacity(first.len());
        for (by, edge) in first {
            let (mut edge, mut after) = (edge, 0_u32);
            exits.push(Exit { by, after, edge });
            while let Some(limit) = &edge.limit {
                after = after.saturating_add(limit.at_most);
                edge = &limit.then;
                exits.push(Exit { by, after, edge });
            }
        }
        exits
    }
}

impl Answers {
    /// Every edge an answer can take first with what takes it, in the author's order.
    fn exits(&self) -> Box<dyn Iterator<Item = (By<'_>, &Edge)> + '_> {
        match self {
            Self::Go(edge) => Box::new(std::iter::once((By::Any, edge))),
            Self::Bands(bands) => Box::new(bands.iter().map(|answer| (By::Band(answer), &answer.edge))),
            Self::Choices(choices) => {
                Box::new(choices.iter().map(|answer| (By::Choice(answer), &answer.edge)))
            }
        }
    }
}
