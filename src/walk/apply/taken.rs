//! What an answer leaves behind: the value that stands, and its line in the trail.

use std::sync::Arc;

use super::super::event::Event;
use super::super::route::meaning;
use super::super::state::{Answered, CameOut, Standing, State, Value, WerePossible, What};
use super::super::words::worked_out_words;
use super::{Misfit, find, misfit};
use crate::library::{Datum, FieldKind, Library};
use crate::measure::{Amount, Quantity, Scale};

pub(super) fn taken(library: &Library, state: &mut State, event: &Event) -> Result<(), Misfit> {
    let (datum, standing, asked) = match event {
        Event::Measured {
            reading,
            typed,
            value,
            margin,
            borderline,
            warnings,
            ..
        } => {
            let id = find(&library.readings, "reading", reading)?;
            let scale = library.readings[id].scale;
            let quantity = Quantity::new(*value, scale);
            let shown = typed
                .clone()
                .unwrap_or_else(|| worked_out_words(quantity, scale, warnings));
            let standing = Standing {
                value: Value::Number(quantity),
                typed: shown,
                margin: width(*margin, scale),
                borderline: *borderline,
                answer: state.answers,
            };
            (Datum::Reading(id), standing, typed.is_some())
        }
        Event::Observed { sign, value } => {
            let id = find(&library.signs, "sign", sign)?;
            let values = &library.signs[id].values;
            let value = values.iter().position(|choice| choice.name == *value);
            let value = value.ok_or_else(|| misfit("value of that sign", sign))?;
            (
                Datum::Sign(id),
                exact(state, Value::Choice(value), values[value].text.clone()),
                true,
            )
        }
        Event::ReadPlate { field, value } => {
            let id = find(&library.plate, "plate field", field)?;
            let read = match &library.plate[id].kind {
                FieldKind::Choices(choices) => {
                    let at = choices.iter().position(|choice| choice.name == *value);
                    let at = at.ok_or_else(|| misfit("value of that plate field", value))?;
                    exact(state, Value::Choice(at), choices[at].text.clone())
                }
                FieldKind::Number { scale, .. } => {
                    let (_, quantity) =
                        Amount::typed(value, *scale).map_err(|wrong| Misfit(wrong.to_string()))?;
                    exact(state, Value::Number(quantity), value.clone())
                }
            };
            (Datum::Field(id), read, true)
        }
        // Only the three kinds above are handed to this function.
        _ => return Ok(()),
    };
    if asked {
        remember(
            state,
            What::Datum(datum),
            standing.typed.clone(),
            standing.borderline,
        );
        if let Some(answered) = state.trail.last_mut() {
            answered.given = true;
        }
    } else {
        let means = meaning(library, state, datum, standing.value).map(str::to_owned);
        if let Some(answered) = state.trail.last_mut() {
            answered.worked_out.push(CameOut {
                datum,
                value: standing.typed.clone(),
                means,
            });
        }
    }
    state.asked.insert(datum);
    state.could_not.remove(&datum);
    state.moment.values.insert(datum, Arc::new(standing));
    state.moment.raised.retain(|(doubted, _)| *doubted != datum);
    state.moment.doubted.take_if(|doubted| doubted.datum == datum);
    if state
        .moment
        .retaking
        .is_some_and(|retaking| retaking.datum == datum)
    {
        state.moment.retaking = None;
    }
    Ok(())
}

fn exact(state: &State, value: Value, typed: String) -> Standing {
    Standing {
        value,
        typed,
        margin: 0.0,
        borderline: false,
        answer: state.answers,
    }
}

/// A width on a scale, in base units.
fn width(number: f64, scale: Scale) -> f64 {
    Quantity::new(number, scale.of_offsets()).base()
}

pub(super) fn remember(state: &mut State, what: What, answer: String, borderline: bool) {
    state.trail.push(Answered {
        before: Arc::new(state.moment.clone()),
        were_possible: WerePossible::default(),
        what,
        answer,
        borderline,
        given: false,
        worked_out: Vec::new(),
        stood: Vec::new(),
        number: state.answers,
    });
    state.answers += 1;
}
