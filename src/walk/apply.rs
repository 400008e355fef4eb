//! Folding events into a state. No rule lives here: an event says what has happened, and this only remembers it.

use std::fmt;
use std::sync::Arc;

use super::event::{Event, Role, Voiding};
use super::route::meaning;
use super::state::{
    Answered, CameOut, Doubted, Frame, Interrupted, PutBackDone, Retaking, Standing, State, Value, What,
};
use super::words::worked_out_words;
use crate::library::{Datum, Edge, FieldKind, Id, Input, Library, Obtained, Restore, Step, Table};
use crate::measure::{Amount, Quantity, Scale};

/// An event that does not fit the library or the events before it: the log was changed, or is another library's.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Misfit(String);

impl fmt::Display for Misfit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for Misfit {}

/// Folds one event into a state.
///
/// # Errors
///
/// Where the event names something that the library does not have, or cannot have happened here.
pub fn apply(library: &Library, state: &mut State, event: &Event) -> Result<(), Misfit> {
    match event {
        Event::Opened(opened) => {
            state.moment.complaint = Some(find(&library.trees, "tree", &opened.tree)?);
            state.opened = Some(opened.clone());
        }
        Event::Entered { tree, role } => {
            let id = find(&library.trees, "tree", tree)?;
            let start = library.trees[id].start.ok_or_else(|| misfit("tree", tree))?;
            state.moment.frames.push(Frame {
                tree: id,
                step: start,
                role: *role,
                counts: Default::default(),
            });
            if *role == Role::Danger {
                if let Some(end) = state.ended.take() {
                    let values = state.moment.values.clone();
                    state.interrupted = Some(Interrupted { end, values });
                }
                // A danger comes before whatever was being taken out of turn.
                state.moment.ask_anew();
            }
        }
        Event::Took { edge, .. } => took(library, state, *edge)?,
        Event::Returned { .. } => {
            state.moment.frames.pop();
            let in_danger = state.moment.frames.iter().any(|frame| frame.role == Role::Danger);
            if !in_danger && let Some(Interrupted { end, values }) = state.interrupted.take() {
                state.ended = Some(end);
                state.moment.values = values;
            }
        }
        Event::Left { depth } => state.moment.frames.truncate(*depth),
        Event::Measured { .. } | Event::Observed { .. } | Event::ReadPlate { .. } => {
            taken(library, state, event)?
        }
        Event::Doubted {
            datum,
            value,
            why,
            against,
        } => {
            let datum = find_datum(library, datum)?;
            state.asked.insert(datum);
            state.moment.raised.insert((datum, *why));
            state.moment.doubted = Some(Doubted {
                datum,
                typed: value.clone(),
                why: *why,
                against: against.clone(),
            });
        }
        Event::CouldNot { datum, why } => {
            let datum = find_datum(library, datum)?;
            remember(
                state,
                What::Datum(datum),
                format!("could not be taken: {why}"),
                false,
            );
            state.asked.insert(datum);
            state.could_not.insert(datum, why.clone());
            state.moment.ask_anew();
        }
        Event::WasUnsure { sign } => {
            let sign = Datum::Sign(find(&library.signs, "sign", sign)?);
            remember(state, What::Datum(sign), "not sure".to_owned(), false);
            state.asked.insert(sign);
        }
        Event::Did { .. } => {
            let step = state
                .top()
                .map(|frame| frame.step)
                .ok_or_else(|| misfit("step", ""))?;
            remember(state, What::Work(step), "done".to_owned(), false);
        }
        Event::Voided { data, why } => {
            for name in data {
                let datum = find_datum(library, name)?;
                void(library, state, datum);
                if *why != Voiding::Retake {
                    state.work_voids.push((state.answers, datum));
                }
            }
        }
        Event::Retaking { datum, for_proof } => {
            let datum = find_datum(library, datum)?;
            state.could_not.remove(&datum);
            state.moment.ask_anew();
            state.moment.retaking = Some(Retaking {
                datum,
                for_proof: *for_proof,
            });
        }
        Event::LeftOpen { restores } => {
            for name in restores {
                let restore = find(&library.restores, "put-back", name)?;
                state.ever_open.insert(restore);
                if !state.open.contains(&restore) {
                    state.open.push(restore);
                }
            }
        }
        Event::Restored { restores } => {
            for name in restores {
                let restore = find(&library.restores, "put-back", name)?;
                state.open.retain(|open| *open != restore);
            }
        }
        Event::Withheld { fault } => state.withheld.push(find(&library.faults, "fault", fault)?),
        Event::Stated { fault, .. } => stated(library, state, fault)?,
        Event::Ended(end) => {
            state.ended = Some(end.clone());
            state.interrupted = None;
        }
        Event::WentBack { to } => went_back(library, state, *to)?,
        Event::Noted { text } => state.notes.push(text.clone()),
        Event::PutBack { restore } => closed_out(library, state, restore, None)?,
        Event::KeptOpen { restore, why } => closed_out(library, state, restore, Some(why.clone()))?,
        Event::Closed => state.closed = true,
        Event::TailCut { .. } => {}
    }
    Ok(())
}

