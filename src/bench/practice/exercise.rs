//! An exercise: what the apprentice is asked, and what comes of an answer.

use std::sync::{Arc, OnceLock};

use super::ahead::{Ahead, is_free};
use super::found::One;
use super::groups::Groups;
use super::menu::Menu;
use super::score::Score;
use super::{Mode, Setup};
use crate::bench::machine::Machine;
use crate::library::{Datum, Id, Library, Reading, Step};
use crate::source::Safe;
use crate::walk::{Command, Event, Misfit, Opened, Refusal, Role, State, Wanted, apply, go_on, open, wanted};

/// A furnace, an apprentice's meters, and how far the exercise has come.
#[derive(Clone, Debug)]
pub struct Exercise<M> {
    pub(super) setup: Setup,
    pub(super) groups: Arc<Groups>,
    pub(super) ordered: Arc<OnceLock<Vec<One>>>,
    pub(super) machine: M,
    pub(super) menu: Menu,
    /// A probe stands elsewhere than asked.
    pub(super) elsewhere: Option<Elsewhere>,
    pub(super) score: Score,
}

/// A probe that stands elsewhere than asked.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Elsewhere {
    /// What is asked for.
    pub asked: Id<Reading>,
    /// What is measured there.
    pub put: Id<Reading>,
    /// What the meter shows.
    pub shown: Safe,
}

/// What stands before the apprentice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Turn {
    /// Whether the gate is walked at all.
    Gate,
    /// Where the probe goes.
    Place(Id<Reading>),
    /// Something is taken as soon as the apprentice says so.
    Take(Datum),
    /// A step's work.
    Work(Id<Step>),
    /// What is taken next, or which fault it is.
    Menu,
    /// What a call always asks.
    Call,
}

impl<M: Machine> Exercise<M> {
    /// At a furnace that was drawn for this setup. What stands in `missing`, by name, it cannot answer: it is not offered.
    pub fn new(library: &Library, setup: Setup, machine: M, missing: &[&str]) -> Self {
        Self {
            setup,
            groups: Arc::new(Groups::of(library, missing)),
            ordered: Arc::default(),
            machine,
            menu: match setup.mode {
                Mode::Free => Menu::Gate,
                Mode::Guided => Menu::Groups,
            },
            elsewhere: None,
            score: Score::default(),
        }
    }

    /// What it has cost so far.
    pub fn score(&self) -> &Score {
        &self.score
    }

    /// The furnace.
    pub fn machine(&self) -> &M {
        &self.machine
    }

    /// Opens the call.
    ///
    /// # Errors
    ///
    /// As [`open()`].
    pub fn open(&self, library: &Library, opened: Opened) -> Result<Vec<Event>, Refusal> {
        let mut ahead = self.ahead(library, State::default());
        ahead.take(open(library, opened)?, true)?;
        Ok(ahead.events)
    }

