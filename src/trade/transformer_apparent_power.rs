//! What a transformer delivers, from voltage and current of its secondary.
//!
//! # Equation
//!
//! `apparent_power = voltage * current`
//!
//! # Arguments
//!
//! - `voltage`, V: across the secondary, loaded.
//! - `current`, A: out of the secondary, everything on that can be on at once.
//!
//! # Range
//!
//! One secondary. A clamp shows small currents poorly: ten turns of the wire through it show ten times the current.
//!
//! # Example
//!
//! Arithmetic: 25.1 V and 1.2 A.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::transformer_apparent_power::FORMULA;
//! let power = formula.compute_typed(&["25.1 V", "1.2 A"])?;
//! assert_eq!(power.display(formula.result).digits(3).to_string(), "30.1 VA");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The definition of apparent power.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "transformer_apparent_power",
    group: Group::Electrical,
    sentence: "What a transformer delivers, from voltage and current of its secondary.",
    equation: "apparent_power = voltage * current",
    arguments: &[
        Argument::new("voltage", Scale::of(Unit::Volt), "across the secondary, loaded"),
        Argument::new(
            "current",
            Scale::of(Unit::Ampere),
            "out of the secondary, everything on that can be on at once",
        ),
    ],
    result: Scale::of(Unit::VoltAmpere),
    range: "One secondary. A clamp shows small currents poorly: ten turns of the wire through it show ten \
            times the current.",
    warnings: &[],
    example: &["25.1 V", "1.2 A"],
    references: &["The definition of apparent power."],
    compute: |numbers| {
        let [voltage, current] = each(numbers);
        not_negative(voltage, "the voltage", "read it without its sign")?;
        not_negative(current, "the current", "read it without its sign")?;
        Ok(voltage * current)
    },
};
