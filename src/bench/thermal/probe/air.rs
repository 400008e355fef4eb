//! Probes on house air: filter, registers, wheel, temperatures and static pressures.

use super::burning_for;
use crate::bench::furnace::{Moment, Run};
use crate::bench::probe::{ReadingProbe, SignProbe};

/// Seconds of flame without which there is no rise to speak of.
const RISES: f64 = 90.0;
/// Share of a filter's area whose dirt is seen.
const LOADED: f64 = 0.3;

pub(super) fn reading(name: &str) -> Option<ReadingProbe> {
    Some(match name {
        "supply_air_temperature" => |_, run| warm(run).map(|moment| moment.shown.supply_air),
        "return_air_temperature" => |_, run| warm(run).map(|moment| moment.shown.return_air),
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

/// The last moment of a flame that has warmed the air.
fn warm(run: &Run) -> Option<&Moment> {
    burning_for(run, RISES)
}

/// A moment at which the blower ran on its heating speed.
fn blown(run: &Run) -> Option<&Moment> {
    let blows = |moment: &&Moment| moment.shown.airflow > 0.0;
    let dropout = run.dropout.as_ref().map(|dropout| &dropout.moment);
    (run.steady.as_ref())
        .or(dropout)
        .or(run.two_minutes.as_ref())
        .filter(blows)
}