    fn ahead<'l>(&self, library: &'l Library, state: State) -> Ahead<'l> {
        Ahead::new(library, self.setup.mode, state, self.score.clone())
    }

    /// Takes up a call that was left: the furnace as it stands after the work that was done on it, and what it all took.
    /// Where the call stands comes back.
    ///
    /// # Errors
    ///
    /// Where the events are not of this library.
    pub fn take_up(&mut self, library: &Library, events: &[Event]) -> Result<State, Misfit> {
        let mut state = State::default();
        for event in events {
            self.score.take(library, &state, event);
            if let (Event::Did { .. }, Wanted::Work(step)) = (event, wanted(library, &state)) {
                self.machine.work(step);
            }
            apply(library, &mut state, event)?;
        }
        if !is_at_door(&state) {
            self.menu = Menu::Groups;
        }
        Ok(state)
    }

    /// What a call goes on to do by itself that was cut off in the middle of what an answer led to.
    ///
    /// # Errors
    ///
    /// As [`go_on()`].
    pub fn go_on(&self, library: &Library, state: &State) -> Result<Vec<Event>, Refusal> {
        let mut ahead = self.ahead(library, state.clone());
        ahead.take(go_on(library, state)?, true)?;
        Ok(ahead.events)
    }

    /// What stands before the apprentice.
    pub(super) fn turn(&self, library: &Library, state: &State) -> Turn {
        if self.menu == Menu::Gate && is_at_door(state) {
            return Turn::Gate;
        }
        match wanted(library, state) {
            Wanted::Value {
                leaf: Datum::Reading(id),
                ..
            } if self.setup.mode == Mode::Guided => Turn::Place(id),
            Wanted::Value { leaf, .. }
                if state.moment.retaking.is_some() || !is_free(self.setup.mode, state) =>
            {
                Turn::Take(leaf)
            }
            Wanted::Work(step) if !is_free(self.setup.mode, state) => Turn::Work(step),
            _ if is_free(self.setup.mode, state) => Turn::Menu,
            _ => Turn::Call,
        }
    }

    /// What a command leads to. The events are to be saved, then applied; where they cannot be saved, an exercise that was
    /// kept from before stands where it stood.
    ///
    /// # Errors
    ///
    /// Where the command cannot be carried out here.
    pub fn decide(
        &mut self,
        library: &Library,
        state: &State,
        command: &Command,
    ) -> Result<Vec<Event>, Refusal> {
        let mut ahead = self.ahead(library, state.clone());
        let elsewhere = self.elsewhere.take();
        match (self.turn(library, state), command) {
            (Turn::Gate, Command::Choose(choice)) => self.at_gate(library, &mut ahead, *choice)?,
            (Turn::Place(id), Command::Choose(choice)) => self.place(library, &mut ahead, id, *choice)?,
            (Turn::Take(leaf), Command::Done) => self.answer(library, &mut ahead, leaf)?,
            (Turn::Work(step), Command::Done) => {
                self.machine.work(step);
                ahead.carry_out(command)?;
            }
            (Turn::Menu, Command::Choose(choice)) => self.choose(library, &mut ahead, *choice)?,
            (Turn::Menu, Command::Type(words)) => match self.search(library, state, words) {
                Ok(()) => {}
                // What leads on from a list, and is nothing to be found: `name the fault`.
                Err(refusal) => match self.only_entry(library, state, words) {
                    Some(choice) => self.choose(library, &mut ahead, choice)?,
                    None => return Err(refusal),
                },
            },
            (Turn::Menu, Command::Done | Command::Unsure | Command::Unable(_)) => return Err(choose_first()),
            (Turn::Gate | Turn::Place(_) | Turn::Take(_), Command::Type(_) | Command::Choose(_)) => {
                return Err(Refusal::new(
                    "here the furnace answers",
                    "say where the probe goes, or done to take it",
                ));
            }
            (Turn::Gate | Turn::Place(_), Command::Done) => return Err(choose_first()),
            (_, Command::Note(_)) => {
                ahead.carry_out(command)?;
                self.elsewhere = elsewhere;
            }
            _ => ahead.carry_out(command)?,
        }
        self.score = ahead.score;
        Ok(ahead.events)
    }

    /// The gate is walked, or left out.
    fn at_gate(&mut self, library: &Library, ahead: &mut Ahead<'_>, choice: usize) -> Result<(), Refusal> {
        self.menu = Menu::Groups;
        if choice == 0 {
            return Ok(());
        }
        let complaint = ahead.state.moment.complaint;
        let Some(tree) = complaint.map(|tree| library.trees[tree].name.clone()) else {
            return Err(choose_first());
        };
        ahead.emit(Event::Noted {
            text: "Practice: the gate was left out".to_owned(),
        })?;
        ahead.emit(Event::Left { depth: 0 })?;
        let role = Role::Complaint;
        ahead.emit(Event::Entered { tree, role })
    }
}

/// Whether nothing was done yet, and the gate is next.
fn is_at_door(state: &State) -> bool {
    state.trail.is_empty() && state.top().is_some_and(|frame| frame.role == Role::Gate)
}

pub(super) fn choose_first() -> Refusal {
    Refusal::new(
        "nothing is to be answered here",
        "choose one of the list by its number",
    )
}
