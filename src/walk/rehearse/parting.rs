//! Where a walk left the way to what it should have come to.

use std::sync::Arc;

use super::passed::Passed;
use crate::library::{
    Answers, By, Datum, Edge, EdgeId, ExpectedEnd, Fault, Id, Kind, Library, Restore, Scenario, Step, Tree,
};
use crate::walk::apply::inputs_of;
use crate::walk::possible::{Search, voidable};
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

    /// Whether a walk that comes to a step may come to the goal there.
    pub fn is_met_by(self, library: &Library, step: &Step) -> bool {
        match (self, &step.kind) {
            (Self::Verdict(fault), Kind::Verdict { fault: stated, .. }) => fault == *stated,
            (Self::Outcome(tree, outcome), Kind::Return { outcome: returned }) => {
                step.tree == tree && outcome == *returned
            }
            (Self::Asked(datum), _) => asks(library, step, datum),
            (Self::Opened(restore), _) => opens(library, step, restore),
            (Self::Verdict(_) | Self::Outcome(..), _) => false,
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
        !matches!(step.kind, Kind::Visit { .. }) && reaches(library, &open(library, step, &at.before), goal)
    })?;
    let at = &passed[last];
    Some(Parting {
        at: last,
        keeping: keeping(library, &at.before, goal),
    })
}

/// The edges of the step that a walk stands at that keep a goal within reach.
pub(super) fn keeping(library: &Library, now: &Moment, goal: Goal) -> Vec<EdgeId> {
    let Some(frame) = now.frames.last() else {
        return Vec::new();
    };
    let step = &library[frame.step];
    let open = open(library, step, now);
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

/// How the walk stands at a step, had its question not been answered before.
fn open(library: &Library, step: &Step, now: &Moment) -> Moment {
    let mut moment = now.clone();
    if let Some(datum) = datum_of(step) {
        moment.values.remove(&datum);
        for input in inputs_of(library, datum) {
            moment.values.remove(&input);
        }
    }
    moment
}

/// What a step asks for.
pub(super) fn datum_of(step: &Step) -> Option<Datum> {
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
        moment.values.insert(datum, Arc::new(standing));
    }
    moment
}

/// Whether a walk that stands so can still come to a goal.
fn reaches(library: &Library, moment: &Moment, goal: Goal) -> bool {
    let voidable = voidable(library, moment);
    let search = Search::new(library, moment, &voidable, true);
    match goal {
        Goal::Verdict(fault) => search.faults.contains(&fault),
        Goal::Outcome(tree, outcome) => search.returned.contains(&(tree, outcome)),
        Goal::Asked(_) | Goal::Opened(_) => {
            (search.reached.iter()).any(|step| goal.is_met_by(library, &library[*step]))
        }
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
