//! Faults of the pilot.

use super::between;
use crate::bench::electric::Spark;
use crate::bench::faults::Fault;
use crate::bench::make::{Make, Pilot};

fn pilot(make: &Make) -> bool {
    make.pilot().is_some()
}

fn standing(make: &Make) -> bool {
    make.pilot() == Some(Pilot::Standing)
}

fn on_call(make: &Make) -> bool {
    make.pilot() == Some(Pilot::OnCall)
}

/// These faults.
pub const FAULTS: &[Fault] = &[
    Fault {
        name: "pilot_dirty",
        title: "The pilot's hood and orifice are dirty, and its flame is weak",
        part: None,
        verdicts: &["pilot_dirty"],
        fits: pilot,
        strike: |condition, _, severity| condition.thermal.gas.pilot_clogged = between(0.4, 0.85, severity),
    },
    Fault {
        name: "pilot_gas_short",
        title: "The pilot's orifice or tube is clogged",
        part: None,
        verdicts: &["pilot_gas_short"],
        fits: pilot,
        strike: |condition, _, _| condition.thermal.gas.pilot_clogged = 1.0,
    },
    Fault {
        name: "thermocouple_out_of_place",
        title: "The thermocouple stands out of the pilot's flame",
        part: None,
        verdicts: &["thermocouple_out_of_place"],
        fits: standing,
        strike: |condition, _, severity| {
            condition.electric.thermocouple.out_of_flame = between(0.65, 1.0, severity)
        },
    },
    Fault {
        name: "thermocouple_weak",
        title: "The thermocouple is worn and gives too little",
        part: Some("thermocouple"),
        verdicts: &["thermocouple_weak"],
        fits: standing,
        strike: |condition, _, severity| condition.electric.thermocouple.weak = between(0.65, 1.0, severity),
    },
    Fault {
        name: "pilot_circuit_bad",
        title: "Turns of the pilot magnet are shorted",
        part: Some("pilot_gas_valve"),
        verdicts: &["pilot_circuit_bad", "pilot_magnet_shorted"],
        fits: standing,
        strike: |condition, _, severity| {
            condition.electric.thermocouple.magnet_shorted = between(0.75, 0.95, severity)
        },
    },
    Fault {
        name: "pilot_valve_drops",
        title: "The pilot's magnet lets go though its thermocouple is good",
        part: Some("pilot_gas_valve"),
        verdicts: &["pilot_valve_drops"],
        fits: standing,
        strike: |condition, _, _| condition.electric.thermocouple.lets_go = true,
    },
    Fault {
        name: "pilot_chain_contact",
        title: "A dirty contact in the pilot's circuit starves its magnet",
        part: None,
        verdicts: &["pilot_chain_contact"],
        fits: standing,
        strike: |condition, _, severity| {
            condition.electric.thermocouple.contact = between(75.0, 400.0, severity)
        },
    },
    Fault {
        name: "pilot_safety_open",
        title: "A spill switch in the pilot's circuit is open",
        part: None,
        verdicts: &["pilot_safety_open"],
        fits: standing,
        strike: |condition, _, _| condition.electric.thermocouple.chain_open = true,
    },
    Fault {
        name: "pilot_no_spark",
        title: "The module gives no spark to the pilot",
        part: None,
        verdicts: &["spark_source"],
        fits: on_call,
        strike: |condition, _, _| condition.electric.igniter.spark = Spark::Source,
    },
    Fault {
        name: "pilot_spark_lead",
        title: "The lead does not bring the spark to the pilot",
        part: None,
        verdicts: &["spark_lead"],
        fits: on_call,
        strike: |condition, _, _| condition.electric.igniter.spark = Spark::Lead,
    },
    Fault {
        name: "pilot_spark_gap",
        title: "The gap at the pilot is too wide",
        part: None,
        verdicts: &["spark_gap_wrong"],
        fits: on_call,
        strike: |condition, _, _| condition.electric.igniter.spark = Spark::Gap,
    },
    Fault {
        name: "pilot_not_proved",
        title: "The pilot burns, and its rod stands out of it",
        part: None,
        verdicts: &["flame_sensor_out_of_place"],
        fits: on_call,
        strike: |condition, _, severity| condition.electric.sensing.bent = between(0.85, 1.0, severity),
    },
];
