//! Faults of supply, valve and orifices.

use super::{always, worse};
use crate::bench::faults::Fault;
use crate::bench::make::Make;
use crate::bench::thermal::condition::Shut;

const SUPPLY: &[&str] = &["utility_gas_supply", "propane_supply"];

fn propane(make: &Make) -> bool {
    make.propane
}

fn natural(make: &Make) -> bool {
    !make.propane
}

pub(super) const FAULTS: &[Fault] = &[
    Fault {
        name: "gas_turned_off",
        title: "The valve's switch or the cock before it is closed",
        part: None,
        verdicts: &["gas_turned_off"],
        fits: always,
        strike: |condition, _, _| condition.thermal.gas.shut = Shut::AtFurnace,
    },
    Fault {
        name: "supply_shut",
        title: "The supply is shut or the tank empty",
        part: None,
        verdicts: SUPPLY,
        fits: always,
        strike: |condition, _, _| condition.thermal.gas.shut = Shut::Upstream,
    },
    Fault {
        name: "supply_weak",
        title: "The supply pressure is low, flowing or not",
        part: None,
        verdicts: SUPPLY,
        fits: always,
        strike: |condition, _, severity| condition.thermal.gas.supply_lacks = worse(severity, 0.85, 0.98),
    },
    Fault {
        name: "supply_collapses",
        title: "The supply stands well at rest and collapses when gas flows",
        part: None,
        verdicts: SUPPLY,
        fits: always,
        strike: |condition, make, severity| {
            condition.thermal.gas.supply_drop = make.inlet_max * worse(severity, 5.0, 15.0);
        },
    },
    Fault {
        name: "regulator_freezes",
        title: "Water freezes in the supply's regulator while gas flows",
        part: None,
        verdicts: SUPPLY,
        fits: propane,
        strike: |condition, _, severity| condition.thermal.gas.icing = worse(severity, 0.9, 1.0),
    },
    Fault {
        name: "gas_pressure_high",
        title: "The supply's regulator does not lock up",
        part: None,
        verdicts: &["gas_pressure_high"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.gas.lock_up = worse(severity, 4.5, 25.0),
    },
    Fault {
        name: "gas_valve_stays_shut",
        title: "The gas valve does not open though it is fed",
        part: Some("gas_valve"),
        verdicts: &["gas_valve_stays_shut", "gas_valve_falls"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.gas.valve_stuck = worse(severity, 0.95, 1.0),
    },
    Fault {
        name: "gas_valve_falls",
        title: "The gas valve lets the gas fall away as it gets warm",
        part: Some("gas_valve"),
        verdicts: &["gas_valve_falls", "gas_valve_stays_shut"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.gas.valve_lets_go = worse(severity, 0.25, 0.75),
    },
    Fault {
        name: "valve_leaks_through",
        title: "Gas passes the valve though nothing feeds it",
        part: Some("gas_valve"),
        verdicts: &["valve_leaks_through"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.gas.valve_leaks = worse(severity, 0.03, 0.12),
    },
    Fault {
        name: "manifold_set_high",
        title: "The valve's regulator is set far above the plate",
        part: None,
        verdicts: &["manifold_set_high"],
        // As far as its screw goes; propane's supply hardly stands above what its burners need.
        fits: natural,
        strike: |condition, _, severity| condition.thermal.gas.regulator = worse(severity, 0.45, 0.85),
    },
    Fault {
        name: "manifold_set_low",
        title: "The valve's regulator is set far below the plate",
        part: None,
        verdicts: &["manifold_set_low", "rise_below_range"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.gas.regulator = worse(severity, -0.3, -0.48),
    },
    Fault {
        name: "valve_vent_plugged",
        title: "The vent or hose that the valve's regulator compares with is plugged or on the wrong port",
        part: None,
        verdicts: &["valve_vent_plugged"],
        fits: always,
        strike: |condition, make, severity| {
            // Which way it is misled depends on what was caught in it.
            condition.thermal.gas.reference = match make.seed % 2 {
                0 => worse(severity, 0.8, 1.8),
                _ => worse(severity, -0.8, -0.95),
            };
        },
    },
    Fault {
        name: "air_in_the_line",
        title: "Air stands in the gas line after work on it",
        part: None,
        verdicts: &["air_in_the_line"],
        fits: always,
        strike: |condition, _, severity| condition.thermal.gas.air_in_line = worse(severity, 40.0, 600.0),
    },
    Fault {
        name: "propane_on_natural_orifices",
        title: "Converted to propane by plate and pressure, its orifices still those for natural gas",
        part: None,
        verdicts: &["orifices_wrong"],
        fits: propane,
        strike: |condition, _, _| condition.thermal.burners.orifices_of_other_gas = true,
    },
    Fault {
        name: "propane_never_converted",
        title: "Propane comes to a furnace that is all for natural gas",
        part: None,
        verdicts: &["orifices_wrong", "conversion_missing"],
        fits: natural,
        strike: |condition, _, _| condition.thermal.gas.other_gas = true,
    },
    Fault {
        name: "natural_on_propane_orifices",
        title: "Natural gas through orifices for propane",
        part: None,
        verdicts: &["orifices_wrong"],
        fits: natural,
        strike: |condition, _, _| condition.thermal.burners.orifices_of_other_gas = true,
    },
    Fault {
        name: "orifices_not_derated",
        title: "Sea-level orifices high above the sea",
        part: None,
        verdicts: &["orifices_wrong"],
        fits: |make| make.altitude > 5_000.0,
        strike: |condition, _, _| condition.thermal.burners.orifices_not_derated = true,
    },
    Fault {
        name: "orifices_drilled_out",
        title: "The orifices were drilled out",
        part: None,
        verdicts: &["orifices_wrong"],
        fits: always,
        strike: |condition, _, severity| {
            condition.thermal.burners.orifices_large = worse(severity, 0.35, 0.9)
        },
    },
];
