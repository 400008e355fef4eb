//! Probes on gas: supply, manifold, meter, cock, hose and orifices.

use super::burning_for;
use crate::bench::furnace::{Furnace, Moment, Run};
use crate::bench::probe::{ReadingProbe, SignProbe};
use crate::bench::thermal::condition::Shut;
use crate::bench::thermal::draft::density;
use crate::bench::thermal::fuel::Fuel;

/// Cubic feet of a turn of the meter's dial, common practice.
const DIAL: f64 = 2.0;
/// Seconds that a technician counts turns for.
const CLOCKS_FOR: f64 = 60.0;
/// Seconds at full fire before clocking.
const BEFORE_CLOCKING: f64 = 300.0;

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "inlet_pressure_at_rest" => |_, run| Some(run.rest.shown.inlet),
        "manifold_at_rest" => |_, run| Some(run.rest.shown.manifold),
        "inlet_pressure" => |_, run| Some(fed(run).unwrap_or(&run.end).shown.inlet_lowest),
        "manifold_pressure" => |_, run| fed(run).map(|moment| moment.shown.manifold_lowest),
        "meter_dial" => |furnace, run| clocked(furnace, run).map(|(dial, _)| dial),
        "meter_time" => |furnace, run| clocked(furnace, run).map(|(_, time)| time),
        "heating_value" => |furnace, _| Some(heating_value(furnace)),
        "altitude" => |furnace, _| Some(furnace.make.altitude),
        _ => return None,
    })
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "valve_switch" => |furnace, _| {
            let closed = furnace.condition.thermal.gas.shut == Shut::AtFurnace;
            Some(if closed { "set_to_off" } else { "set_to_on" })
        },
        "fuel_conversion" => |furnace, _| {
            let differs = furnace.condition.thermal.gas.other_gas;
            Some(if differs { "differs" } else { "agree" })
        },
        "valve_vent" => |furnace, _| {
            let misled = furnace.condition.thermal.gas.reference != 0.0;
            Some(if misled { "plugged" } else { "clear" })
        },
        "high_fire_screw" => |furnace, _| {
            furnace.make.staging()?;
            let gas = &furnace.condition.thermal.gas;
            let follows = !gas.high_stuck && gas.valve_stuck < 0.5;
            Some(if follows { "follows" } else { "stays" })
        },
        "air_in_line" => |furnace, _| {
            let opened = furnace.condition.thermal.gas.air_in_line > 0.0;
            Some(if opened { "opened" } else { "not_opened" })
        },
        "orifices" => |furnace, _| {
            let thermal = &furnace.condition.thermal;
            let burners = &thermal.burners;
            let another = burners.orifices_of_other_gas != thermal.gas.other_gas;
            Some(
                match burners.orifices_large > 0.05 || burners.orifices_not_derated {
                    _ if another => "wrong_gas",
                    true => "wrong_size",
                    false => "right",
                },
            )
        },
        // What a valve that leaks through feeds burns on, once it was lit.
        "flame_at_end" => |furnace, run| {
            let leaks = leaks(furnace) && run.lit > 0.0;
            Some(if leaks { "lingers" } else { "goes_out" })
        },
        "flame_uncalled" => |furnace, run| {
            let leaks = leaks(furnace) && run.lit > 0.0;
            Some(if leaks { "flame_seen" } else { "no_flame" })
        },
        "flame_after_shutoff" => |_, _| Some("out"),
        _ => return None,
    })
}

/// The last moment at which the valve was fed, as far as a run keeps it.
fn fed(run: &Run) -> Option<&Moment> {
    let dropout = run.dropout.as_ref().map(|dropout| &dropout.moment);
    dropout
        .or(run.steady.as_ref())
        .or(run.two_minutes.as_ref())
        .or(run.trial.as_ref())
}

fn leaks(furnace: &Furnace) -> bool {
    furnace.condition.thermal.gas.valve_leaks > 0.02
}

fn heating_value(furnace: &Furnace) -> f64 {
    let make = &furnace.make;
    // As delivered: a cubic foot holds less where the air weighs less.
    match make.propane != furnace.condition.thermal.gas.other_gas {
        true => Fuel::propane().heating_value,
        false => Fuel::natural(make.seed).heating_value * density(make.altitude),
    }
}

/// Cubic feet of whole turns, and the seconds they take; propane has no meter.
fn clocked(furnace: &Furnace, run: &Run) -> Option<(f64, f64)> {
    let propane = furnace.make.propane != furnace.condition.thermal.gas.other_gas;
    let moment = burning_for(run, BEFORE_CLOCKING).filter(|_| !propane)?;
    let per_second = moment.shown.input / heating_value(furnace) / 3_600.0;
    let turns = (CLOCKS_FOR * per_second / DIAL).ceil();
    Some((turns * DIAL, turns * DIAL / per_second))
}
