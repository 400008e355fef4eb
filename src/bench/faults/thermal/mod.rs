//! Faults of the thermal half: gas, burners, vent, water, air, exchanger and room.

mod air;
mod draft;
mod exchanger;
mod flame;
mod gas;
mod least;
mod pump;
mod room;
mod stages;
mod vent;

use super::Fault;
use crate::bench::make::{Make, Taps};

/// Its faults.
pub fn all() -> impl Iterator<Item = &'static Fault> {
    let rooms = [
        draft::FAULTS,
        vent::FAULTS,
        gas::FAULTS,
        flame::FAULTS,
        air::FAULTS,
        exchanger::FAULTS,
        room::FAULTS,
        stages::FAULTS,
        pump::FAULTS,
    ];
    rooms.into_iter().flatten()
}

/// From just beyond what still works to as bad as it gets.
fn worse(severity: f64, least: f64, most: f64) -> f64 {
    least + (most - least) * severity.clamp(0.0, 1.0)
}

fn always(_: &Make) -> bool {
    true
}

fn condensing(make: &Make) -> bool {
    make.condensing
}

fn breathes_room_air(make: &Make) -> bool {
    !make.condensing
}

/// Whether a blocked intake weakens what the switch sees, and does not strengthen it.
fn sees_intake(make: &Make) -> bool {
    make.condensing && matches!(make.switch_taps, Taps::CollectorToBurnerBox | Taps::AcrossChoke)
}
