//! A walk as it went: step by step, with what was answered and where that led.

use crate::library::{Datum, EdgeId, Fault, Id, Library, Step};
use crate::walk::apply::{Misfit, apply};
use crate::walk::event::{Doubt, Event};
use crate::walk::state::{Moment, State};
use crate::walk::words::worked_out_shown;

/// A step that a walk came to.
#[derive(Clone, Debug)]
pub struct Passed {
    /// Which.
    pub step: Id<Step>,
    /// How the walk stood before anything was answered there.
    pub before: Moment,
    /// What was said there, in order.
    pub said: Vec<Said>,
    /// The edge by which it was left; none where the walk ended there, or stands there.
    pub by: Option<EdgeId>,
    /// The verdict that was stated there.
    pub stated: Option<Id<Fault>>,
}

/// What was said at a step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Said {
    /// A value was given, or worked out from others.
    Value {
        /// Of what.
        datum: Datum,
        /// As it was typed, or a value's name.
        value: String,
        /// It was worked out.
        worked_out: bool,
    },
    /// A value was given and asked for again.
    Again {
        /// Of what.
        datum: Datum,
        /// What was given.
        value: String,
        /// Why.
        why: Doubt,
    },
    /// It could not be taken.
    Unable(Datum),
    /// The technician could not tell.
    Unsure(Datum),
}

/// The steps that the events of a walk came to.
///
/// # Errors
///
/// Where the events are not this library's.
pub fn passed(library: &Library, events: &[Event]) -> Result<Vec<Passed>, Misfit> {
    let mut state = State::default();
    let mut passed = Vec::new();
    let mut here: Option<Passed> = None;
    for event in events {
        if let (Some(at), Some(said)) = (&mut here, said(library, event)) {
            at.said.push(said);
        }
        match event {
            Event::Took { edge, .. } => {
                if let Some(mut at) = here.take() {
                    at.by = Some(EdgeId(*edge));
                    passed.push(at);
                }
            }
            Event::Stated { fault, .. } => {
                if let Some(mut at) = here.take() {
                    at.stated = library.faults.find(fault);
                    passed.push(at);
                }
            }
            // A visit is shown by what came of it, a return by the visit that goes on.
            Event::Entered { .. } | Event::Returned { .. } => here = None,
            Event::Ended(_) => passed.extend(here.take()),
            _ => {}
        }
        apply(library, &mut state, event)?;
        let moves = matches!(
            event,
            Event::Took { .. } | Event::Entered { .. } | Event::Returned { .. } | Event::Left { .. }
        );
        if let (true, Some(frame)) = (moves, state.top()) {
            here = Some(Passed {
                step: frame.step,
                before: state.moment.clone(),
                said: Vec::new(),
                by: None,
                stated: None,
            });
        }
    }
    if state.ended.is_none() {
        passed.extend(here);
    }
    Ok(passed)
}

fn said(library: &Library, event: &Event) -> Option<Said> {
    let value = |name: &str, value: &str, worked_out| {
        library.datum(name).map(|datum| Said::Value {
            datum,
            value: value.to_owned(),
            worked_out,
        })
    };
    match event {
        Event::Measured {
            reading,
            typed,
            value: number,
            unit,
            ..
        } => match typed {
            Some(typed) => value(reading, typed, false),
            None => {
                let datum = library.datum(reading)?;
                let Datum::Reading(id) = datum else { return None };
                let scale = library.readings[id].scale;
                let number = crate::measure::Quantity::new(*number, scale);
                let shown = worked_out_shown(number, scale).to_string();
                debug_assert_eq!(unit, scale.symbol());
                value(reading, &shown, true)
            }
        },
        Event::Observed { sign, value: seen } => value(sign, seen, false),
        Event::ReadPlate { field, value: read } => value(field, read, false),
        Event::Doubted {
            datum, value, why, ..
        } => library.datum(datum).map(|datum| Said::Again {
            datum,
            value: value.clone(),
            why: *why,
        }),
        Event::CouldNot { datum, .. } => library.datum(datum).map(Said::Unable),
        Event::WasUnsure { sign } => library.datum(sign).map(Said::Unsure),
        _ => None,
    }
}
