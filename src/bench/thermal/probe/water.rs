//! Probes on condensate: trap, drain, collector and coil.

use super::spread;
use crate::bench::electric::condition::Interlock;
use crate::bench::furnace::{Furnace, Run};
use crate::bench::probe::{ReadingProbe, SignProbe};
use crate::bench::thermal::spread::Own;

/// Share of a passage that must be gone for a poured quart to stand.
const STANDS: f64 = 0.15;
/// Share of a pump's line that must be gone before a filled tank is seen to stand.
const LINE_PLUGGED: f64 = 0.9;
/// Share of the collector under water at which it is seen.
const SEEN: f64 = 0.3;
/// Fall of a drain as it is hung, in for each foot: an eighth is asked for, common practice.
const FALL: f64 = 0.25;

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "drain_run" => |furnace, _| furnace.make.condensing.then(|| run_of_drain(furnace)),
        "drain_fall" => |furnace, _| furnace.make.condensing.then(|| FALL * run_of_drain(furnace)),
        _ => return None,
    })
}

/// Length of the drain, ft.
fn run_of_drain(furnace: &Furnace) -> f64 {
    spread(furnace.make.seed, Own::DrainRun, 2.0, 12.0)
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "condensate_place" => |furnace, run| {
            let trap = furnace.condition.thermal.flue.trap_blocked > STANDS;
            Some(match furnace.make.condensing {
                true if trap || stands(run) || at_pump(furnace, run) => "under_trap",
                _ if backs_up(furnace) => "under_coil",
                _ => "none",
            })
        },
        "drain_pour" => |furnace, _| {
            let blocked = furnace.condition.thermal.flue.trap_blocked > STANDS;
            furnace
                .make
                .condensing
                .then_some(if blocked { "backs_up" } else { "runs_off" })
        },
        "drain_end" => |furnace, _| {
            let pump = furnace.make.condensate_pump;
            (furnace.make.condensing).then_some(if pump { "pump" } else { "open_end" })
        },
        "condensate_pump" => |furnace, _| {
            let pump = &furnace.condition.thermal.pump;
            let stands = pump.dead || pump.line_plugged > LINE_PLUGGED;
            furnace.make.condensate_pump.then_some(match stands {
                _ if pump.unfed => "unfed",
                true => "stays",
                false if pump.leaks => "leaks",
                false if pump.unwired => "no_stop",
                false => "pumps",
            })
        },
        "collector_box" => |_, run| Some(if stands(run) { "water" } else { "sound" }),
        "coil_drain" => |furnace, _| Some(if backs_up(furnace) { "backs_up" } else { "runs_off" }),
        // Mould needs a wet coil; what dust does to one, its pressure drop tells.
        "coil_look" => |_, _| Some("clean"),
        "floor_drain" => |_, _| Some("full"),
        _ => return None,
    })
}

/// Whether water is on the floor at the condensate pump, or stands in it up to its high-water switch.
fn at_pump(furnace: &Furnace, run: &Run) -> bool {
    run.end.shown.runs_over || furnace.condition.thermal.pump.leaks
}

/// Whether water stands in the collector.
fn stands(run: &Run) -> bool {
    run.draft.shown.water.max(run.end.shown.water) > SEEN
}

/// Whether the coil's drain has lifted its float.
fn backs_up(furnace: &Furnace) -> bool {
    furnace.condition.electric.call.interlock == Some(Interlock::FloatWet)
}
