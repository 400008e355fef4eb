//! A practice call decided again from its log, without its furnace: what that showed stands in the log.

use super::Mode;
use super::ahead::{Ahead, is_free};
use super::backing::Backing;
use super::score::Score;
use crate::library::{Datum, Library};
use crate::walk::{
    ByTheTrees, End, Event, Followed, Given, Opened, Role, Rules, State, Wanted, compare, go_on, open, wanted,
};

/// The rules of a practice call.
#[derive(Clone, Copy, Debug)]
pub struct ByPractice(Mode);

impl ByPractice {
    /// The rules of a call that says that it is practice; none otherwise.
    pub fn of(opened: &Opened) -> Option<Self> {
        let mode = match opened.is_free_practice() {
            true => Mode::Free,
            false => Mode::Guided,
        };
        opened.is_practice().then_some(Self(mode))
    }
}

impl Rules for ByPractice {
    fn follow(&self, library: &Library, state: State, given: &Given, recorded: &[Event]) -> Followed {
        if self.0 == Mode::Guided || *given == Given::Opening {
            return ByTheTrees.follow(library, state, given, recorded);
        }
        let mut ahead = Ahead::new(library, self.0, state.clone(), Score::default());
        let done = match given {
            Given::Open => match recorded.first() {
                Some(Event::Opened(opened)) => {
                    open(library, Opened::clone(opened)).and_then(|events| ahead.take(events, true))
                }
                _ => return ByTheTrees.follow(library, state, given, recorded),
            },
            Given::GoOn => go_on(library, &state).and_then(|events| ahead.take(events, true)),
            Given::Command(command) => ahead.carry_out(command),
            Given::Opening => Ok(()),
        };
        let followed = compare(library, state, ahead.events, recorded);
        match done {
            Ok(()) => followed,
            Err(refusal) => followed.refused(refusal),
        }
    }

    fn besides(&self, library: &Library, state: &State, recorded: &[Event]) -> Option<Vec<Event>> {
        match self.0 {
            Mode::Free => named(library, state, recorded.first()?),
            Mode::Guided => put_elsewhere(library, state, recorded),
        }
    }
}

/// What an apprentice does in free practice that nobody does at a house: leaves the gate out, and names the fault.
fn named(library: &Library, state: &State, event: &Event) -> Option<Vec<Event>> {
    let is_free = is_free(Mode::Free, state);
    match event {
        Event::Left { depth: 0 } if state.trail.is_empty() && state.top()?.role == Role::Gate => {
            let tree = library.trees[state.moment.complaint?].name.clone();
            let role = Role::Complaint;
            Some(vec![Event::Left { depth: 0 }, Event::Entered { tree, role }])
        }
        Event::Stated { fault, .. } if is_free => {
            let id = library.faults.find(fault)?;
            let fault = fault.clone();
            let (noted, danger) = (false, false);
            Backing::of(library, state, id).is_proven().then(|| {
                vec![
                    Event::Stated {
                        fault: fault.clone(),
                        noted,
                    },
                    Event::Ended(End::Verdict { fault, danger }),
                ]
            })
        }
        Event::Withheld { fault } if is_free => {
            library.faults.find(fault)?;
            Some(vec![event.clone()])
        }
        // What is named without proof was withheld before.
        Event::Ended(End::Insisted { fault, .. }) if is_free => {
            let id = library.faults.find(fault)?;
            state.withheld.contains(&id).then(|| vec![event.clone()])
        }
        _ => None,
    }
}

/// A probe that is put elsewhere than a tree asks opens what it opens there, and is only noted.
fn put_elsewhere(library: &Library, state: &State, recorded: &[Event]) -> Option<Vec<Event>> {
    let (Event::LeftOpen { restores }, None | Some(Event::Noted { .. })) =
        (recorded.first()?, recorded.get(1))
    else {
        return None;
    };
    let is_asked = matches!(
        wanted(library, state),
        Wanted::Value {
            leaf: Datum::Reading(_),
            ..
        }
    );
    let mut readings = library.readings.iter();
    let opens = readings.any(|(_, reading)| {
        let names = reading.taking.leaves.iter().map(|id| &library.restores[*id].name);
        !restores.is_empty() && names.eq(restores)
    });
    (is_asked && opens).then(|| vec![recorded[0].clone()])
}
