//! A call that runs ahead of what is saved, and in free practice stays where it is.

use super::Mode;
use super::score::Score;
use crate::library::Library;
use crate::walk::{Command, Event, Refusal, Role, State, Wanted, apply, decide, go_on, wanted};

/// A state that runs ahead of what is saved, with the events that led there.
pub struct Ahead<'l> {
    library: &'l Library,
    mode: Mode,
    pub state: State,
    pub score: Score,
    pub events: Vec<Event>,
}

impl<'l> Ahead<'l> {
    pub fn new(library: &'l Library, mode: Mode, state: State, score: Score) -> Self {
        Self {
            library,
            mode,
            state,
            score,
            events: Vec::new(),
        }
    }

    /// Carries a command out, as far as the mode lets it lead.
    pub fn carry_out(&mut self, command: &Command) -> Result<(), Refusal> {
        let events = decide(self.library, &self.state, command)?;
        let held = !matches!(command, Command::Stop(_));
        self.take(events, held)?;
        if self.is_stuck() {
            // All that it is worked out from stands already: nothing is asked, and the call goes on by itself.
            let events = go_on(self.library, &self.state)?;
            self.take(events, held)?;
        }
        self.leave_what_cannot_be_worked_out()
    }

    /// Whether something is to be worked out in free practice, and nothing more is asked for it.
    fn is_stuck(&self) -> bool {
        let retaking = self.state.moment.retaking.is_some();
        retaking && is_free(self.mode, &self.state) && wanted(self.library, &self.state) == Wanted::Onward
    }

    /// Takes events over. In free practice the complaint's tree is not walked: it would find the fault by itself, as soon as
    /// what it asks for was taken.
    pub fn take(&mut self, events: Vec<Event>, held: bool) -> Result<(), Refusal> {
        for event in events {
            if held && is_free(self.mode, &self.state) && walks(&event) {
                break;
            }
            self.emit(event)?;
        }
        Ok(())
    }

    /// Something has happened.
    pub fn emit(&mut self, event: Event) -> Result<(), Refusal> {
        self.score.take(self.library, &self.state, &event);
        apply(self.library, &mut self.state, &event)
            .map_err(|misfit| Refusal::new(misfit.to_string(), "run `proofwalk check` on the library"))?;
        self.events.push(event);
        Ok(())
    }

    /// On a walk, what cannot be worked out ends it; in free practice it is only not to be had.
    fn leave_what_cannot_be_worked_out(&mut self) -> Result<(), Refusal> {
        let stuck = self.is_stuck();
        match self.state.moment.retaking {
            Some(retaking) if stuck => self.emit(Event::CouldNot {
                datum: self.library.name_of(retaking.datum).to_owned(),
                why: "it cannot be worked out from these".to_owned(),
            }),
            _ => Ok(()),
        }
    }
}

/// Whether the apprentice decides what comes next: in free practice, in the tree of the complaint and nowhere else.
pub fn is_free(mode: Mode, state: &State) -> bool {
    let in_complaint = match state.moment.frames.as_slice() {
        [frame] => frame.role == Role::Complaint,
        _ => false,
    };
    mode == Mode::Free && in_complaint && state.ended.is_none()
}

/// Whether an event is a step of the tree's own.
fn walks(event: &Event) -> bool {
    matches!(
        event,
        Event::Took { .. }
            | Event::Entered {
                role: Role::Visit,
                ..
            }
            | Event::Returned { .. }
            | Event::Stated { .. }
            | Event::Withheld { .. }
            | Event::Ended(_)
    )
}
