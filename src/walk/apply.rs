//! Folding events into a state. No rule lives here: an event says what has happened, and this only remembers it.

mod taken;
mod voids;

use std::fmt;
use std::sync::Arc;

use taken::{remember, taken};
use voids::void;
pub(super) use voids::worked_out_from;
pub use voids::{inputs_of, leans_on};

use super::event::{Event, Opened, Role, Voiding};
use super::route::own_datum;
use super::state::{CameOut, Doubted, Frame, Interrupted, Noted, PutBackDone, Retaking, State, What};
use crate::library::{Datum, Edge, Id, Library, Restore, Step, Table};

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
            state.opened = Some(Opened::clone(opened));
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
        Event::Left { depth } => {
            let depth = state.moment.frames.len().min(*depth);
            let left = state.moment.frames.split_off(depth);
            if let Some(fault) = state.moment.stated.last().copied() {
                state.moment.noted.push(Noted { fault, left });
            }
        }
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
    let left = &library[frame.step];
    let edge = edge_of(library, frame.step, number).ok_or_else(|| misfit("edge", &number.to_string()))?;
    *frame.counts.entry(edge.id).or_default() += 1;
    frame.step = edge.go;
    state.moment.doubted = None;
    state.moment.raised.clear();
    let known = state.moment.findings.iter().any(|(id, _)| *id == edge.id);
    if let (Some(finding), false) = (&edge.finding, known) {
        Arc::make_mut(&mut state.moment.findings).push((edge.id, finding.clone()));
    }
    if let Some(datum) = own_datum(left) {
        passed(state, datum, edge);
    }
    Ok(())
}

/// Remembers a value that stood when a step would have asked for it, unless the last answer gave it.
fn passed(state: &mut State, datum: Datum, edge: &Edge) {
    let (Some(standing), Some(last)) = (state.moment.values.get(&datum), state.trail.last_mut()) else {
        return;
    };
    let told = last.worked_out.iter().chain(&last.stood);
    if last.what == What::Datum(datum) || told.into_iter().any(|told| told.datum == datum) {
        return;
    }
    last.stood.push(CameOut {
        datum,
        value: standing.typed.clone(),
        means: edge.means.clone(),
    });
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
