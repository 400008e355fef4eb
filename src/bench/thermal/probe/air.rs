//! Probes on house air: filter, registers, wheel, temperatures and static pressures.

use super::{burning_for, spread};
use crate::bench::furnace::{Furnace, Moment, Run};
use crate::bench::probe::{ReadingProbe, SignProbe};
use crate::bench::thermal::spread::Own;

/// Seconds of flame without which there is no rise to speak of.
const RISES: f64 = 90.0;
/// Share of a filter's area whose dirt is seen.
const LOADED: f64 = 0.3;

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "supply_air_temperature" => |_, run| warm(run).map(|moment| moment.shown.supply_air),
        "return_air_temperature" => |_, run| warm(run).map(|moment| moment.shown.return_air),
        // The grille takes the room's air; what a leak or a bypass adds to it comes after.
        "return_loss" => |furnace, run| warm(run).map(|moment| furnace.make.indoor - moment.shown.return_air),
        "supply_at_far_register" => |furnace, run| {
            let lost = spread(furnace.make.seed, Own::DuctLoss, 3.0, 12.0);
            warm(run).map(|_| lost)
        },
        // An inner wall, out of sun and supply air.
        "room_to_thermostat" => |_, _| Some(0.0),
        "return_static" => |_, run| blown(run).map(|moment| moment.shown.return_static),
        "supply_static" => |_, run| blown(run).map(|moment| moment.shown.supply_static),
        "return_duct_static" => |_, run| blown(run).map(|moment| moment.shown.return_duct_static),
        "supply_duct_static" => |_, run| blown(run).map(|moment| moment.shown.supply_duct_static),
        _ => return None,
    })
}

pub(super) fn sign(name: &str) -> Option<SignProbe> {
    Some(match name {
        "filter" => |furnace, _| {
            let loaded = furnace.condition.thermal.air.filter_loaded > LOADED;
            Some(if loaded { "loaded" } else { "clean" })
        },
        "filter_habit" => |furnace, _| {
            let loaded = furnace.condition.thermal.air.filter_loaded > LOADED;
            Some(if loaded { "too_seldom" } else { "often_enough" })
        },
        "duct_look" => |furnace, _| {
            let leaks = furnace.condition.thermal.air.return_leaks > 0.1;
            Some(if leaks { "leaks" } else { "sound" })
        },
        "accessories" => |furnace, run| {
            let others = furnace
                .condition
                .electric
                .control
                .accessory_short
                .or(run.sound.accessory_ohms);
            Some(match others {
                _ if has_bypass(furnace) => "humidifier",
                Some(_) => "others",
                None => "none",
            })
        },
        "bypass_damper" => |furnace, _| {
            Some(if has_bypass(furnace) {
                "wrong_way"
            } else {
                "no_bypass"
            })
        },
        "registers" => |furnace, _| {
            let closed = furnace.condition.thermal.air.registers_closed > 0.2;
            Some(if closed { "some_closed" } else { "all_open" })
        },
        "blower_wheel" => |furnace, _| {
            let air = &furnace.condition.thermal.air;
            Some(match (air.wheel_loose > 0.05, air.wheel_dirty > 0.15) {
                _ if air.wheel_backward => "backward",
                (true, _) => "loose",
                (_, true) => "dirty",
                (false, false) => "sound",
            })
        },
        "blower_speed" => |furnace, _| {
            let low = furnace.condition.thermal.air.speed_low > 0.05;
            Some(if low { "too_low" } else { "as_maker_says" })
        },
        _ => return None,
    })
}

/// Whether a humidifier's bypass stands open.
fn has_bypass(furnace: &Furnace) -> bool {
    furnace.condition.thermal.air.bypass > 0.0
}

/// The last moment of a flame that has warmed the air.
fn warm(run: &Run) -> Option<&Moment> {
    burning_for(run, RISES)
}

/// The last moment kept at which the blower ran on its heating speed: one that stops in the run is measured before.
fn blown(run: &Run) -> Option<&Moment> {
    let dropout = run.dropout.as_ref().map(|dropout| &dropout.moment);
    let moments = [
        run.steady.as_ref(),
        dropout,
        run.two_minutes.as_ref(),
        run.after_blower.as_ref(),
    ];
    let mut moments = moments.into_iter().flatten();
    moments.find(|moment| moment.shown.airflow > 0.0)
}
