//! What a command leads to: every rule of the walk stands here and in the files beside it.

mod advance;
mod against;
mod answer;
mod close;
mod reconsider;

pub(super) use against::follow;

use super::apply::{Misfit, apply, inputs_of};
use super::command::{Command, Refusal};
use super::event::{End, Event, Opened, Role, Voiding};
use super::state::State;
use super::wanted::{Wanted, wanted};
use crate::library::{Datum, Id, Library, Step, Tree};
use against::Against;

/// Opens a call on a complaint: the gate is walked first.
///
/// # Errors
///
/// Where the library has no tree of that name.
pub fn open(library: &Library, opened: Opened) -> Result<Vec<Event>, Refusal> {
    let Some(tree) = library.trees.find(&opened.tree) else {
        return Err(Refusal::new(
            format!("there is no tree `{}`", crate::source::safe(&opened.tree)),
            "choose one of the library's trees",
        ));
    };
    start(library, opened, first_tree(library, tree))
}

/// Opens a call in a tree without the gate, as a scenario does.
///
/// # Errors
///
/// Where the library has no tree of that name.
pub fn open_at(library: &Library, opened: Opened) -> Result<Vec<Event>, Refusal> {
    let Some(tree) = library.trees.find(&opened.tree) else {
        return Err(Refusal::new(
            "there is no such tree",
            "choose one of the library's trees",
        ));
    };
    start(library, opened, (tree, Role::Complaint))
}

fn start(library: &Library, opened: Opened, first: (Id<Tree>, Role)) -> Result<Vec<Event>, Refusal> {
    let mut walk = Walk::new(library, State::default());
    walk.begin(opened, first)?;
    Ok(walk.events)
}

/// The tree that a call enters first, and why: the gate, unless the call is about a danger or about the gate itself.
fn first_tree(library: &Library, tree: Id<Tree>) -> (Id<Tree>, Role) {
    if library.dangers.iter().any(|danger| danger.tree == tree) {
        return (tree, Role::Danger);
    }
    match library.gate {
        Some(gate) if gate != tree => (gate, Role::Gate),
        _ => (tree, Role::Complaint),
    }
}

/// What a command leads to. The events are to be saved, then applied.
///
/// # Errors
///
/// Where the command cannot be carried out here; then nothing has happened.
pub fn decide(library: &Library, state: &State, command: &Command) -> Result<Vec<Event>, Refusal> {
    let mut walk = Walk::new(library, state.clone());
    walk.carry_out(command)?;
    Ok(walk.events)
}

/// Carries a command out on a state that nobody else looks at: what [`decide()`] and then [`apply()`](super::apply()) come
/// to, without a copy of the state, and the events behind those before. For walks that are kept nowhere; a refused one is lost.
///
/// # Errors
///
/// As [`decide()`].
pub fn carry_out(
    library: &Library,
    state: State,
    before: Vec<Event>,
    command: &Command,
) -> Result<(State, Vec<Event>), Refusal> {
    let mut walk = Walk {
        events: before,
        ..Walk::new(library, state)
    };
    walk.carry_out(command)?;
    Ok((walk.state, walk.events))
}

/// What a walk goes on to do by itself: nothing, unless it was cut off in the middle of an answer's consequences.
///
/// # Errors
///
/// Where the library does not hold together.
pub fn go_on(library: &Library, state: &State) -> Result<Vec<Event>, Refusal> {
    let mut walk = Walk::new(library, state.clone());
    walk.go_on()?;
    Ok(walk.events)
}

/// A state that runs ahead of what is saved, and the events that led there.
struct Walk<'l> {
    library: &'l Library,
    state: State,
    events: Vec<Event>,
    /// What was recorded of the same walk, where it is held against that.
    against: Option<Against<'l>>,
}

impl<'l> Walk<'l> {
    fn new(library: &'l Library, state: State) -> Self {
        Self {
            library,
            state,
            events: Vec::new(),
            against: None,
        }
    }

    fn begin(&mut self, opened: Opened, (tree, role): (Id<Tree>, Role)) -> Result<(), Refusal> {
        self.emit(Event::Opened(Box::new(opened)))?;
        let tree = self.library.trees[tree].name.clone();
        self.emit(Event::Entered { tree, role })?;
        self.advance()
    }

    fn go_on(&mut self) -> Result<(), Refusal> {
        let state = &self.state;
        if let (Some(complaint), true, None) = (
            state.moment.complaint,
            state.moment.frames.is_empty(),
            &state.ended,
        ) {
            // Cut off before it entered its first tree, or between the gate and the complaint.
            let (tree, role) = match state.trail.is_empty() {
                true => first_tree(self.library, complaint),
                false => (complaint, Role::Complaint),
            };
            let tree = self.library.trees[tree].name.clone();
            self.emit(Event::Entered { tree, role })?;
        }
        self.advance()
    }

