//! How much a condensate drain falls in each foot.
//!
//! # Equation
//!
//! `slope = drop / length`
//!
//! # Arguments
//!
//! - `drop`, in: how much lower the end is than the beginning.
//! - `length`, ft: of the drain, along the floor.
//!
//! # Range
//!
//! A straight run; it does not notice a sag between its ends. Below zero where it rises. The maker's instructions and
//! local codes govern the slope.
//!
//! # Warnings
//!
//! - Where the drain falls less than 1/8 in in each foot: water stands in it, and runs back where it rises; hang it
//!   anew; 1/4 in in each foot is common practice.
//!
//! # Example
//!
//! Arithmetic: 1.25 in over 10 ft.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::drain_slope::FORMULA;
//! let slope = formula.compute_typed(&["1.25 in", "10 ft"])?;
//! assert_eq!(slope.display(formula.result).digits(3).to_string(), "0.125 in");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Mechanical Code 307.2.1: at least 1/8 in per foot, as quoted in trade education; 1/4 in per foot is
//!   common practice.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "drain_slope",
    group: Group::Condensate,
    sentence: "How much a condensate drain falls in each foot.",
    equation: "slope = drop / length",
    arguments: &[
        Argument::new(
            "drop",
            Scale::of(Unit::Inch),
            "how much lower the end is than the beginning",
        ),
        Argument::new("length", Scale::of(Unit::Foot), "of the drain, along the floor"),
    ],
    result: Scale::of(Unit::Inch),
    range: "A straight run; it does not notice a sag between its ends. Below zero where it rises. The \
            maker's instructions and local codes govern the slope.",
    warnings: &[Warning {
        when: "the drain falls less than 1/8 in in each foot",
        reason: "water stands in it, and runs back where it rises",
        help: "hang it anew; 1/4 in in each foot is common practice",
        applies: |_, slope| slope < 0.125,
    }],
    example: &["1.25 in", "10 ft"],
    references: &[
        "International Mechanical Code 307.2.1: at least 1/8 in per foot, as quoted in trade education; 1/4 \
         in per foot is common practice.",
    ],
    compute: |numbers| {
        let [drop, length] = each(numbers);
        positive(length, "the length")?;
        Ok(drop / length)
    },
};
