//! What the walk waits for: worked out from the state, never kept.

use super::apply::inputs_of;
use super::event::End;
use super::proof;
use super::state::State;
use crate::library::{Answers, Datum, Fault, Id, Input, Kind, Library, Obtained, PlateField, Restore, Step};

/// What a walk waits for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// A value. `of` is what the step or the proof asks for; `leaf` is what must be taken for it now.
    Value {
        /// What is asked for.
        of: Datum,
        /// What must be taken for it.
        leaf: Datum,
    },
    /// A step's work.
    Work(Id<Step>),
    /// A decision about a verdict that is not proven.
    Decision(Id<Fault>),
    /// Something must be put back.
    PutBack(Id<Restore>),
    /// Nothing is left: the call can be closed.
    Close,
    /// Nothing at all: the call is closed.
    Nothing,
    /// The walk itself can go on.
    Onward,
}

/// What a walk waits for.
pub fn wanted(library: &Library, state: &State) -> Wanted {
    if state.closed {
        return Wanted::Nothing;
    }
    if let Some(end) = &state.ended {
        let demanded = !matches!(end, End::Verdict { danger: true, .. });
        // The last opened first, as hands do it: plugs before the door, the thermostat after everything.
        return match state.open.last() {
            Some(restore) if demanded => Wanted::PutBack(*restore),
            _ => Wanted::Close,
        };
    }
    if let Some(retaking) = state.moment.retaking {
        return value(library, state, retaking.datum);
    }
    let Some(frame) = state.top() else {
        return Wanted::Nothing;
    };
    match &library[frame.step].kind {
        Kind::Measure { reading, answers, .. } => {
            let of = Datum::Reading(*reading);
            match unread(state, answers, None) {
                Some(field) => Wanted::Value {
                    of,
                    leaf: Datum::Field(field),
                },
                None => value(library, state, of),
            }
        }
        Kind::Observe { sign, .. } => value(library, state, Datum::Sign(*sign)),
        Kind::Plate { field, answers, .. } => {
            let of = Datum::Field(*field);
            // What its bands lean on comes first, as with a reading: a face could not show them otherwise.
            match unread(state, answers, Some(*field)) {
                Some(other) => Wanted::Value {
                    of,
                    leaf: Datum::Field(other),
                },
                None => value(library, state, of),
            }
        }
        Kind::Do { .. } => Wanted::Work(frame.step),
        Kind::Verdict { fault, .. } if !proof::is_proven(library, state, *fault) => {
            match proof::unread_fields(library, state, *fault).first() {
                Some(field) => value(library, state, Datum::Field(*field)),
                None => Wanted::Decision(*fault),
            }
        }
        Kind::Verdict { .. } | Kind::Visit { .. } | Kind::Return { .. } | Kind::Unresolved { .. } => {
            Wanted::Onward
        }
    }
}

/// Waits for a value that is not fresh, or for the first of its inputs that is not.
fn value(library: &Library, state: &State, of: Datum) -> Wanted {
    if state.value(of).is_some() {
        return Wanted::Onward;
    }
    match first_input(library, state, of) {
        Some(leaf) => Wanted::Value { of, leaf },
        None => Wanted::Onward,
    }
}

/// What must be taken first for a datum that is not fresh; none where it can be worked out at once.
fn first_input(library: &Library, state: &State, of: Datum) -> Option<Datum> {
    let Datum::Reading(id) = of else {
        return Some(of);
    };
    let Obtained::WorkedOut { inputs, .. } = &library.readings[id].source_of_value else {
        return Some(of);
    };
    inputs.iter().find_map(|input| {
        let datum = match input {
            Input::Reading(reading) => Datum::Reading(*reading),
            Input::Field(field) => Datum::Field(*field),
            Input::Fixed(_) => return None,
        };
        match state.value(datum) {
            Some(_) => None,
            None => first_input(library, state, datum),
        }
    })
}

/// The next reading that can be worked out for a datum: the innermost whose inputs all stand.
pub(super) fn workable(library: &Library, state: &State, of: Datum) -> Option<Id<crate::library::Reading>> {
    let chain = std::iter::once(of)
        .chain(inputs_of(library, of))
        .collect::<Vec<_>>();
    chain.into_iter().rev().find_map(|datum| {
        let Datum::Reading(id) = datum else { return None };
        let worked_out = matches!(library.readings[id].source_of_value, Obtained::WorkedOut { .. });
        let ready =
            worked_out && state.value(datum).is_none() && first_input(library, state, datum).is_none();
        let inputs_stand = inputs_of(library, datum)
            .iter()
            .all(|input| state.value(*input).is_some());
        (ready && inputs_stand).then_some(id)
    })
}

/// The first plate field that a step's bands lean on and that has not been read, beside the one that is `asked` for.
fn unread(state: &State, answers: &Answers, asked: Option<Id<PlateField>>) -> Option<Id<PlateField>> {
    let Answers::Bands(bands) = answers else {
        return None;
    };
    let fields = bands
        .iter()
        .flat_map(|answer| answer.band.bounds())
        .filter_map(|bound| bound.leans_on());
    let mut unread = fields
        .copied()
        .filter(|field| asked != Some(*field) && state.value(Datum::Field(*field)).is_none());
    unread.next()
}
