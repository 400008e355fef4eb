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

/// How often a call comes in in other words than its owner's usual ones.
const OTHERWISE: f64 = 0.25;

/// The trees of a complaint, the first that a library has.
type Words = &'static [&'static str];

/// The tree of the complaint with which a call about this machine comes in: the owner's words, or sometimes those of someone
/// who watched the start, or the yearly service.
pub fn complaint(library: &Library, machine: &mut impl Machine, dice: &mut Dice) -> &'static str {
    let otherwise = dice.chance(OTHERWISE);
    let mut shown = Shown { library, machine };
    let (owner, other) = words(&mut shown);
    let known = |words: Words| {
        let mut words = words.iter().copied();
        words.find(|tree| library.trees.find(tree).is_some())
    };
    let other = known(other).filter(|_| otherwise);
    // A library that offers few complaints is called with the one by which every furnace can be.
    other.or_else(|| known(owner)).unwrap_or(NO_HEAT)
}

const NO_HEAT: &str = "no-heat";

/// The owner's words, and those of someone else.
fn words<M: Machine>(shown: &mut Shown<'_, M>) -> (Words, Words) {
    const COLD: Words = &[NO_HEAT];
    const YEARLY: Words = &["tune-up", "combustion-check"];
    const NOISE: Words = &["noise"];
    if shown.is("never_stops", "burners") {
        return (&["does-not-stop", NO_HEAT], &[]);
    }
    if shown.is("never_stops", "inducer") {
        return (&["does-not-stop", NO_HEAT], COLD);
    }
    if shown.is("twin_state", "blowers_apart") {
        return (&["twinned", NO_HEAT], &[]);
    }
    if shown.is("twin_state", "one_runs") || shown.is("twin_state", "none_runs") {
        return (COLD, &[]);
    }
    let pilot = shown.is("furnace_kind", "pilot");
    if pilot && !shown.is("main_after_pilot", "light") {
        return (COLD, &["pilot-furnace"]);
    }
    if shown.is("inducer", "silent") {
        return (COLD, &["nothing-happens"]);
    }
    if shown.is("inducer", "hums") {
        return (COLD, &["inducer-silent"]);
    }
    if shown.is("condensate_place", "under_trap") {
        // Water on the floor beside a furnace that heats is called in as what it is.
        return match shown.is("full_run", "runs_through") {
            true => (&["condensate"], &[]),
            false => (COLD, &["condensate"]),
        };
    }
    // Over a standing pilot nothing is seen to glow or spark.
    if !pilot && shown.is("igniter_in_warm_up", "dark") {
        let watcher: Words = if shown.at_least("limit_chain_voltage", 2.0) {
            &["limit-trips"]
        } else if shown.at_least("pressure_switch_voltage", 2.0) {
            &["draft-not-proved"]
        } else {
            &["no-ignition"]
        };
        return (COLD, watcher);
    }
    if shown.is("flame_after_ignition", "none") {
        let late = shown.is("light_sound", "part") || shown.is("light_sound", "late");
        let watcher: Words = if late {
            &["delayed-ignition", "no-gas"]
        } else {
            &["no-gas"]
        };
        return (COLD, watcher);
    }
    if shown.is("flame_after_ignition", "drops_out") {
        return (COLD, &["flame-drops-out"]);
    }
    if shown.is("blower", "silent") {
        return (COLD, &["blower-silent"]);
    }
    if shown.is("full_run", "flame_cuts_out") {
        return (&["short-cycling", NO_HEAT], &["limit-trips"]);
    }
    if shown.is("light_sound", "late") {
        return (&["delayed-ignition", "combustion-check"], &["noise"]);
    }
    if shown.is("blower", "weak") || shown.is_above("total_external_static", "static_max") {
        let whistles = shown.is("when_noise", "blower_runs");
        return (&["airflow"], if whistles { NOISE } else { &["airflow"] });
    }
    if shown.is("lack_of_heat", "burns_on") {
        return (&["not-enough-heat", "combustion-check"], &[]);
    }
    if shown.is("smell_kind", "flue") {
        return (&["smell"], &["combustion-check"]);
    }
    if shown.is("when_noise", "blower_runs") || shown.is("when_noise", "inducer_runs") {
        return (NOISE, YEARLY);
    }
    // It heats: what is wrong shows on the yearly visit, or to someone who watches a call to its end.
    if shown.is("three_cycles", "one_failed") {
        return (YEARLY, &["limit-trips"]);
    }
    (YEARLY, &["combustion-check"])
}
