//! How hard a practice call is, and which furnace its seed draws.

use super::Mode;
use crate::bench::condition::Condition;
use crate::bench::dice::Dice;
use crate::bench::faults::{self, Fault};
use crate::bench::machine::Machine;
use crate::bench::make::Make;
use crate::bench::trials::{Drawn, Subject, draw};
use crate::library::Library;
use crate::walk::Opened;

/// How hard a practice call is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Level {
    /// One of the faults that a technician meets every winter.
    Common,
    /// Any fault, or none.
    Any,
    /// Two at once, or one that shows only while the furnace runs.
    Hard,
}

/// What a furnace is called on for most (common practice).
const COMMON: &[&str] = &[
    "batteries_flat",
    "blower_capacitor_weak",
    "blower_motor_dead",
    "board_no_igniter_output",
    "breaker_tripped",
    "cable_broken",
    "door_not_pressing",
    "drain_backs_up",
    "drain_trap_blocked",
    "draft_hose",
    "filter_loaded",
    "flame_sensor_dirty",
    "gas_turned_off",
    "gas_valve_coil_open",
    "igniter_open",
    "inducer_seized",
    "limit_failed_open",
    "pressure_switch_open",
    "switched_off",
    "thermostat_open",
    "transformer_dead",
    "vent_blocked",
];

/// Faults that come only warm, under load, in the wind or after a while.
const COMES_AND_GOES: &[&str] = &[
    "board_drops_valve_late",
    "blower_motor_tight",
    "gas_valve_falls",
    "igniter_opens_hot",
    "limit_opens_early",
    "regulator_freezes",
    "supply_collapses",
    "wind",
];

/// How often a hard call has two faults, and not one that comes and goes.
const TWO: f64 = 0.6;

/// How often nothing is wrong where anything may be: often enough that a class meets it.
const SOUND: f64 = 0.1;

/// Faults drawn before the first is found that fits a furnace.
const TRIES: usize = 100;

impl Level {
    /// From its number.
    pub fn of(number: u8) -> Option<Self> {
        Some(match number {
            1 => Self::Common,
            2 => Self::Any,
            3 => Self::Hard,
            _ => return None,
        })
    }

    /// Its number.
    pub fn number(self) -> u8 {
        match self {
            Self::Common => 1,
            Self::Any => 2,
            Self::Hard => 3,
        }
    }

    /// What it is, in a few words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Common => "one common fault",
            Self::Any => "any fault, or none",
            Self::Hard => "two faults at once, or one that comes and goes",
        }
    }

    fn subject(self, dice: &mut Dice) -> Subject {
        match self {
            Self::Common => one(dice, |fault| COMMON.contains(&fault.name), Subject::One),
            Self::Any if dice.chance(SOUND) => Subject::Sound,
            Self::Any => one(dice, |_| true, Subject::One),
            Self::Hard if dice.chance(TWO) => one(dice, |_| true, Subject::Two),
            Self::Hard => one(dice, |fault| COMES_AND_GOES.contains(&fault.name), Subject::One),
        }
    }
}

/// One of the faults that are asked for.
fn one(dice: &mut Dice, which: impl Fn(&Fault) -> bool, subject: fn(&'static Fault) -> Subject) -> Subject {
    let chosen: Vec<_> = faults::all().filter(|fault| which(fault)).collect();
    let drawn = dice.below(chosen.len());
    chosen.get(drawn).map_or(Subject::Sound, |fault| subject(fault))
}

/// What makes two practice calls the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Setup {
    /// Draws the furnace and its fault.
    pub seed: u64,
    /// How hard it is.
    pub level: Level,
    /// How it is practised.
    pub mode: Mode,
}

impl Setup {
    /// Draws the furnace; with it, the subject by which the same call can be played again. None where nothing fits.
    pub fn draw<M: Machine>(
        &self,
        library: &Library,
        build: impl Fn(Make, Condition) -> M,
    ) -> Option<(Subject, Drawn<M>)> {
        let mut dice = Dice::of(&[self.seed, u64::from(self.level.number()), u64::from(b'p')]);
        (0..TRIES).find_map(|_| {
            let subject = self.level.subject(&mut dice);
            let drawn = draw(library, subject, self.seed, &build)?;
            library.trees.find(drawn.tree).map(|_| (subject, drawn))
        })
    }

    /// The setup of a mark; none where it is no practice of this version's.
    pub fn read(mark: &str) -> Option<Self> {
        let mut words = mark.strip_prefix(Opened::PRACTICE)?.split(' ');
        let seed = words.next()?.parse().ok()?;
        let level = words.next().filter(|word| *word == "level").and(words.next())?;
        let setup = Self {
            seed,
            level: Level::of(level.parse().ok()?)?,
            mode: match words.next() {
                None => Mode::Free,
                Some(_) => Mode::Guided,
            },
        };
        (setup.mark() == mark).then_some(setup)
    }

    /// As it stands in the record of the call, where a file would stand that answered: nothing of the fault.
    pub fn mark(&self) -> String {
        let mode = match self.mode {
            Mode::Guided => Opened::GUIDED,
            Mode::Free => "",
        };
        format!(
            "{}{} level {}{mode}",
            Opened::PRACTICE,
            self.seed,
            self.level.number()
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_name_of_the_lists_is_a_fault() {
        for name in COMMON.iter().chain(COMES_AND_GOES) {
            assert!(faults::all().any(|fault| fault.name == *name), "{name}");
        }
    }

    #[test]
    fn a_mark_is_read_as_it_was_written() {
        for (seed, level, mode) in [
            (0, Level::Common, Mode::Free),
            (u64::MAX, Level::Hard, Mode::Guided),
        ] {
            let setup = Setup { seed, level, mode };
            assert_eq!(Setup::read(&setup.mark()), Some(setup));
        }
        for other in [
            "practice seed 3",
            "practice seed 3 level 4",
            "practice seed 3 level 1 blind",
            "a.yaml",
        ] {
            assert_eq!(Setup::read(other), None, "{other}");
        }
    }

    #[test]
    fn each_level_draws_what_it_says() {
        let mut dice = Dice::new(1);
        let mut drawn =
            |level: Level| -> Vec<Subject> { (0..400).map(|_| level.subject(&mut dice)).collect() };
        let common = drawn(Level::Common);
        assert!(common.iter().all(|subject| COMMON.contains(&subject.name())));
        let any = drawn(Level::Any);
        assert!(any.iter().any(|subject| matches!(subject, Subject::Sound)));
        assert!(any.iter().any(|subject| !COMMON.contains(&subject.name())));
        let hard = drawn(Level::Hard);
        assert!(hard.iter().any(|subject| matches!(subject, Subject::Two(_))));
        assert!(
            hard.iter()
                .any(|subject| COMES_AND_GOES.contains(&subject.name()))
        );
    }
}
