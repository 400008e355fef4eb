//! Whether a log is what its library would have led to.
//!
//! From what was recorded the command is read back that must have been given; it is decided again from the state before, and
//! what comes of it must be what was recorded. Where only the first of it was, the call was cut off there: then what follows
//! must be what a call goes on to do by itself that is taken up.
//!
//! A log that passes could have been: what was measured, seen and written down is believed as it stands.

mod alike;
mod given;

pub(super) use alike::alike;

use super::apply::apply;
use super::command::{Command, Refusal};
use super::decide::follow;
use super::event::Event;
use super::state::State;
use crate::library::Library;

/// What a walk was given.
#[derive(Clone, Debug, PartialEq)]
pub enum Given {
    /// Its opening.
    Open,
    /// Nothing: a call that was cut off was taken up.
    GoOn,
    /// A command.
    Command(Command),
    /// A command that opened something, and was cut off before it was told which.
    Opening,
}

/// How far what was recorded is what a walk comes to.
#[derive(Clone, Debug)]
pub struct Followed {
    /// Where the walk stands after that.
    pub state: State,
    /// How many events are the same.
    pub kept: usize,
    /// What would have come next.
    pub due: Due,
}

impl Followed {
    /// The same, where all that came of it before it was refused was recorded.
    pub fn refused(self, refusal: Refusal) -> Self {
        let due = match self.due {
            Due::Nothing => Due::Refused(refusal),
            due => due,
        };
        Self { due, ..self }
    }
}

/// What would have come next where something else was recorded.
#[derive(Clone, Debug, PartialEq)]
pub enum Due {
    /// Nothing: all of it was recorded.
    Nothing,
    /// This.
    Event(Box<Event>),
    /// What was given would have been refused.
    Refused(Refusal),
}

/// Where a log leaves what its library would have led to.
#[derive(Clone, Debug, PartialEq)]
pub struct Stray {
    /// The event, by position.
    pub at: usize,
    /// What would have come in its place.
    pub due: Due,
}

/// By which rules a call was walked: those of the trees, or those of practice, which lets an apprentice do more.
pub trait Rules {
    /// Walks on as it was given, as far as what comes of it is what was recorded.
    fn follow(&self, library: &Library, state: State, given: &Given, recorded: &[Event]) -> Followed {
        follow(library, state, given, recorded)
    }

    /// What these rules lead to here that no command of a call does.
    fn besides(&self, _: &Library, _: &State, _recorded: &[Event]) -> Option<Vec<Event>> {
        None
    }
}

/// The rules of every call at a house.
#[derive(Clone, Copy, Debug)]
pub struct ByTheTrees;

impl Rules for ByTheTrees {}

/// Decides every move of a call again; where the call stands after the last.
///
/// # Errors
///
/// The first event that neither comes of what was given nor could.
pub fn retrace(library: &Library, events: &[Event], rules: &impl Rules) -> Result<State, Stray> {
    let mut state = State::default();
    let mut at = 0;
    // What was still to come when the call was cut off.
    let mut missing = Due::Nothing;
    while let Some(recorded) = events.get(at..).filter(|rest| !rest.is_empty()) {
        // Recorded where a torn line is set aside, as a call is taken up, whatever it was in the middle of.
        if at > 0 && !state.closed && matches!(recorded[0], Event::TailCut { .. }) {
            at += 1;
            continue;
        }
        if missing != Due::Nothing {
            let went_on = rules.follow(library, state, &Given::GoOn, recorded);
            state = went_on.state;
            if went_on.kept > 0 {
                at += went_on.kept;
                missing = went_on.due;
                continue;
            }
            if went_on.due != Due::Nothing {
                return Err(Stray { at, due: missing });
            }
        }
        let followed = match (rules.besides(library, &state, recorded), at) {
            (Some(due), _) => compare(library, state, due, recorded),
            (None, 0) => rules.follow(library, state, &Given::Open, recorded),
            (None, _) => match given::given(library, recorded) {
                Some(given) => rules.follow(library, state, &given, recorded),
                None => return Err(Stray { at, due: missing }),
            },
        };
        if followed.kept == 0 {
            let due = match missing {
                Due::Nothing => followed.due,
                missing => missing,
            };
            return Err(Stray { at, due });
        }
        state = followed.state;
        at += followed.kept;
        missing = followed.due;
    }
    Ok(state)
}

/// Holds what would have come against what was recorded.
pub fn compare(library: &Library, mut state: State, due: Vec<Event>, recorded: &[Event]) -> Followed {
    let mut kept = 0;
    for event in due {
        let same = recorded.get(kept).filter(|recorded| alike(recorded, &event));
        if same.is_none_or(|recorded| apply(library, &mut state, recorded).is_err()) {
            let due = Due::Event(Box::new(event));
            return Followed { state, kept, due };
        }
        kept += 1;
    }
    let due = Due::Nothing;
    Followed { state, kept, due }
}
