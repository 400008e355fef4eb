//! Where a walk left the way to what it should have come to.

use std::collections::BTreeSet;

use super::passed::Passed;
use crate::library::{
    Answers, By, Datum, Edge, EdgeId, ExpectedEnd, Fault, Id, Kind, Library, Restore, Scenario, Step, Tree,
};
use crate::walk::apply::inputs_of;
use crate::walk::possible::Search;
use crate::walk::state::{Moment, Standing, Value};

/// What a walk should come to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Goal {
    /// A verdict.
    Verdict(Id<Fault>),
    /// An outcome of the tree it began with, by position.
    Outcome(Id<Tree>, usize),
    /// A question.
    Asked(Datum),
    /// Something that is opened.
    Opened(Id<Restore>),
}

impl Goal {
    /// The end that a scenario expects; none where it expects an end without a verdict.
    pub fn of(scenario: &Scenario) -> Option<Self> {
        match scenario.expect.end.as_ref()?.what {
            ExpectedEnd::Verdict(fault) => Some(Self::Verdict(fault)),
            ExpectedEnd::Outcome(outcome) => Some(Self::Outcome(scenario.tree, outcome)),
            ExpectedEnd::Unproven => None,
        }
    }
}

/// The last step of a walk from which its goal could still be reached.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Parting {
    /// The step, by its position among those passed.
    pub at: usize,
    /// The edges of that step that would have kept the goal within reach.
    pub keeping: Vec<EdgeId>,
}

/// Where a walk left the way to a goal; none where no answer of the whole walk leads there.
///
/// A question counts as open even where its value stood from before: another value would have led elsewhere.
pub fn parting(library: &Library, passed: &[Passed], goal: Goal) -> Option<Parting> {
    let last = passed.iter().rposition(|at| {
        let step = &library[at.step];
        !matches!(step.kind, Kind::Visit { .. }) && reaches(library, &open(library, at), goal)
    })?;
    let at = &passed[last];
    Some(Parting {
        at: last,
        keeping: keeping(library, at, goal),
    })
}

/// The edges of a step that keep a goal within reach.
pub fn keeping(library: &Library, at: &Passed, goal: Goal) -> Vec<EdgeId> {
    let open = open(library, at);
    let step = &library[at.step];
    let exits = step.exits().into_iter().filter(|exit| exit.after == 0);
    let mut kept = Vec::new();
    for exit in exits {
        let edge = within_limits(exit.edge, &open);
        let chosen = match exit.by {
            By::Choice(answer) => Some(Value::Choice(answer.value)),
            _ => None,
        };
        let after = after(&open, datum_of(step), chosen, edge);
        if !kept.contains(&edge.id) && reaches(library, &after, goal) {
            kept.push(edge.id);
        }
    }
    kept
}

/// How the walk stood at a step, had its question not been answered before.
fn open(library: &Library, at: &Passed) -> Moment {
    let mut moment = at.before.clone();
    if let Some(datum) = datum_of(&library[at.step]) {
        moment.values.remove(&datum);
        for input in inputs_of(library, datum) {
            moment.values.remove(&input);
        }
    }
    moment
}

fn datum_of(step: &Step) -> Option<Datum> {
    match step.kind {
        Kind::Measure { reading, .. } => Some(Datum::Reading(reading)),
        Kind::Observe { sign, .. } => Some(Datum::Sign(sign)),
        Kind::Plate { field, .. } => Some(Datum::Field(field)),
        _ => None,
    }
}

/// The edge that is taken now: one that was taken as often as it may leads to what comes after.
fn within_limits<'e>(edge: &'e Edge, moment: &Moment) -> &'e Edge {
    let counts = moment.frames.last().map(|frame| &frame.counts);
    let mut edge = edge;
    while let Some(limit) = &edge.limit {
        let taken = counts.and_then(|counts| counts.get(&edge.id)).copied();
        if taken.unwrap_or_default() < limit.at_most {
            break;
        }
        edge = &limit.then;
    }
    edge
}

/// How the walk would stand after another answer.
fn after(before: &Moment, datum: Option<Datum>, value: Option<Value>, edge: &Edge) -> Moment {
    let mut moment = before.clone();
    if let Some(frame) = moment.frames.last_mut() {
        frame.step = edge.go;
        *frame.counts.entry(edge.id).or_default() += 1;
    }
    if let (Some(datum), Some(value)) = (datum, value) {
        let standing = Standing {
            value,
            typed: String::new(),
            margin: 0.0,
            borderline: false,
            answer: 0,
        };
        moment.values.insert(datum, standing);
    }
    moment
}

/// Whether a walk that stands so can still come to a goal.
fn reaches(library: &Library, moment: &Moment, goal: Goal) -> bool {
    let nothing = BTreeSet::new();
    let free = Search::new(library, moment, &nothing, false);
    let search = Search::new(library, moment, &free.voided, true);
    match goal {
        Goal::Verdict(fault) => search.faults.contains(&fault),
        Goal::Outcome(tree, outcome) => search.returned.contains(&(tree, outcome)),
        Goal::Asked(datum) => search
            .seen
            .iter()
            .any(|step| asks(library, &library[*step], datum)),
        Goal::Opened(restore) => search
            .seen
            .iter()
            .any(|step| opens(library, &library[*step], restore)),
    }
}

/// Whether a step may ask for something: for itself, for what goes into it, or for a field that its bands lean on.
fn asks(library: &Library, step: &Step, datum: Datum) -> bool {
    let own = datum_of(step);
    let answers = match &step.kind {
        Kind::Measure { answers, .. } | Kind::Plate { answers, .. } => Some(answers),
        _ => None,
    };
    let leans = match answers {
        Some(Answers::Bands(bands)) => (bands.iter().flat_map(|answer| answer.band.bounds()))
            .filter_map(|bound| bound.leans_on())
            .any(|field| Datum::Field(*field) == datum),
        _ => false,
    };
    own == Some(datum) || leans || own.is_some_and(|own| inputs_of(library, own).contains(&datum))
}

fn opens(library: &Library, step: &Step, restore: Id<Restore>) -> bool {
    let taking = |datum: Datum| match datum {
        Datum::Reading(id) => library.readings[id].taking.leaves.contains(&restore),
        Datum::Sign(id) => library.signs[id].taking.leaves.contains(&restore),
        Datum::Field(_) => false,
    };
    match &step.kind {
        Kind::Do { leaves, .. } => leaves.contains(&restore),
        _ => datum_of(step)
            .is_some_and(|datum| taking(datum) || inputs_of(library, datum).into_iter().any(taking)),
    }
}
