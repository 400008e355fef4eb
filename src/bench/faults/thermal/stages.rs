//! Faults of a valve with two stages. Where no flame comes, the manifold is measured on the stage that it should light on, and low
//! fire's setting is then what stands in the verdict about the manifold.

use super::worse;
use crate::bench::faults::Fault;
use crate::bench::make::Make;

fn two_stage(make: &Make) -> bool {
    make.staging().is_some()
}

pub(super) const FAULTS: &[Fault] = &[
    Fault {
        name: "second_stage_valve_stuck",
        title: "The valve's second stage does not open though it is fed",
        part: Some("gas_valve"),
        verdicts: &["second_stage_valve_stuck"],
        fits: two_stage,
        strike: |condition, _, _| condition.thermal.gas.high_stuck = true,
    },
    Fault {
        name: "low_fire_set_high",
        title: "Low fire is set far above its own figure",
        part: None,
        verdicts: &["low_fire_set_wrong", "manifold_set_high"],
        fits: two_stage,
        strike: |condition, _, severity| condition.thermal.gas.low_regulator = worse(severity, 0.22, 0.55),
    },
    Fault {
        name: "low_fire_set_low",
        title: "Low fire is set far below its own figure",
        part: None,
        verdicts: &["low_fire_set_wrong", "manifold_set_low"],
        fits: two_stage,
        strike: |condition, _, severity| condition.thermal.gas.low_regulator = worse(severity, -0.22, -0.4),
    },
];
