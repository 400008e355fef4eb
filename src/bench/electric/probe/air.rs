//! Probes on the blower's motor.

use super::blower;
use crate::bench::electric::{BlowerVolts, OPEN};
use crate::bench::furnace::{Furnace, Run};
use crate::bench::make::Blower;
use crate::bench::probe::{ReadingProbe, SignProbe};

/// Volts across a run capacitor of a motor at speed, times line voltage, common practice: it adds to the line.
const CAPACITOR_VOLTS: f64 = 1.7;

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "blower_tap_voltage" => {
            |furnace, run| fed(furnace, run, |make| make == Blower::Tapped).map(|at| at.tap)
        }
        "blower_line_voltage" => {
            |furnace, run| fed(furnace, run, |make| make != Blower::Tapped).map(|at| at.power)
        }
        "blower_command_voltage" => {
            |furnace, run| fed(furnace, run, |make| make == Blower::ConstantTorque).map(|at| at.tap)
        }
        "board_blower_output" => {
            |furnace, run| fed(furnace, run, |make| make != Blower::ConstantAirflow).map(|at| at.pin)
        }
        "blower_capacitance" => |furnace, run| {
            let tapped = furnace.make.blower == Blower::Tapped;
            tapped.then(|| capacitance(furnace, run))
        },
        "capacitor_current" => |furnace, run| {
            // The reactance of a capacitor at 60 Hz: 2652 Ω times a microfarad.
            let volts = running_capacitor(furnace, run)?;
            Some(capacitance(furnace, run) * volts / 2652.58)
        },
        "capacitor_voltage" => running_capacitor,
        "blower_current" => |_, run| Some(blower(run).volts.blower.amps),
        _ => return None,
    })
}

/// What is at a blower of the kinds that are asked for, while it should run.
fn fed<'a>(furnace: &Furnace, run: &'a Run, kind: fn(Blower) -> bool) -> Option<&'a BlowerVolts> {
    kind(furnace.make.blower).then_some(&blower(run).volts.blower)
}

fn capacitance(furnace: &Furnace, run: &Run) -> f64 {
    let left = 1.0 - furnace.condition.electric.blower.capacitor_lost;
    furnace.make.blower_uf * run.sound.capacitor * left
}

fn running_capacitor(furnace: &Furnace, run: &Run) -> Option<f64> {
    let at = fed(furnace, run, |make| make == Blower::Tapped)?;
    (at.turns > 0.0).then_some(CAPACITOR_VOLTS * at.tap)
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "blower_by_hand" => |furnace, _| {
            let motor = &furnace.condition.electric.blower;
            Some(match (motor.blocked, motor.seized) {
                (true, _) => "blocked",
                (false, true) => "seized",
                (false, false) => "turns_free",
            })
        },
        "blower_after_cooling" => |furnace, _| {
            let motor = &furnace.condition.electric.blower;
            let tapped = furnace.make.blower == Blower::Tapped;
            let starts = motor.speed(1.0, tapped) > 0.0;
            Some(if starts { "starts" } else { "still_dead" })
        },
        "blower_on_tester" => |furnace, _| {
            let motor = &furnace.condition.electric.blower;
            let electronic = furnace.make.blower == Blower::ConstantAirflow;
            let runs = motor.speed(1.0, false) > 0.0;
            electronic.then_some(if runs { "runs" } else { "stays_still" })
        },
        "blower_harness" => |furnace, _| {
            let whole = furnace.condition.electric.blower.wire_ohms < OPEN;
            Some(if whole { "sound" } else { "broken" })
        },
        "blower_due" => |_, run| {
            // The delay runs from the proved flame; the flame is lit some seconds before it is proved.
            let timings = &run.sound.timings;
            let due = run.burned > timings.blower_on + timings.trial;
            Some(if due { "due" } else { "not_due" })
        },
        _ => return None,
    })
}
