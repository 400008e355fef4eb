//! Faults of house air.

use super::{always, worse};
use crate::bench::faults::Fault;
use crate::bench::make::{Blower, Make};

/// Whether a wheel that moves less is felt: a constant-airflow motor makes up for it.
fn does_not_make_up(make: &Make) -> bool {
    make.blower != Blower::ConstantAirflow
}

pub(super) const FAULTS: &[Fault] = &[
    Fault {
        name: "filter_loaded",
        title: "The filter is loaded",
        part: None,
        verdicts: &["filter_loaded"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.air.filter_loaded = worse(severity, 0.84, 0.94),
    },
    Fault {
        name: "filter_too_small",
        title: "The filter is clean, and too small or too fine",
        part: None,
        verdicts: &["filter_too_small", "rise_above_range"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.air.filter_small = worse(severity, 0.84, 0.92),
    },
    Fault {
        name: "coil_loaded",
        title: "The cooling coil is matted with dirt",
        part: None,
        verdicts: &["coil_loaded", "rise_above_range"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.air.coil_loaded = worse(severity, 0.75, 0.9),
    },
    Fault {
        name: "return_restricted",
        title: "The return duct is crushed or too small",
        part: None,
        verdicts: &["return_restricted", "rise_above_range"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.air.return_tight = worse(severity, 0.84, 0.93),
    },
    Fault {
        name: "supply_restricted",
        title: "The supply duct is crushed or too small",
        part: None,
        verdicts: &["supply_restricted", "rise_above_range"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.air.supply_tight = worse(severity, 0.84, 0.93),
    },
    Fault {
        name: "registers_closed",
        title: "Registers are closed or covered",
        part: None,
        verdicts: &["supply_restricted", "rise_above_range"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.air.registers_closed = worse(severity, 0.9, 0.97),
    },
    Fault {
        name: "blower_wheel_dirty",
        title: "The blower wheel's vanes are filled with dirt",
        part: None,
        verdicts: &["blower_wheel_dirty", "rise_above_range"],
        fits: does_not_make_up,
        strike: |condition, _, severity| condition.thermal.air.wheel_dirty = worse(severity, 0.4, 0.7),
    },
    Fault {
        name: "blower_wheel_loose",
        title: "The blower wheel slips on its shaft",
        part: None,
        verdicts: &["blower_wheel_loose", "rise_above_range"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.air.wheel_loose = worse(severity, 0.45, 0.9),
    },
    Fault {
        name: "blower_wheel_backward",
        title: "The blower wheel turns or sits the wrong way round",
        part: None,
        verdicts: &["blower_wheel_backward", "rise_above_range"],
        fits: always,
        strike: |condition, _, _| condition.thermal.air.wheel_backward = true,
    },
    Fault {
        name: "blower_speed_low",
        title: "The speed set for heat is too low",
        part: None,
        verdicts: &["blower_speed_low", "rise_above_range"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.air.speed_low = worse(severity, 0.45, 0.65),
    },
    Fault {
        name: "return_duct_leaks",
        title: "The return duct draws air from a cold place",
        part: None,
        verdicts: &["return_duct_leaks", "return_draws_cold"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.air.return_leaks = worse(severity, 0.15, 0.5),
    },
    Fault {
        name: "limit_hot_spot",
        title: "A turn or coil too near lets hot air stand at the limit",
        part: None,
        verdicts: &["limit_hot_spot"],
        fits: always,
        strike: |condition, make, severity| {
            // What the disc may feel above the stream before it opens, as the exchanger stands over the air.
            let spare = make.limit_opens - 70.0 - make.rise_min;
            condition.thermal.air.hot_spot = spare / (3.5 * make.rise_min) * worse(severity, 0.85, 1.15);
        },
    },
    Fault {
        name: "humidifier_bypass_open",
        title: "A humidifier's bypass sends supply air back into the return",
        part: None,
        verdicts: &["humidifier_bypass_open", "limit_hot_spot"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.air.bypass = worse(severity, 0.55, 0.7),
    },
];
