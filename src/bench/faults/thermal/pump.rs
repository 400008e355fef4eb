//! Faults of the condensate pump.
//!
//! Its high-water switch stands in R: what keeps it from pumping keeps the furnace from running, and whoever finds that float
//! switch open on backed-up water has found where the fault is.

use super::worse;
use crate::bench::faults::Fault;
use crate::bench::make::Make;

const BACKS_UP: &[&str] = &["condensate_pump_dead", "drain_backs_up"];

fn with_pump(make: &Make) -> bool {
    make.condensate_pump
}

pub(super) const FAULTS: &[Fault] = &[
    Fault {
        name: "condensate_pump_dead",
        title: "The condensate pump does not pump, and its high-water switch stops the furnace",
        part: Some("condensate_pump"),
        verdicts: BACKS_UP,
        fits: with_pump,
        strike: |condition, _, _| condition.thermal.pump.dead = true,
    },
    Fault {
        name: "condensate_pump_unfed",
        title: "The condensate pump has no power",
        part: None,
        verdicts: &["condensate_pump_unfed", "drain_backs_up"],
        fits: with_pump,
        strike: |condition, _, _| condition.thermal.pump.unfed = true,
    },
    Fault {
        name: "condensate_line_plugged",
        title: "The condensate pump's discharge line is plugged or frozen",
        part: None,
        verdicts: BACKS_UP,
        fits: with_pump,
        strike: |condition, _, severity| condition.thermal.pump.line_plugged = worse(severity, 0.999, 1.0),
    },
    Fault {
        name: "condensate_pump_unwired",
        title: "The condensate pump's high-water switch is not wired",
        part: None,
        verdicts: &["condensate_pump_unwired"],
        fits: with_pump,
        strike: |condition, _, _| condition.thermal.pump.unwired = true,
    },
    Fault {
        name: "condensate_pump_overflows",
        title: "The condensate pump does not pump, and nothing stops the furnace",
        part: None,
        verdicts: &["condensate_pump_dead", "condensate_pump_unwired"],
        fits: with_pump,
        strike: |condition, _, _| {
            condition.thermal.pump.dead = true;
            condition.thermal.pump.unwired = true;
        },
    },
    Fault {
        name: "condensate_pump_leaks",
        title: "The condensate pump or its hose drips",
        part: None,
        verdicts: &["condensate_pump_leaks"],
        fits: with_pump,
        strike: |condition, _, _| condition.thermal.pump.leaks = true,
    },
];
