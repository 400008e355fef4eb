//! Faults of the electric half.

mod air;
mod board;
mod call;
mod draft;
mod flame;
mod ignition;
mod least;
mod pilot;
mod power;
mod stages;
mod twin;

use super::Fault;
use crate::bench::make::{Blower, Make, Pilot};

/// Its faults.
pub fn all() -> impl Iterator<Item = &'static Fault> {
    let rooms = [
        power::FAULTS,
        call::FAULTS,
        board::FAULTS,
        draft::FAULTS,
        ignition::FAULTS,
        flame::FAULTS,
        air::FAULTS,
        stages::FAULTS,
        pilot::FAULTS,
        twin::FAULTS,
    ];
    rooms.into_iter().flatten()
}

/// Every furnace can have it.
fn any(_: &Make) -> bool {
    true
}

fn fused(make: &Make) -> bool {
    make.fuse
}

fn hot_surface(make: &Make) -> bool {
    !make.spark
}

/// A spark at the burners themselves.
fn spark(make: &Make) -> bool {
    make.spark && make.pilot().is_none()
}

fn line_inducer(make: &Make) -> bool {
    !make.inducer_commanded
}

fn commanded_inducer(make: &Make) -> bool {
    make.inducer_commanded
}

fn tapped(make: &Make) -> bool {
    make.blower == Blower::Tapped
}

/// Whether a rod watches its flame: over a standing pilot a thermocouple does.
fn with_rod(make: &Make) -> bool {
    make.pilot() != Some(Pilot::Standing)
}

/// From `least` to `most` by severity.
fn between(least: f64, most: f64, severity: f64) -> f64 {
    least + (most - least) * severity
}

/// From `least` to `most` by severity, in equal factors: for resistances, which span decades.
fn decades(least: f64, most: f64, severity: f64) -> f64 {
    least * (most / least).powf(severity)
}
