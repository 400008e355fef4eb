//! A walk that is held against what was recorded of it.

use super::super::command::Refusal;
use super::super::event::{Event, Opened, Role};
use super::super::retrace::{Due, Followed, Given, alike};
use super::super::state::State;
use super::super::wanted::Wanted;
use super::{Walk, first_tree};
use crate::library::{Datum, Kind, Library};

/// What was recorded, and what came of the walk where that is something else.
pub(super) struct Against<'l> {
    recorded: &'l [Event],
    due: Option<Event>,
}

impl Against<'_> {
    /// The event as it was recorded, if it is the same. Otherwise the walk stops here, as far as it was the same.
    pub(super) fn hold(&mut self, at: usize, event: Event) -> Result<Event, Refusal> {
        match self.recorded.get(at).filter(|recorded| alike(recorded, &event)) {
            // As it was recorded, since that is what everything else of the log was decided from.
            Some(recorded) => Ok(recorded.clone()),
            None => {
                self.due = Some(event);
                Err(Refusal::new("the record says otherwise", ""))
            }
        }
    }
}

/// Walks on as it was given, as far as what comes of it is what was recorded. It takes no copy of the state, so that a log of
/// any length is followed in time that grows with its length.
pub(in crate::walk) fn follow(
    library: &Library,
    state: State,
    given: &Given,
    recorded: &[Event],
) -> Followed {
    let due = None;
    let mut walk = Walk {
        against: Some(Against { recorded, due }),
        ..Walk::new(library, state)
    };
    let done = match given {
        Given::Open => walk.opened_as(recorded),
        Given::GoOn => walk.go_on(),
        Given::Command(command) => walk.carry_out(command),
        Given::Opening => walk.opening(),
    };
    let due = match (walk.against.and_then(|against| against.due), done) {
        (Some(event), _) => Due::Event(Box::new(event)),
        (None, Err(refusal)) => Due::Refused(refusal),
        (None, Ok(())) => Due::Nothing,
    };
    Followed {
        state: walk.state,
        kept: walk.events.len(),
        due,
    }
}

impl Walk<'_> {
    /// Opens the call as it was opened: without the gate where a file answered, as a scenario does.
    fn opened_as(&mut self, recorded: &[Event]) -> Result<(), Refusal> {
        let Some(Event::Opened(opened)) = recorded.first() else {
            return Err(Refusal::new(
                "no call was opened",
                "a session begins with its opening",
            ));
        };
        let Some(tree) = self.library.trees.find(&opened.tree) else {
            return Err(Refusal::new(
                format!("there is no tree `{}`", opened.tree),
                "a call begins in a tree of its library",
            ));
        };
        let from_file = opened.answered_from.is_some() && !opened.is_practice();
        let first = match first_tree(self.library, tree) {
            (_, Role::Gate) if from_file => (tree, Role::Complaint),
            first => first,
        };
        self.begin(Opened::clone(opened), first)
    }

    /// What an answer opens before it is taken.
    fn opening(&mut self) -> Result<(), Refusal> {
        let library = self.library;
        match self.wanted() {
            Wanted::Value {
                leaf: Datum::Reading(id),
                ..
            } => self.opens(&library.readings[id].taking.leaves),
            Wanted::Value {
                leaf: Datum::Sign(id),
                ..
            } => self.opens(&library.signs[id].taking.leaves),
            Wanted::Work(step) => match &library[step].kind {
                Kind::Do { leaves, .. } => self.opens(leaves),
                _ => Ok(()),
            },
            _ => Ok(()),
        }
    }
}
