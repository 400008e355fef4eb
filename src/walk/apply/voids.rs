//! What no longer counts, and what goes with it: values lean on each other through what is worked out.

use super::super::state::State;
use crate::library::{Datum, Input, Library, Obtained};

/// Takes a value away, with those that were worked out from it and those it was worked out from.
pub(super) fn void(library: &Library, state: &mut State, datum: Datum) {
    let mut waiting = inputs_of(library, datum);
    waiting.push(datum);
    for (id, reading) in library.readings.iter() {
        let from = Datum::Reading(id);
        if matches!(reading.source_of_value, Obtained::WorkedOut { .. }) && leans_on(library, from, datum) {
            state.moment.values.remove(&from);
        }
    }
    for datum in waiting {
        state.moment.values.remove(&datum);
    }
}

/// The readings that a reading is worked out from, all the way down.
pub fn inputs_of(library: &Library, datum: Datum) -> Vec<Datum> {
    let mut found = Vec::new();
    let mut waiting = vec![datum];
    while let Some(Datum::Reading(id)) = waiting.pop() {
        if let Obtained::WorkedOut { inputs, .. } = &library.readings[id].source_of_value {
            for input in inputs {
                if let Input::Reading(input) = input {
                    found.push(Datum::Reading(*input));
                    waiting.push(Datum::Reading(*input));
                }
            }
        }
    }
    found
}

/// The readings that are worked out from another reading, however far down.
pub(in crate::walk) fn worked_out_from(library: &Library, datum: Datum) -> impl Iterator<Item = Datum> {
    let worked_out = library.readings.iter().filter_map(|(id, reading)| {
        matches!(reading.source_of_value, Obtained::WorkedOut { .. }).then_some(Datum::Reading(id))
    });
    worked_out.filter(move |reading| inputs_of(library, *reading).contains(&datum))
}

/// Whether a reading is worked out from another value, however far down.
pub fn leans_on(library: &Library, from: Datum, on: Datum) -> bool {
    let readings = std::iter::once(from).chain(inputs_of(library, from));
    readings.into_iter().any(|datum| {
        let Datum::Reading(id) = datum else { return false };
        let Obtained::WorkedOut { inputs, .. } = &library.readings[id].source_of_value else {
            return false;
        };
        inputs.iter().any(|input| match input {
            Input::Reading(reading) => Datum::Reading(*reading) == on,
            Input::Field(field) => Datum::Field(*field) == on,
            Input::Fixed(_) => false,
        })
    })
}
