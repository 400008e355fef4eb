//! What is wrong with a furnace as its owner, or someone who has already looked, would say it.

use crate::bench::dice::Dice;
use crate::bench::machine::{Machine, Truth};
use crate::library::{Datum, Library};

/// What a furnace shows from the outside.
struct Shown<'m, M> {
    library: &'m Library,
    machine: &'m mut M,
}

impl<M: Machine> Shown<'_, M> {
    /// Whether a sign has a value now.
    fn is(&mut self, sign: &str, value: &str) -> bool {
        let Some(id) = self.library.signs.find(sign) else {
            return false;
        };
        let at = self.library.signs[id]
            .values
            .iter()
            .position(|choice| choice.name == value);
        at.is_some_and(|at| self.machine.ask(Datum::Sign(id)) == Some(Truth::Value(at)))
    }

    /// Whether a reading is at least so much now, in its own unit.
    fn at_least(&mut self, reading: &str, least: f64) -> bool {
        let Some(id) = self.library.readings.find(reading) else {
            return false;
        };
        matches!(self.machine.ask(Datum::Reading(id)), Some(Truth::Number(number)) if number >= least)
    }

    /// Whether a reading lies above what the plate allows.
    fn is_above(&mut self, reading: &str, field: &str) -> bool {
        let library = self.library;
        let (Some(reading), Some(field)) = (library.readings.find(reading), library.plate.find(field)) else {
            return false;
        };
        let (reading, field) = (
            self.machine.ask(Datum::Reading(reading)),
            self.machine.ask(Datum::Field(field)),
        );
        matches!((reading, field), (Some(Truth::Number(is)), Some(Truth::Number(most))) if is > most)
    }
}

/// How often a call comes in as what someone saw who watched the start, and not as the owner's words.
const WATCHED: f64 = 0.25;

/// The tree of the complaint with which a call about this machine comes in: the owner's words, or sometimes those of someone
/// who watched the start.
pub fn complaint(library: &Library, machine: &mut impl Machine, dice: &mut Dice) -> &'static str {
    let watched = dice.chance(WATCHED);
    let mut shown = Shown { library, machine };
    let (owner, watcher) = words(&mut shown);
    match watched && library.trees.find(watcher).is_some() {
        true => watcher,
        false => owner,
    }
}

/// The owner's words, and those of someone who watched the start.
fn words<M: Machine>(shown: &mut Shown<'_, M>) -> (&'static str, &'static str) {
    const NO_HEAT: &str = "no-heat";
    if shown.is("inducer", "silent") {
        return (NO_HEAT, "nothing-happens");
    }
    if shown.is("inducer", "hums") {
        return (NO_HEAT, "inducer-silent");
    }
    if shown.is("igniter_in_warm_up", "dark") {
        let watcher = if shown.at_least("limit_chain_voltage", 2.0) {
            "limit-trips"
        } else if shown.at_least("pressure_switch_voltage", 2.0) {
            "draft-not-proved"
        } else {
            "no-ignition"
        };
        return (NO_HEAT, watcher);
    }
    if shown.is("flame_after_ignition", "none") {
        return (NO_HEAT, "no-gas");
    }
    if shown.is("flame_after_ignition", "drops_out") {
        return (NO_HEAT, "flame-drops-out");
    }
    if shown.is("blower", "silent") {
        return (NO_HEAT, "blower-silent");
    }
    if shown.is("full_run", "flame_cuts_out") {
        return (NO_HEAT, "limit-trips");
    }
    if shown.is("blower", "weak") || shown.is_above("total_external_static", "static_max") {
        return ("airflow", "airflow");
    }
    // It heats: what is wrong shows on the yearly visit.
    ("combustion-check", "combustion-check")
}
