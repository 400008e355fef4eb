//! A call on a desk, with a simulated furnace in front of it.

pub(super) use crate::cli::desk::Desk;

use crate::bench::machine::Machine;
use crate::bench::practice::{Debrief, Exercise, Mark, Reference, debrief};
use crate::library::Library;
use crate::walk::{Ask, Call, Command, Event, Known, NotDone, Standing};

/// A practice call: the desk of an ordinary call, and the exercise that stands between it and the face.
pub(super) struct PracticeDesk<'l, M> {
    library: &'l Library,
    desk: Desk<'l>,
    exercise: Exercise<M>,
    reference: Reference,
    ask: Ask,
    standing: Standing,
    /// What is told before.
    known: Vec<Known>,
    /// What came of it, once it is closed.
    known_after: Vec<Known>,
}

impl<'l, M: Machine + Clone> PracticeDesk<'l, M> {
    pub fn new(
        library: &'l Library,
        desk: Desk<'l>,
        exercise: Exercise<M>,
        reference: Reference,
        known: Vec<Known>,
    ) -> Self {
        Self {
            ask: exercise.ask(library, desk.state()),
            standing: exercise.standing(library, desk.state()),
            library,
            desk,
            exercise,
            reference,
            known,
            known_after: Vec::new(),
        }
    }

    /// The desk of the call.
    pub fn desk(&self) -> &Desk<'l> {
        &self.desk
    }

    fn debrief(&self) -> Debrief {
        let mended = self.exercise.machine().is_mended();
        let (score, state) = (self.exercise.score(), self.desk.state());
        debrief(self.library, &self.reference, score, state, mended)
    }
}

impl<M: Machine + Clone> Call for PracticeDesk<'_, M> {
    fn ask(&self) -> &Ask {
        &self.ask
    }

    fn standing(&self) -> &Standing {
        &self.standing
    }

    fn known(&self) -> &[Known] {
        &self.known
    }

    fn known_after(&self) -> &[Known] {
        &self.known_after
    }

    fn searches(&self) -> bool {
        self.exercise.searches(self.library, self.desk.state())
    }

    fn carry_out(&mut self, command: Command) -> Result<(), NotDone> {
        // Where the answer cannot be saved, the meter has shown nothing and no minute has passed.
        let mut exercise = self.exercise.clone();
        let mut events = exercise
            .decide(self.library, self.desk.state(), &command)
            .map_err(NotDone::Refused)?;
        if events.last() == Some(&Event::Closed) {
            let text = Mark::of(&self.debrief()).line();
            events.insert(events.len() - 1, Event::Noted { text });
        }
        self.desk.keep(&events)?;
        self.exercise = exercise;
        self.ask = self.exercise.ask(self.library, self.desk.state());
        self.standing = self.exercise.standing(self.library, self.desk.state());
        if self.desk.state().closed {
            self.known_after = self.debrief().sections();
        }
        Ok(())
    }
}
