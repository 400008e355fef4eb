//! How far two pressures lie apart.
//!
//! # Equation
//!
//! `difference = high - low`, all in in.w.c.
//!
//! # Arguments
//!
//! - `high`, in.w.c.: the pressure upstream, or the one that should be higher.
//! - `low`, in.w.c.: the pressure downstream, against the same place as the other.
//!
//! # Range
//!
//! Two pressures taken against the same place in one state of the furnace, each with its sign; below zero where they are
//! the other way round.
//!
//! # Warnings
//!
//! - Where the difference is below zero: the pressure that should be higher is lower; look whether the hoses are
//!   swapped.
//!
//! # Example
//!
//! Arithmetic: 0.30 in.w.c. before a coil and 0.12 in.w.c. behind it.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::pressure_difference::FORMULA;
//! let drop = formula.compute_typed(&["0.30 in.w.c.", "0.12 in.w.c."])?;
//! assert_eq!(drop.display(formula.result).to_string(), "0.18 in.w.c.");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The definition.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "pressure_difference",
    group: Group::Air,
    sentence: "How far two pressures lie apart.",
    equation: "difference = high - low",
    arguments: &[
        Argument::new(
            "high",
            Scale::of(Unit::InchWaterColumn),
            "the pressure upstream, or the one that should be higher",
        ),
        Argument::new(
            "low",
            Scale::of(Unit::InchWaterColumn),
            "the pressure downstream, against the same place as the other",
        ),
    ],
    result: Scale::of(Unit::InchWaterColumn),
    range: "Two pressures taken against the same place in one state of the furnace, each with its sign; below zero where \
            they are the other way round.",
    warnings: &[Warning {
        when: "the difference is below zero",
        reason: "the pressure that should be higher is lower",
        help: "look whether the hoses are swapped",
        applies: |_, difference| difference < 0.0,
    }],
    example: &["0.30 in.w.c.", "0.12 in.w.c."],
    references: &["The definition."],
    compute: |numbers| {
        let [high, low] = each(numbers);
        Ok(high - low)
    },
};
