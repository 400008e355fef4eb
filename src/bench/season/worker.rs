//! A technician with a habit: what is answered, and how long that takes.

use super::crew::Habit;
use crate::bench::condition::Condition;
use crate::bench::dice::Dice;
use crate::bench::furnace::Furnace;
use crate::bench::machine::{Machine, Truth};
use crate::bench::make::Make;
use crate::bench::meter;
use crate::bench::simulated::{Probes, Simulated};
use crate::bench::technician::Technician;
use crate::bench::trials::cost;
use crate::library::{Answers, Datum, Id, Input, Kind, Library, Obtained, PlateField, Reading, Remedy};
use crate::walk::{Command, Role, State, Wanted, wanted};

/// What a technician takes a furnace for before looking: another one, with the fault that is expected.
#[derive(Debug)]
pub struct Expected<'a> {
    /// That furnace.
    pub machine: Simulated<'a>,
    /// Its numbers are written down, too, and not only what is seen: read at the wrong moment, or not at all.
    pub numbers: bool,
}

/// How a technician treats what must be put back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leaving {
    /// It is put back.
    Whole,
    /// It is refused in writing.
    Refused,
    /// The technician drives off; the call is never closed.
    Abandoned,
}

/// A technician at a furnace.
#[derive(Debug)]
pub struct Worker<'m, 'a> {
    habit: Habit,
    hand: Technician<'m, Simulated<'a>>,
    /// The furnace that a technician who writes has in mind: always the same one.
    usual: Simulated<'a>,
    expected: Option<Expected<'a>>,
    leaving: Leaving,
    skipped_test: bool,
    dice: Dice,
}

/// What a technician does next.
#[derive(Clone, Debug, PartialEq)]
pub enum Deed {
    /// Answers, after so many seconds.
    Answers(Command, f64),
    /// Drives off.
    Leaves,
}

/// How many of the readings are written down by a technician who writes.
const WRITTEN: f64 = 0.7;

/// How far from a limit, as a share of it, a reading may lie and yet be stretched beyond it by somebody who wants a verdict.
const NEAR: f64 = 0.7;

impl<'m, 'a> Worker<'m, 'a> {
    /// A technician who is sent to a furnace.
    pub fn new(
        habit: Habit,
        machine: &'m mut Simulated<'a>,
        (probes, technician): (&'a Probes<'a>, usize),
        (expected, leaving): (Option<Expected<'a>>, Leaving),
        mut dice: Dice,
    ) -> Self {
        let furnace = Furnace {
            make: Make::random(technician as u64),
            condition: Condition::default(),
        };
        Self {
            habit,
            hand: Technician::new(machine, Dice::new(dice.whole())),
            usual: Simulated::new(probes, furnace),
            expected,
            leaving,
            skipped_test: false,
            dice,
        }
    }

    /// The furnace as it stands after what was done to it.
    pub fn machine(&self) -> &Simulated<'a> {
        self.hand.machine()
    }

    /// Whether a reading of the flue gas was not taken out of habit.
    pub fn has_skipped_test(&self) -> bool {
        self.skipped_test
    }

    /// What is done next; none once the call is closed.
    pub fn next(&mut self, library: &Library, state: &State) -> Option<Deed> {
        let waits = wanted(library, state);
        let own = match waits {
            Wanted::Value { leaf, .. } if is_at_work(state) => self.value(library, state, leaf),
            Wanted::Decision(fault) if self.habit == Habit::ChangesParts => {
                let part = matches!(library.faults[fault].remedy, Remedy::Replace(_));
                part.then(|| {
                    (
                        Command::Insist("seen it often enough, it is always that part".to_owned()),
                        20.0,
                    )
                })
            }
            Wanted::PutBack(restore) => match self.leaving {
                Leaving::Whole => None,
                Leaving::Refused => {
                    let why = "no time, the next customer is waiting".to_owned();
                    Some((Command::LeaveOpen(restore, why), 15.0))
                }
                Leaving::Abandoned => return Some(Deed::Leaves),
            },
            _ => None,
        };
        if let (Wanted::Work(step), Some(expected)) = (waits, &mut self.expected) {
            expected.machine.work(step);
        }
        let (command, seconds) = match own {
            Some(own) => own,
            None => (self.hand.answer(library, state)?, self.seconds(library, state)),
        };
        Some(Deed::Answers(command, seconds))
    }