/// Folds a whole call.
///
/// # Errors
///
/// As [`apply`].
pub fn fold<'e>(library: &Library, events: impl IntoIterator<Item = &'e Event>) -> Result<State, Misfit> {
    let mut state = State::default();
    for event in events {
        apply(library, &mut state, event)?;
    }
    Ok(state)
}

fn misfit(what: &str, name: &str) -> Misfit {
    Misfit(format!(
        "the library has no {what} `{}` here",
        crate::source::safe(name)
    ))
}

fn find<T>(table: &Table<T>, what: &str, name: &str) -> Result<Id<T>, Misfit> {
    table.find(name).ok_or_else(|| misfit(what, name))
}

fn find_datum(library: &Library, name: &str) -> Result<Datum, Misfit> {
    library
        .datum(name)
        .ok_or_else(|| misfit("reading, sign or plate field", name))
}

/// The edge of a number among those that leave a step.
fn edge_of(library: &Library, step: Id<Step>, number: u32) -> Option<&Edge> {
    library[step].edges().find(|edge| edge.id.0 == number)
}

fn took(library: &Library, state: &mut State, number: u32) -> Result<(), Misfit> {
    let frame = state.moment.frames.last_mut().ok_or_else(|| misfit("tree", ""))?;
    let edge = edge_of(library, frame.step, number).ok_or_else(|| misfit("edge", &number.to_string()))?;
    *frame.counts.entry(edge.id).or_default() += 1;
    frame.step = edge.go;
    state.moment.doubted = None;
    state.moment.raised.clear();
    let known = state.moment.findings.iter().any(|(id, _)| *id == edge.id);
    if let (Some(finding), false) = (&edge.finding, known) {
        state.moment.findings.push((edge.id, finding.clone()));
    }
    Ok(())
}

fn taken(library: &Library, state: &mut State, event: &Event) -> Result<(), Misfit> {
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
    state.moment.values.insert(datum, standing);
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
pub(super) fn width(number: f64, scale: Scale) -> f64 {
    Quantity::new(number, scale.of_offsets()).base()
}

fn remember(state: &mut State, what: What, answer: String, borderline: bool) {
    state.trail.push(Answered {
        before: Arc::new(state.moment.clone()),
        what,
        answer,
        borderline,
        given: false,
        worked_out: Vec::new(),
        number: state.answers,
    });
    state.answers += 1;
}

/// Takes a value away, with those that were worked out from it and those it was worked out from.
fn void(library: &Library, state: &mut State, datum: Datum) {
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

/// Whether a reading is worked out from another value, however far down.
fn leans_on(library: &Library, from: Datum, on: Datum) -> bool {
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

fn went_back(library: &Library, state: &mut State, to: usize) -> Result<(), Misfit> {
    if to >= state.trail.len() {
        return Err(misfit("answer", &to.to_string()));
    }
    let taken_back = state.trail.split_off(to);
    for answered in &taken_back {
        if let What::Datum(datum) = answered.what {
            state.could_not.remove(&datum);
        }
    }
    let Some(answered) = taken_back.into_iter().next() else {
        return Ok(());
    };
    state.moment = Arc::unwrap_or_clone(answered.before);
    state.moment.ask_anew();
    // What work did to the furnace is done: a value from before it stays void, although the step is walked again.
    let voids: Vec<Datum> = (state.work_voids.iter())
        .filter(|(after, _)| *after > answered.number)
        .map(|(_, datum)| *datum)
        .collect();
    for datum in voids {
        void(library, state, datum);
    }
    Ok(())
}

/// A log cut off between a verdict and the end it leads to states the verdict once more when it is taken up.
fn stated(library: &Library, state: &mut State, name: &str) -> Result<(), Misfit> {
    let fault = find(&library.faults, "fault", name)?;
    if state.moment.stated.last() != Some(&fault) {
        state.moment.stated.push(fault);
    }
    Ok(())
}

fn closed_out(
    library: &Library,
    state: &mut State,
    name: &str,
    refused: Option<String>,
) -> Result<(), Misfit> {
    let restore: Id<Restore> = find(&library.restores, "put-back", name)?;
    state.open.retain(|open| *open != restore);
    state.put_backs.push(PutBackDone { restore, refused });
    Ok(())
}
