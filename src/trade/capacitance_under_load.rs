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
//! - `frequency`, Hz: of the supply.
//!
//! # Range
//!
//! Sine waves from the line, motor up to speed; not behind an electronic drive. A live measurement for those who may take
//! it: off its circuit and discharged, a capacitance meter says the same.
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

use super::formula::{Argument, Formula, each, not_negative, positive};

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "capacitance_under_load",
    sentence: "The capacitance of a run capacitor, from its current and voltage while the motor runs.",
    equation: "capacitance = 1000000 * current / (2 * pi * frequency * voltage)",
    arguments: &[
        Argument {
            name: "current",
            scale: Scale::of(Unit::Ampere),
            meaning: "in one of the capacitor's own wires",
        },
        Argument {
            name: "voltage",
            scale: Scale::of(Unit::Volt),
            meaning: "across the capacitor's own terminals, which is more than the supply's",
        },
        Argument {
            name: "frequency",
            scale: Scale::of(Unit::Hertz),
            meaning: "of the supply",
        },
    ],
    result: Scale::of(Unit::Microfarad),
    range: "Sine waves from the line, motor up to speed; not behind an electronic drive. A live measurement for those who \
            may take it: off its circuit and discharged, a capacitance meter says the same.",
    references: &[
        "The reactance of a capacitor, 1 / (2 pi f C): elementary circuit theory.",
        "Common practice at 60 Hz: 2652 times amperes over volts.",
    ],
    compute: |numbers| {
        let [current, voltage, frequency] = each(numbers);
        not_negative(current, "the current", "read it without its sign")?;
        positive(voltage, "the voltage")?;
        positive(frequency, "the frequency")?;
        Ok(1e6 * current / (TAU * frequency * voltage))
    },
};
