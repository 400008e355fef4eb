//! Faults of the flame signal.

use super::{between, decades, with_rod};
use crate::bench::electric::OPEN;
use crate::bench::faults::Fault;

/// These faults.
pub const FAULTS: &[Fault] = &[
    Fault {
        name: "flame_sensor_dirty",
        title: "The flame sensor is coated",
        part: None,
        verdicts: &["flame_sensor_dirty"],
        fits: with_rod,
        strike: |condition, _, severity| condition.electric.sensing.coated = between(0.88, 1.0, severity),
    },
    Fault {
        name: "flame_sensor_weak",
        title: "The flame sensor is burnt beyond cleaning",
        part: Some("flame_sensor"),
        verdicts: &["flame_sensor_weak"],
        fits: with_rod,
        strike: |condition, _, severity| condition.electric.sensing.worn = between(0.88, 1.0, severity),
    },
    Fault {
        name: "flame_sensor_leaks",
        title: "The flame sensor leaks to its bracket",
        part: Some("flame_sensor"),
        verdicts: &["flame_sensor_leaks"],
        fits: with_rod,
        strike: |condition, _, severity| {
            condition.electric.sensing.leak = Some(decades(5e3, 1.3e5, 1.0 - severity))
        },
    },
    Fault {
        name: "flame_sensor_broken",
        title: "The flame sensor's porcelain is cracked",
        part: Some("flame_sensor"),
        verdicts: &["flame_sensor_broken", "flame_sensor_leaks"],
        fits: with_rod,
        strike: |condition, _, _| condition.electric.sensing.cracked = true,
    },
    Fault {
        name: "flame_sensor_out_of_place",
        title: "The flame sensor stands out of the flame",
        part: None,
        verdicts: &["flame_sensor_out_of_place"],
        fits: with_rod,
        strike: |condition, _, severity| condition.electric.sensing.bent = between(0.88, 1.0, severity),
    },
    Fault {
        name: "sensor_lead_bad",
        title: "The flame sensor's lead is broken",
        part: None,
        verdicts: &["sensor_lead_bad"],
        fits: with_rod,
        strike: |condition, _, _| condition.electric.sensing.lead_ohms = OPEN,
    },
    Fault {
        name: "burner_ground_bad",
        title: "The burners have lost their ground",
        part: None,
        verdicts: &["burner_ground_bad"],
        fits: with_rod,
        strike: |condition, _, severity| {
            condition.electric.sensing.ground_ohms = decades(2.5e8, OPEN, severity)
        },
    },
    Fault {
        name: "false_flame_signal",
        title: "A leakage at the rod passes for a flame",
        part: None,
        verdicts: &["false_flame_signal"],
        fits: with_rod,
        strike: |condition, _, severity| condition.electric.sensing.standing = between(0.9, 4.0, severity),
    },
];