    fn emit(&mut self, event: Event) -> Result<(), Refusal> {
        let event = match &mut self.against {
            Some(against) => against.hold(self.events.len(), event)?,
            None => event,
        };
        apply(self.library, &mut self.state, &event).map_err(|Misfit { .. }| {
            // An event made from this library and this state fits both; a library with an error is not walked.
            Refusal::new(
                "the library does not hold together here",
                "run `proofwalk check` on it",
            )
        })?;
        self.events.push(event);
        Ok(())
    }

    fn carry_out(&mut self, command: &Command) -> Result<(), Refusal> {
        if self.state.closed {
            return Err(Refusal::new("the call is closed", "open a new one"));
        }
        match command {
            Command::Note(text) => self.emit(Event::Noted { text: words(text)? }),
            Command::PutBack(restore) => self.put_back(*restore, None),
            Command::LeaveOpen(restore, why) => self.put_back(*restore, Some(words(why)?)),
            Command::Close => self.close(),
            // Gas can be smelled while the doors are put back.
            Command::Danger(index) if !self.state.ended_in_danger() => self.danger(*index),
            Command::Back(_) if self.state.interrupted.is_some() => Err(Refusal::new(
                "the walk had ended before this danger",
                "answer what the danger asks; then put back what is open",
            )),
            _ if self.state.ended.is_some() => Err(Refusal::new(
                "the walk has ended",
                "put back what is open, then close the call",
            )),
            Command::Type(text) => self.typed(text),
            Command::Choose(value) => self.chosen(*value),
            Command::Unable(why) => self.unable(why),
            Command::Unsure => self.unsure(),
            Command::Done => self.done(),
            Command::Take(datum) => self.take(*datum, true),
            Command::Retake(datum) => self.take(*datum, false),
            Command::Back(to) => self.back(*to),
            Command::Danger(index) => self.danger(*index),
            Command::Stop(why) => self.end(End::Unproven { why: words(why)? }),
            Command::Insist(text) => self.insist(text),
        }
    }

    /// The step the walk is at.
    fn step(&self) -> Option<&'l Step> {
        let frame = self.state.top()?;
        Some(&self.library[frame.step])
    }

    fn wanted(&self) -> Wanted {
        wanted(self.library, &self.state)
    }

    fn name(&self, datum: Datum) -> String {
        self.library.name_of(datum).to_owned()
    }

    fn end(&mut self, end: End) -> Result<(), Refusal> {
        self.emit(Event::Ended(end))
    }

    /// Takes a value out of turn: one that a proof lacks, or one that stands.
    fn take(&mut self, datum: Datum, for_proof: bool) -> Result<(), Refusal> {
        let stands = self.state.value(datum).is_some();
        if !stands && !for_proof {
            return Err(Refusal::new(
                "this has not been taken, so it cannot be taken again",
                "choose something that has an answer",
            ));
        }
        let datum_name = self.name(datum);
        if stands {
            let inputs = inputs_of(self.library, datum);
            let data = inputs
                .into_iter()
                .chain([datum])
                .map(|datum| self.name(datum))
                .collect();
            let why = Voiding::Retake;
            self.emit(Event::Voided { data, why })?;
        }
        self.emit(Event::Retaking {
            datum: datum_name,
            for_proof,
        })?;
        // What is worked out may lack nothing any more.
        self.advance()
    }

    fn back(&mut self, to: usize) -> Result<(), Refusal> {
        if to >= self.state.trail.len() {
            return Err(Refusal::new(
                "there is no such answer",
                "choose one of the answers given",
            ));
        }
        self.emit(Event::WentBack { to })?;
        self.advance()
    }

    fn danger(&mut self, index: usize) -> Result<(), Refusal> {
        let Some(danger) = self.library.dangers.get(index) else {
            return Err(Refusal::new(
                "there is no such danger",
                "choose one from the list",
            ));
        };
        let tree = self.library.trees[danger.tree].name.clone();
        let role = Role::Danger;
        self.emit(Event::Entered { tree, role })?;
        self.advance()
    }

    fn insist(&mut self, text: &str) -> Result<(), Refusal> {
        let Wanted::Decision(fault) = self.wanted() else {
            return Err(Refusal::new(
                "there is no verdict to insist on here",
                "go on to a verdict first, or stop without one",
            ));
        };
        let fault = self.library.faults[fault].name.clone();
        let words = words(text)?;
        self.end(End::Insisted { fault, words })
    }
}

/// What must be given in writing.
fn words(text: &str) -> Result<String, Refusal> {
    let text = text.trim();
    if text.is_empty() {
        return Err(Refusal::new(
            "this needs a few words in writing",
            "say why, or what was found",
        ));
    }
    Ok(text.to_owned())
}