    /// What the habit makes of a question; none where it is answered as it should be.
    fn value(&mut self, library: &Library, state: &State, leaf: Datum) -> Option<(Command, f64)> {
        match (self.habit, leaf) {
            (Habit::SkipsTheTest, Datum::Reading(id)) if is_of_flue_gas(library, id) => {
                let seconds = self.dice.between(5.0, 20.0);
                self.skipped_test = true;
                Some((
                    Command::Unable("left the analyser in the shop".to_owned()),
                    seconds,
                ))
            }
            (Habit::Writes, Datum::Reading(_)) if self.dice.chance(WRITTEN) => {
                let Some(Truth::Number(usual)) = self.usual.ask(leaf) else {
                    return None;
                };
                Some((Command::Type(rounded(usual)), self.dice.between(1.5, 4.0)))
            }
            (Habit::ChangesParts, Datum::Reading(id)) if self.expected.is_none() => {
                let typed = self.stretched(library, state, id)?;
                Some((Command::Type(typed), self.seconds(library, state)))
            }
            (_, Datum::Sign(_)) => self.expects(library, state),
            (_, Datum::Reading(_)) if self.expected.as_ref().is_some_and(|expected| expected.numbers) => {
                self.expects(library, state)
            }
            _ => None,
        }
    }

    /// The answer that the expected furnace would give.
    fn expects(&mut self, library: &Library, state: &State) -> Option<(Command, f64)> {
        let seconds = self.seconds(library, state);
        let dice = Dice::new(self.dice.whole());
        let machine = &mut self.expected.as_mut()?.machine;
        let command = Technician::new(machine, dice).answer(library, state)?;
        Some((command, seconds))
    }

    /// A reading that the plate sets a limit to, read as just beyond it; none where it lies far from any.
    ///
    /// It is then too close to that limit to prove anything.
    fn stretched(&mut self, library: &Library, state: &State, id: Id<Reading>) -> Option<String> {
        let Kind::Measure {
            reading,
            answers: Answers::Bands(bands),
            ..
        } = &library[state.top()?.step].kind
        else {
            return None;
        };
        let asked = *reading == id;
        let Some(Truth::Number(truth)) = self.hand.ask(Datum::Reading(id)).filter(|_| asked) else {
            return None;
        };
        let fields = |field: &Id<PlateField>| state.field(*field);
        let bounds = bands.iter().flat_map(|answer| answer.band.bounds());
        let bounds = bounds.filter(|bound| bound.leans_on().is_some());
        let limits =
            bounds.filter_map(|bound| Some(bound.value(&fields)?.number_in(library.readings[id].scale)));
        let nearest = limits.min_by(|one, other| (one - truth).abs().total_cmp(&(other - truth).abs()))?;
        let away = nearest - truth;
        (away.abs() <= NEAR * nearest.abs())
            .then(|| three_digits(nearest + 0.005 * nearest.abs() * away.signum()))
    }

    /// How long an honest answer takes: the minutes that the library gives for it, more or less; a short while where it gives
    /// none.
    fn seconds(&mut self, library: &Library, state: &State) -> f64 {
        let (minutes, _) = cost(library, state);
        60.0 * minutes * self.dice.between(0.7, 1.5) + self.dice.between(8.0, 45.0)
    }
}

/// Past the gate and in no danger: what is asked there is answered by everybody as it is.
fn is_at_work(state: &State) -> bool {
    let outermost = state.moment.frames.first();
    outermost.is_some_and(|frame| frame.role == Role::Complaint)
}

/// Whether a formula of combustion is worked out from a reading.
fn is_of_flue_gas(library: &Library, id: Id<Reading>) -> bool {
    library
        .readings
        .iter()
        .any(|(_, reading)| match &reading.source_of_value {
            Obtained::WorkedOut { formula, inputs } => {
                formula.group.name() == "combustion" && inputs.contains(&Input::Reading(id))
            }
            Obtained::Measured(_) => false,
        })
}

/// A number with as many digits as a meter shows.
fn three_digits(number: f64) -> String {
    meter::number(format!("{number:.2e}").parse().unwrap_or(number))
}

/// What is less than this is nothing to somebody who writes.
const LEAST: f64 = 0.05;

/// A number as someone writes it who has not read it: two or three digits, the last a five or a nought.
fn rounded(number: f64) -> String {
    if number.abs() < LEAST || !number.is_finite() {
        return "0".to_owned();
    }
    let size = number.abs().log10().floor() as i32;
    // From one to two of the largest digit, fives of the third; above, of the second.
    let (parts, digits) = match number.abs() < 2.0 * 10f64.powi(size) {
        true => (20.0, 2),
        false => (2.0, 1),
    };
    let step = 10f64.powi(size) / parts;
    let decimals = (digits - size).max(0) as usize;
    format!("{:.decimals$}", (number / step).round() * step)
}

#[cfg(test)]
mod tests {
    use super::rounded;

    #[test]
    fn who_writes_writes_fives_and_noughts() {
        let written = [
            (26.3, "25"),
            (0.47, "0.45"),
            (119.2, "120"),
            (3.48, "3.5"),
            (1.31, "1.30"),
            (0.02, "0"),
            (0.0, "0"),
        ];
        for (number, as_written) in written {
            assert_eq!(rounded(number), as_written);
        }
    }
}
