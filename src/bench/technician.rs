//! A careful technician at a machine: answers what a walk waits for, with meters that err.

use super::dice::Dice;
use super::machine::{Machine, Truth};
use super::meter;
use crate::library::{Datum, Kind, Library};
use crate::walk::{Command, Holding, State, Wanted, proof_lines, takeable, wanted};

/// Answers what a walk waits for by asking a machine.
///
/// What cannot be taken is said to be so; what could not be told is said to be unsure, where the step asks for that. A
/// verdict that is not proven is answered by taking what its proof lacks, and once more what lies too close to a bound;
/// then by ending without one. What is open is put back.
#[derive(Debug)]
pub struct Technician<'m, M> {
    machine: &'m mut M,
    dice: Dice,
    /// What was taken for a proof: each is tried once.
    tried: Vec<Datum>,
}

impl<'m, M: Machine> Technician<'m, M> {
    /// At a machine, with meters that err as the dice say.
    pub fn new(machine: &'m mut M, dice: Dice) -> Self {
        Self {
            machine,
            dice,
            tried: Vec::new(),
        }
    }

    /// The machine as it stands after what was done to it.
    pub fn machine(&self) -> &M {
        self.machine
    }

    /// What a reading, a sign or a plate field of the machine is now, before any meter errs.
    pub fn ask(&mut self, of: Datum) -> Option<Truth> {
        self.machine.ask(of)
    }

    /// The command that answers; none once the call is closed.
    pub fn answer(&mut self, library: &Library, state: &State) -> Option<Command> {
        Some(match wanted(library, state) {
            Wanted::Value { leaf, .. } => taken(self.machine, &mut self.dice, library, state, leaf),
            Wanted::Work(step) => {
                self.machine.work(step);
                Command::Done
            }
            Wanted::Decision(fault) => self.decide(&proof_lines(library, state, fault), state),
            Wanted::PutBack(restore) => Command::PutBack(restore),
            Wanted::Close => Command::Close,
            Wanted::Nothing | Wanted::Onward => return None,
        })
    }

    fn decide(&mut self, lines: &[(&crate::library::ProofLine, Holding)], state: &State) -> Command {
        let open = |holding: &Holding| matches!(holding, Holding::Missing | Holding::Borderline);
        let lacking = lines.iter().filter(|(_, holding)| open(holding));
        let mut data = lacking.flat_map(|(line, _)| takeable(state, line));
        match data.find(|datum| !self.tried.contains(datum)) {
            Some(datum) => {
                self.tried.push(datum);
                Command::Take(datum)
            }
            None => Command::Stop("the verdict is not proven".to_owned()),
        }
    }
}

/// Why a furnace shows nothing where it is asked.
pub const NOT_HERE: &str = "not at this furnace, or not in this state";

/// What is answered for a value that a walk waits for: what a meter shows of it, what is seen, what stands on the plate.
pub fn taken(
    machine: &mut impl Machine,
    dice: &mut Dice,
    library: &Library,
    state: &State,
    leaf: Datum,
) -> Command {
    match (leaf, machine.ask(leaf)) {
        (Datum::Reading(id), Some(Truth::Number(truth))) => {
            Command::Type(meter::typed(&library.readings[id], truth, dice))
        }
        (Datum::Field(id), Some(Truth::Number(truth))) => {
            Command::Type(meter::copied(&library.plate[id], truth))
        }
        (Datum::Sign(_) | Datum::Field(_), Some(Truth::Value(value))) => Command::Choose(value),
        (Datum::Sign(_), _) if asks_whether_unsure(library, state) => Command::Unsure,
        _ => Command::Unable(NOT_HERE.to_owned()),
    }
}

/// Whether the step that the walk stands at has an answer for a technician who cannot tell.
fn asks_whether_unsure(library: &Library, state: &State) -> bool {
    state
        .top()
        .is_some_and(|frame| matches!(&library[frame.step].kind, Kind::Observe { unsure: Some(_), .. }))
}
