//! Faults of the limits, and of the blower electrically.

use super::least::limit_that_opens_in_steady_fire;
use super::{any, between, tapped};
use crate::bench::electric::OPEN;
use crate::bench::faults::Fault;
use crate::bench::make::{Blower, Make};

/// These faults.
pub const FAULTS: &[Fault] = &[
    Fault {
        name: "limit_failed_open",
        title: "The limit stays open",
        part: Some("limit_switch"),
        verdicts: &["limit_failed_open"],
        fits: any,
        strike: |condition, _, _| condition.electric.chain.limit_open = true,
    },
    Fault {
        name: "limit_opens_early",
        title: "The limit opens below its mark",
        part: Some("limit_switch"),
        verdicts: &["limit_opens_early"],
        fits: any,
        strike: |condition, make, severity| {
            let least = limit_that_opens_in_steady_fire(make);
            condition.electric.chain.limit_early = least + between(1.0, 30.0, severity);
        },
    },
    Fault {
        name: "limit_wiring",
        title: "The wires of the limit are open",
        part: None,
        verdicts: &["limit_wiring"],
        fits: any,
        strike: |condition, _, _| condition.electric.chain.wire_ohms = OPEN,
    },
    Fault {
        name: "rollout_switch_open",
        title: "The rollout switch has failed open",
        part: Some("rollout_switch"),
        verdicts: &["rollout_switch_failed", "flame_rollout"],
        fits: any,
        strike: |condition, _, _| condition.electric.chain.rollout_open = true,
    },
    Fault {
        name: "blower_capacitor_weak",
        title: "The blower's run capacitor has lost most of its capacitance",
        part: Some("run_capacitor"),
        verdicts: &["blower_capacitor_weak"],
        fits: tapped,
        strike: |condition, _, severity| {
            condition.electric.blower.capacitor_lost = between(0.64, 1.0, severity)
        },
    },
    Fault {
        name: "blower_motor_dead",
        title: "The blower's motor does not start",
        part: Some("blower_motor"),
        verdicts: &["blower_motor_dead"],
        fits: tapped,
        strike: |condition, _, _| condition.electric.blower.winding_open = true,
    },
    Fault {
        name: "blower_motor_tight",
        title: "The blower's motor is seized",
        part: Some("blower_motor"),
        verdicts: &["blower_motor_tight"],
        fits: metered,
        strike: |condition, _, _| condition.electric.blower.seized = true,
    },
    Fault {
        name: "blower_motor_overdraws",
        title: "Turns of the blower's motor are shorted, and it trips on its own heat",
        part: Some("blower_motor"),
        verdicts: &["blower_motor_overdraws"],
        fits: tapped,
        strike: |condition, _, severity| {
            condition.electric.blower.shorted_turns = between(0.25, 0.6, severity)
        },
    },
    Fault {
        name: "blower_blocked",
        title: "Something holds the blower's wheel",
        part: None,
        verdicts: &["blower_blocked"],
        fits: metered,
        strike: |condition, _, _| condition.electric.blower.blocked = true,
    },
    Fault {
        name: "blower_wire",
        title: "The wire between board and blower is open",
        part: None,
        verdicts: &["blower_wire"],
        fits: metered,
        strike: |condition, _, _| condition.electric.blower.wire_ohms = OPEN,
    },
    Fault {
        name: "blower_or_module",
        title: "The blower's motor or its module is dead",
        part: Some("blower_motor"),
        verdicts: &["blower_or_module"],
        fits: constant_torque,
        strike: |condition, _, _| condition.electric.blower.dead = true,
    },
    Fault {
        name: "blower_airflow_module",
        title: "A constant-airflow blower does not start, motor or module",
        part: Some("blower_motor"),
        verdicts: &["blower_or_module"],
        fits: constant_airflow,
        strike: |condition, _, _| condition.electric.blower.dead = true,
    },
];

/// Whether a meter can tell that the blower is fed and told.
fn metered(make: &Make) -> bool {
    !constant_airflow(make)
}

fn constant_torque(make: &Make) -> bool {
    make.blower == Blower::ConstantTorque
}

fn constant_airflow(make: &Make) -> bool {
    make.blower == Blower::ConstantAirflow
}
