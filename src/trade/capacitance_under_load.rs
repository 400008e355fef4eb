//! The capacitance of a run capacitor, from its current and voltage while the motor runs.
//!
//! # Equation
//!
//! `capacitance = 1000000 * current / (2 * pi * frequency * voltage)`, in µF, A, Hz and V.
//!
//! # Arguments
//!
//! - `current`, A: in one of the capacitor's own wires.
//! - `voltage`, V: across the capacitor's own terminals, which is more than the supply's.
//! - `frequency`, Hz: of the supply; taken as 60 Hz where it is not given: the supply of North America.
//!
//! # Range
//!
//! Sine waves from the line, 40 to 70 Hz, motor up to speed; not behind an electronic drive. A live measurement for those
//! who may take it: off its circuit and discharged, a capacitance meter says the same.
//!
//! # Warnings
//!
//! - Where the capacitance is above 100 µF: run capacitors are smaller; a start capacitor is not in the circuit of a
//!   running motor; look whether the current was read in mA, and around one wire alone.
//!
//! # Example
//!
//! Computed: 1.05 A at 370 V and 60 Hz is 7.53 µF, a good 7.5 µF capacitor.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::capacitance_under_load::FORMULA;
//! let capacitance = formula.compute_typed(&["1.05 A", "370 V", "60 Hz"])?;
//! assert_eq!(capacitance.display(formula.result).digits(3).to_string(), "7.53 µF");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The reactance of a capacitor, 1 / (2 pi f C): elementary circuit theory.
//! - Common practice at 60 Hz: 2652 times amperes over volts.

use std::f64::consts::TAU;

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;
use super::limits::within;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "capacitance_under_load",
    group: Group::Electrical,
    sentence: "The capacitance of a run capacitor, from its current and voltage while the motor runs.",
    equation: "capacitance = 1000000 * current / (2 * pi * frequency * voltage)",
    arguments: &[
        Argument::new(
            "current",
            Scale::of(Unit::Ampere),
            "in one of the capacitor's own wires",
        ),
        Argument::new(
            "voltage",
            Scale::of(Unit::Volt),
            "across the capacitor's own terminals, which is more than the supply's",
        ),
        Argument::new("frequency", Scale::of(Unit::Hertz), "of the supply")
            .or(60.0, "the supply of North America"),
    ],
    result: Scale::of(Unit::Microfarad),
    range: "Sine waves from the line, 40 to 70 Hz, motor up to speed; not behind an electronic drive. A live measurement \
            for those who may take it: off its circuit and discharged, a capacitance meter says the same.",
    warnings: &[Warning {
        when: "the capacitance is above 100 µF",
        reason: "run capacitors are smaller; a start capacitor is not in the circuit of a running motor",
        help: "look whether the current was read in mA, and around one wire alone",
        applies: |_, capacitance| capacitance > 100.0,
    }],
    example: &["1.05 A", "370 V", "60 Hz"],
    references: &[
        "The reactance of a capacitor, 1 / (2 pi f C): elementary circuit theory.",
        "Common practice at 60 Hz: 2652 times amperes over volts.",
    ],
    compute: |numbers| {
        let [current, voltage, frequency] = each(numbers);
        not_negative(current, "the current", "read it without its sign")?;
        positive(voltage, "the voltage")?;
        within(frequency, 40.0, 70.0, "the frequency", "Hz")?;
        Ok(1e6 * current / (TAU * frequency * voltage))
    },
};
