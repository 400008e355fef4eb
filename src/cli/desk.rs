//! A call with its journal: what the faces are handed.

use jiff::Timestamp;

use super::failure::{Failure, NOT_SAVED};
use crate::library::Library;
use crate::store::Journal;
use crate::walk::{
    Ask, Call, Command, Event, Known, NotDone, Opened, Refusal, Standing, State, apply, ask, decide, encode,
    go_on, open, standing,
};

/// A call on a desk: state, journal, and what is shown of it.
pub(super) struct Desk<'l> {
    library: &'l Library,
    state: State,
    journal: Journal,
    clock: Option<Timestamp>,
    /// The last command could not be saved.
    unsaved: bool,
    ask: Ask,
    standing: Standing,
    known: Vec<Known>,
}

impl<'l> Desk<'l> {
    /// Opens a call; its first events are on disk when this returns.
    pub fn open(
        library: &'l Library,
        opened: Opened,
        journal: Journal,
        clock: Option<Timestamp>,
    ) -> Result<Self, Failure> {
        Self::begin(library, &open(library, opened)?, journal, clock)
    }

    /// Begins a call with the events that open it; they are on disk when this returns.
    pub fn begin(
        library: &'l Library,
        events: &[Event],
        journal: Journal,
        clock: Option<Timestamp>,
    ) -> Result<Self, Failure> {
        let mut desk = Self::at(library, State::default(), journal, clock);
        desk.save(events)?;
        desk.fold(events)?;
        Ok(desk)
    }

    /// A call that stands somewhere already.
    pub fn at(library: &'l Library, state: State, journal: Journal, clock: Option<Timestamp>) -> Self {
        Self {
            ask: ask(library, &state),
            standing: standing(library, &state),
            library,
            state,
            journal,
            clock,
            unsaved: false,
            known: Vec::new(),
        }
    }

    /// Finishes what the last answer led to, where the call was cut off in the middle of it.
    pub fn go_on(&mut self) -> Result<(), Failure> {
        let events = go_on(self.library, &self.state)?;
        self.keep_on(&events)
    }

    /// Takes over what the call went on to do by itself.
    pub fn keep_on(&mut self, events: &[Event]) -> Result<(), Failure> {
        if events.is_empty() {
            return Ok(());
        }
        self.save(events)?;
        self.fold(events)
    }

    /// Tells what was known of the equipment before.
    pub fn knows(&mut self, known: Vec<Known>) {
        self.known = known;
    }

    /// Whether the last command could not be saved.
    pub fn is_unsaved(&self) -> bool {
        self.unsaved
    }

    /// Where the call stands.
    pub fn state(&self) -> &State {
        &self.state
    }

    /// Writes down something that happened to the call, and not in it.
    pub fn record(&mut self, event: Event) -> Result<(), Failure> {
        self.save(std::slice::from_ref(&event))?;
        self.fold(&[event])
    }

    /// Keeps what an answer led to. When this returns `Ok`, it is on disk.
    pub fn keep(&mut self, events: &[Event]) -> Result<(), NotDone> {
        if events.is_empty() {
            return Ok(());
        }
        let saved = self.save(events);
        self.unsaved = saved.is_err();
        saved.map_err(|error| NotDone::NotSaved {
            message: error.message,
            help: "your answer stands here: try again once there is room; quit and resume where that does not help"
                .to_owned(),
        })?;
        self.fold(events).map_err(|failure| {
            NotDone::Refused(Refusal::new(failure.message, "quit and run `proofwalk verify`"))
        })
    }

    fn save(&mut self, events: &[Event]) -> Result<(), Failure> {
        let lines: Result<Vec<String>, _> = events.iter().map(encode).collect();
        let lines = lines
            .map_err(|error| Failure::new(NOT_SAVED, format!("the answer cannot be written: {error}")))?;
        self.journal
            .append(&lines, self.clock.unwrap_or_else(Timestamp::now))?;
        Ok(())
    }

    fn fold(&mut self, events: &[Event]) -> Result<(), Failure> {
        for event in events {
            apply(self.library, &mut self.state, event)?;
        }
        self.ask = ask(self.library, &self.state);
        self.standing = standing(self.library, &self.state);
        Ok(())
    }
}

impl Call for Desk<'_> {
    fn ask(&self) -> &Ask {
        &self.ask
    }

    fn standing(&self) -> &Standing {
        &self.standing
    }

    fn known(&self) -> &[Known] {
        &self.known
    }

    fn carry_out(&mut self, command: Command) -> Result<(), NotDone> {
        let events = decide(self.library, &self.state, &command).map_err(NotDone::Refused)?;
        self.keep(&events)
    }
}
