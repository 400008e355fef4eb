//! Faults of igniter and spark, and of the gas valve's coil and wires.

use super::{any, between, decades, hot_surface, spark};
use crate::bench::electric::{OPEN, Spark};
use crate::bench::faults::Fault;
use crate::bench::make::Make;

/// These faults.
pub const FAULTS: &[Fault] = &[
    Fault {
        name: "igniter_open",
        title: "The igniter is broken",
        part: Some("igniter"),
        verdicts: &["igniter_out_of_range"],
        fits: hot_surface,
        strike: |condition, _, _| condition.electric.igniter.grown = OPEN,
    },
    Fault {
        name: "igniter_aged",
        title: "The igniter has aged, and its resistance has grown",
        part: Some("igniter"),
        verdicts: &["igniter_out_of_range", "igniter_opens_hot"],
        fits: hot_surface,
        strike: |condition, _, severity| condition.electric.igniter.grown = between(0.8, 3.0, severity),
    },
    Fault {
        name: "igniter_opens_hot",
        title: "A crack in the igniter opens as it gets hot",
        part: Some("igniter"),
        verdicts: &["igniter_opens_hot"],
        fits: hot_surface,
        strike: |condition, make, severity| {
            condition.electric.igniter.crack_ohms = own_ohms(make) * decades(0.4, 30.0, severity)
        },
    },
    Fault {
        name: "igniter_connector_bad",
        title: "The igniter's plug is burnt",
        part: None,
        verdicts: &["igniter_connector_bad"],
        fits: hot_surface,
        strike: |condition, make, severity| {
            condition.electric.igniter.plug_ohms = own_ohms(make) * decades(0.4, 30.0, severity)
        },
    },
    Fault {
        name: "igniter_wire",
        title: "The wire between board and igniter is open",
        part: None,
        verdicts: &["igniter_wire"],
        fits: hot_surface,
        strike: |condition, _, _| condition.electric.igniter.wire_ohms = OPEN,
    },
    Fault {
        name: "spark_gap_wrong",
        title: "The spark gap is wrong",
        part: None,
        verdicts: &["spark_gap_wrong"],
        fits: spark,
        strike: |condition, _, _| condition.electric.igniter.spark = Spark::Gap,
    },
    Fault {
        name: "spark_electrode",
        title: "The spark electrode's porcelain is cracked",
        part: Some("spark_electrode"),
        verdicts: &["spark_electrode"],
        fits: spark,
        strike: |condition, _, _| condition.electric.igniter.spark = Spark::Cracked,
    },
    Fault {
        name: "spark_lead",
        title: "The spark's lead is broken",
        part: None,
        verdicts: &["spark_lead"],
        fits: spark,
        strike: |condition, _, _| condition.electric.igniter.spark = Spark::Lead,
    },
    Fault {
        name: "spark_source",
        title: "Board or module gives no spark",
        part: None,
        verdicts: &["spark_source"],
        fits: spark,
        strike: |condition, _, _| condition.electric.igniter.spark = Spark::Source,
    },
    Fault {
        name: "gas_valve_coil_open",
        title: "The gas valve's coil is open",
        part: Some("gas_valve"),
        verdicts: &["gas_valve_coil_open", "gas_valve_stays_shut"],
        fits: any,
        strike: |condition, _, _| condition.electric.coil.open = true,
    },
    Fault {
        name: "gas_valve_coil_shorted",
        title: "The gas valve's coil is shorted",
        part: Some("gas_valve"),
        verdicts: &["gas_valve_coil_shorted", "secondary_overloaded"],
        fits: any,
        strike: |condition, _, severity| {
            condition.electric.coil.shorted = Some(decades(0.2, 2.0, 1.0 - severity))
        },
    },
    Fault {
        name: "valve_wire",
        title: "The wire between board and gas valve does not carry",
        part: None,
        verdicts: &["valve_wire"],
        fits: any,
        strike: |condition, _, severity| condition.electric.coil.wire_ohms = decades(45.0, OPEN, severity),
    },
    Fault {
        name: "valve_wire_shorted",
        title: "The gas valve's wires touch each other",
        part: None,
        verdicts: &["valve_wire_shorted", "secondary_overloaded"],
        fits: any,
        strike: |condition, _, severity| {
            condition.electric.coil.wire_short = Some(decades(0.2, 2.0, 1.0 - severity))
        },
    },
];

/// What a sound element resists with while it glows, Ω.
fn own_ohms(make: &Make) -> f64 {
    make.igniter_volts / make.igniter_amps
}
