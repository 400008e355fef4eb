//! One call, walked from the complaint to the closed door.

use crate::bench::dice::Dice;
use crate::bench::machine::Machine;
use crate::bench::technician::Technician;
use crate::library::{Datum, Kind, Library, Step};
use crate::walk::{
    Event, LibraryMark, Opened, Refusal, State, Wanted, apply, carry_out, open, open_at, wanted,
};

/// More answers than any call needs: a walk that takes so many is going round in circles.
const MOST: usize = 2_000;

/// Events of a usual call.
const USUAL: usize = 160;

/// A call that was walked to its end.
#[derive(Clone, Debug)]
pub struct Walked {
    /// Everything that happened.
    pub events: Vec<Event>,
    /// Where it ended.
    pub state: State,
    /// Minutes that its readings, signs and steps say they take, those taken twice counted twice.
    pub minutes: f64,
    /// Questions answered and steps done before it ended.
    pub steps: usize,
    /// The walk's own work has put right what was wrong.
    pub mended: bool,
}

/// Where a call begins.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Door {
    /// At the gate, as every call at a house does.
    Gate,
    /// In the tree itself.
    Tree,
}

/// Walks a call at a machine.
///
/// # Errors
///
/// Where an answer is refused or the walk comes to no end: a fault of the library, or of the machine.
pub fn walk(
    library: &Library,
    tree: &str,
    door: Door,
    machine: &mut impl Machine,
    dice: Dice,
) -> Result<Walked, Refusal> {
    let opened = Opened {
        library: LibraryMark::default(),
        tree: tree.to_owned(),
        technician: None,
        site: None,
        equipment: None,
        program: String::new(),
        answered_from: None,
    };
    let mut events = match door {
        Door::Gate => open(library, opened)?,
        Door::Tree => open_at(library, opened)?,
    };
    // As many as most calls come to: a list that grows is copied each time.
    events.reserve(USUAL);
    let mut state = State::default();
    for event in &events {
        apply(library, &mut state, event)
            .map_err(|misfit| Refusal::new(misfit.to_string(), "run `proofwalk check` on the library"))?;
    }
    let mut technician = Technician::new(machine, dice);
    let (mut minutes, mut steps) = (0.0, 0);
    for _ in 0..MOST {
        if state.ended.is_none() {
            let (took, answered) = cost(library, &state);
            minutes += took;
            steps += usize::from(answered);
        }
        let Some(command) = technician.answer(library, &state) else {
            return Ok(Walked {
                events,
                state,
                minutes,
                steps,
                mended: technician.machine().is_mended(),
            });
        };
        (state, events) = carry_out(library, state, events, &command)?;
    }
    Err(Refusal::new(
        format!("the walk took more than {MOST} answers"),
        "run `proofwalk check` on the library: a loop has no limit",
    ))
}

/// Minutes that answering what the walk waits for takes, and whether it is work for the technician.
pub fn cost(library: &Library, state: &State) -> (f64, bool) {
    match wanted(library, state) {
        Wanted::Value { of, leaf } => {
            let own = match leaf {
                Datum::Reading(id) => library.readings[id].taking.minutes,
                Datum::Sign(id) => library.signs[id].taking.minutes,
                Datum::Field(_) => None,
            };
            // A step's own figure is for what it asks, not for each thing that is worked into it.
            let at_step = state.top().map(|frame| &library[frame.step]);
            let said = at_step
                .filter(|step| of == leaf && asks(step, of))
                .and_then(|step| step.minutes);
            (said.or(own).unwrap_or_default(), true)
        }
        Wanted::Work(step) => (library[step].minutes.unwrap_or_default(), true),
        _ => (0.0, false),
    }
}

/// Whether a step asks for a datum itself, and not a proof out of turn.
fn asks(step: &Step, datum: Datum) -> bool {
    match &step.kind {
        Kind::Measure { reading, .. } => datum == Datum::Reading(*reading),
        Kind::Observe { sign, .. } => datum == Datum::Sign(*sign),
        Kind::Plate { field, .. } => datum == Datum::Field(*field),
        _ => false,
    }
}
