//! Faults of the inducer and of the pressure switch, electrically.

use super::least::{drift_that_stays_open, slip_that_opens_the_switch};
use super::{any, between, commanded_inducer, decades, line_inducer};
use crate::bench::electric::{OPEN, SLIP, capacitor_for};
use crate::bench::faults::Fault;
use crate::bench::make::Make;

/// These faults.
pub const FAULTS: &[Fault] = &[
    Fault {
        name: "inducer_seized",
        title: "The inducer is seized",
        part: Some("inducer_motor"),
        verdicts: &["inducer_seized"],
        fits: line_inducer,
        strike: |condition, _, _| condition.electric.inducer.seized = true,
    },
    Fault {
        name: "inducer_winding_open",
        title: "The inducer's winding is open",
        part: Some("inducer_motor"),
        verdicts: &["inducer_winding_open"],
        fits: line_inducer,
        strike: |condition, _, _| condition.electric.inducer.winding_open = true,
    },
    Fault {
        name: "inducer_dead",
        title: "The inducer does not start, and its winding is whole",
        part: Some("inducer_motor"),
        verdicts: &["inducer_dead"],
        fits: line_inducer,
        strike: |condition, _, _| condition.electric.inducer.dead = true,
    },
    Fault {
        name: "inducer_weak",
        title: "The inducer turns too slowly",
        part: Some("inducer_motor"),
        verdicts: &["inducer_weak"],
        fits: line_inducer,
        strike: |condition, make, severity| {
            let slip = between(slip_that_opens_the_switch(make), 0.62, severity);
            condition.electric.inducer.drag = slip / SLIP - 1.0;
        },
    },
    Fault {
        name: "inducer_capacitor_weak",
        title: "The inducer's run capacitor has lost most of its capacitance",
        part: Some("run_capacitor"),
        verdicts: &["inducer_capacitor_weak"],
        fits: with_capacitor,
        strike: |condition, make, severity| {
            let least = capacitor_for(slip_that_opens_the_switch(make));
            condition.electric.inducer.capacitor_lost = between(1.0 - least, 1.0, severity);
        },
    },
    Fault {
        name: "inducer_blocked",
        title: "Something holds the inducer's wheel",
        part: None,
        verdicts: &["inducer_blocked"],
        fits: line_inducer,
        strike: |condition, _, _| condition.electric.inducer.blocked = true,
    },
    Fault {
        name: "inducer_wire",
        title: "The wire between board and inducer is open",
        part: None,
        verdicts: &["inducer_wire"],
        fits: line_inducer,
        strike: |condition, _, _| condition.electric.inducer.wire_ohms = OPEN,
    },
    Fault {
        name: "commanded_inducer",
        title: "A commanded inducer does not come to speed",
        part: Some("inducer_motor"),
        verdicts: &["commanded_inducer", "inducer_does_not_follow"],
        fits: commanded_inducer,
        strike: |condition, _, severity| {
            condition.electric.inducer.command_lost = between(0.3, 1.0, severity)
        },
    },
    Fault {
        name: "pressure_switch_open",
        title: "The pressure switch does not close whatever draws on it",
        part: Some("pressure_switch"),
        verdicts: &["pressure_switch_open"],
        fits: any,
        strike: |condition, _, _| condition.electric.switch.open = true,
    },
    Fault {
        name: "pressure_switch_drifted",
        title: "The pressure switch closes far above its set point",
        part: Some("pressure_switch"),
        verdicts: &["pressure_switch_open"],
        fits: any,
        strike: |condition, make, severity| {
            let least = drift_that_stays_open(make);
            condition.electric.switch.drift = between(least, least + 1.5, severity);
        },
    },
    Fault {
        name: "pressure_switch_resistive",
        title: "The pressure switch's contact is burnt and does not carry the valve's current",
        part: Some("pressure_switch"),
        verdicts: &["pressure_switch_open"],
        fits: any,
        strike: |condition, _, severity| {
            condition.electric.switch.contact_ohms = decades(75.0, 600.0, severity)
        },
    },
    Fault {
        name: "pressure_switch_welded",
        title: "The pressure switch is stuck closed",
        part: Some("pressure_switch"),
        verdicts: &["pressure_switch_welded"],
        fits: any,
        strike: |condition, _, _| condition.electric.switch.welded = true,
    },
    Fault {
        name: "pressure_switch_held_closed",
        title: "The pressure switch's wires touch each other",
        part: None,
        verdicts: &["pressure_switch_held_closed"],
        fits: any,
        strike: |condition, _, _| condition.electric.switch.bridged = true,
    },
    Fault {
        name: "pressure_switch_wrong",
        title: "The pressure switch is another furnace's",
        part: None,
        verdicts: &["pressure_switch_wrong"],
        fits: any,
        strike: |condition, make, severity| {
            condition.electric.switch.wrong = true;
            let least = drift_that_stays_open(make);
            condition.electric.switch.drift = between(least, least + 1.0, severity);
        },
    },
];

fn with_capacitor(make: &Make) -> bool {
    make.inducer_uf.is_some()
}
