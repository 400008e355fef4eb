//! How far it is at worst.

use std::collections::BTreeSet;

use super::apply::inputs_of;
use super::possible::{Known, known, reachable};
use super::state::Moment;
use crate::library::{Answers, Datum, Edge, Id, Input, Kind, Library, Obtained, Step};

/// Values and tasks that may still be asked for, at worst.
///
/// Every value that the walk may come to need counts once, as it stands from then on, and every task once; a bounded edge that
/// leads back adds what work on its way round makes void, as often as it may be taken. What is asked a second time because it
/// was doubtful, what a proof lacks at its verdict, and tasks of a tree that is visited again come on top.
pub fn at_worst(library: &Library, moment: &Moment) -> usize {
    let known = known(library, moment);
    let ahead = reachable(library, &known);
    let tasks = ahead
        .iter()
        .filter(|step| matches!(library[**step].kind, Kind::Do { .. }))
        .count();
    let again: usize = ahead.iter().map(|step| rounds(library, &known, *step)).sum();
    values_ahead(library, &known, &ahead) + tasks + again
}

/// The values that may still be asked for, each once.
fn values_ahead(library: &Library, known: &Known<'_>, ahead: &BTreeSet<Id<Step>>) -> usize {
    let mut values = BTreeSet::new();
    for step in ahead {
        let (datum, answers) = match &library[*step].kind {
            Kind::Measure { reading, answers, .. } => (Datum::Reading(*reading), answers),
            Kind::Observe { sign, answers, .. } => (Datum::Sign(*sign), answers),
            Kind::Plate { field, answers, .. } => (Datum::Field(*field), answers),
            _ => continue,
        };
        values.extend(values_for(library, datum, answers));
    }
    values.into_iter().filter(|datum| !known.stands(*datum)).count()
}

/// The values that a question has to ask for: itself or what it is worked out from, and the fields its bands lean on.
fn values_for(library: &Library, datum: Datum, answers: &Answers) -> BTreeSet<Datum> {
    let chain = inputs_of(library, datum).into_iter().chain([datum]);
    let mut values = BTreeSet::new();
    for value in chain {
        match value {
            Datum::Reading(id) => match &library.readings[id].source_of_value {
                Obtained::Measured(_) => {
                    values.insert(value);
                }
                Obtained::WorkedOut { inputs, .. } => {
                    values.extend(inputs.iter().filter_map(|input| match input {
                        Input::Field(field) => Some(Datum::Field(*field)),
                        Input::Reading(_) | Input::Fixed(_) => None,
                    }))
                }
            },
            Datum::Sign(_) | Datum::Field(_) => {
                values.insert(value);
            }
        }
    }
    if let Answers::Bands(bands) = answers {
        let bounds = bands.iter().flat_map(|answer| answer.band.bounds());
        values.extend(
            bounds
                .filter_map(|bound| bound.leans_on())
                .map(|field| Datum::Field(*field)),
        );
    }
    values
}

/// What the bounded edges of a step that lead back to it may add.
fn rounds(library: &Library, known: &Known<'_>, step: Id<Step>) -> usize {
    let edges = known.edges(library, step).into_iter();
    edges.map(|edge| round(library, step, edge)).sum()
}

fn round(library: &Library, source: Id<Step>, edge: &Edge) -> usize {
    let Some(limit) = &edge.limit else {
        return 0;
    };
    let after = steps_after(library, edge.go);
    if !after.contains(&source) {
        return 0;
    }
    let way_round = after
        .into_iter()
        .filter(|step| steps_after(library, *step).contains(&source));
    let work: usize = way_round
        .map(|step| match &library[step].kind {
            Kind::Do { voids, .. } => {
                let values = voids.iter().map(|datum| inputs_of(library, *datum).len().max(1));
                1 + values.sum::<usize>()
            }
            _ => 0,
        })
        .sum();
    work.saturating_mul(limit.at_most as usize)
}

/// The steps of its tree that a step may lead to, itself included.
fn steps_after(library: &Library, step: Id<Step>) -> BTreeSet<Id<Step>> {
    let mut seen = BTreeSet::from([step]);
    let mut waiting = vec![step];
    while let Some(step) = waiting.pop() {
        for edge in library[step].edges() {
            if seen.insert(edge.go) {
                waiting.push(edge.go);
            }
        }
    }
    seen
}
