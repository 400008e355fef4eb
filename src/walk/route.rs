//! Where a value leads.

use super::state::Value;
use crate::library::{Answers, Edge, Id, PlateField};
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
