//! Where a value leads.

use super::state::{State, Value};
use crate::library::{Answers, Datum, Edge, Id, Kind, Library, PlateField, Step};
use crate::measure::Quantity;

/// The edge that a value takes, before limits are looked at.
pub(super) fn leads_to<'a>(
    answers: &'a Answers,
    value: Value,
    field: &impl Fn(Id<PlateField>) -> Option<Quantity>,
) -> Option<&'a Edge> {
    let fields = |id: &Id<PlateField>| field(*id);
    match (answers, value) {
        (Answers::Go(edge), _) => Some(edge),
        (Answers::Bands(bands), Value::Number(number)) => bands
            .iter()
            .find(|answer| answer.band.contains(number, &fields) == Some(true))
            .map(|answer| &answer.edge),
        (Answers::Choices(choices), Value::Choice(choice)) => choices
            .iter()
            .find(|answer| answer.value == choice)
            .map(|answer| &answer.edge),
        _ => None,
    }
}

/// What a value means at the step that asks for it, in the author's words.
pub(super) fn meaning<'a>(
    library: &'a Library,
    state: &State,
    datum: Datum,
    value: Value,
) -> Option<&'a str> {
    let step = &library[state.top()?.step];
    let answers = answers_of(step).filter(|_| own_datum(step) == Some(datum))?;
    leads_to(answers, value, &|field| state.field(field))?
        .means
        .as_deref()
}

/// What a step asks for.
pub(super) fn own_datum(step: &Step) -> Option<Datum> {
    match step.kind {
        Kind::Measure { reading, .. } => Some(Datum::Reading(reading)),
        Kind::Observe { sign, .. } => Some(Datum::Sign(sign)),
        Kind::Plate { field, .. } => Some(Datum::Field(field)),
        _ => None,
    }
}

/// Where the answers to a step's question lead.
pub(super) fn answers_of(step: &Step) -> Option<&Answers> {
    match &step.kind {
        Kind::Measure { answers, .. } | Kind::Observe { answers, .. } | Kind::Plate { answers, .. } => {
            Some(answers)
        }
        _ => None,
    }
}
