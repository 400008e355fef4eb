//! What a practice call has cost so far: nothing but its events, folded, so that it is the same when the call is taken up.

use super::elsewhere;
use crate::bench::technician::NOT_HERE;
use crate::bench::trials::cost;
use crate::library::{Id, Library, Reading, Tree};
use crate::walk::{Event, Role, State};

/// What a practice call has cost so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Score {
    /// Minutes, by what the registry says that each answer takes.
    pub minutes: f64,
    /// Probes that were put elsewhere than asked.
    pub misplaced: Vec<Misplaced>,
    /// The trees of the dangers that were acted upon, each once.
    pub raised: Vec<Id<Tree>>,
}

/// A probe that was put elsewhere than asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Misplaced {
    /// What was asked for.
    pub asked: Id<Reading>,
    /// What is measured there.
    pub put: Id<Reading>,
    /// Minutes that it took.
    pub minutes: f64,
}

impl Score {
    /// Counts what an event took, by the state before it.
    pub(super) fn take(&mut self, library: &Library, before: &State, event: &Event) {
        match event {
            Event::Measured { typed: Some(_), .. }
            | Event::Observed { .. }
            | Event::ReadPlate { .. }
            | Event::Doubted { .. }
            | Event::WasUnsure { .. }
            | Event::Did { .. } => self.minutes += cost(library, before).0,
            // Whoever only says so has not looked.
            Event::CouldNot { why, .. } if why == NOT_HERE => self.minutes += cost(library, before).0,
            Event::Entered { tree, role } if *role == Role::Danger => {
                let tree = library
                    .trees
                    .find(tree)
                    .filter(|tree| !self.raised.contains(tree));
                self.raised.extend(tree);
            }
            Event::Noted { text } => {
                if let Some(misplaced) = elsewhere::read(library, text) {
                    self.minutes += misplaced.minutes;
                    self.misplaced.push(misplaced);
                }
            }
            _ => {}
        }
    }

    /// Minutes that misplaced probes took.
    pub fn minutes_misplaced(&self) -> f64 {
        self.misplaced.iter().map(|misplaced| misplaced.minutes).sum()
    }
}
