//! How far a condensate drain must fall over its length.
//!
//! # Equation
//!
//! `drop = length * slope`
//!
//! # Arguments
//!
//! - `length`, ft: of the drain, along the floor.
//! - `slope`, in: the fall in each foot; `2 %` and `20 mm/m` are taken, too; taken as 0.25 in where it is not given:
//!   common practice.
//!
//! # Range
//!
//! A straight run that falls all the way, up to 12 inches in each foot. The maker's instructions and local codes govern
//! the slope.
//!
//! # Example
//!
//! Arithmetic: 12 ft at a quarter inch per foot.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::drain_drop::FORMULA;
//! let drop = formula.compute_typed(&["12 ft", "0.25 in"])?;
//! assert_eq!(drop.display(formula.result).digits(2).to_string(), "3 in");
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
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;
use super::unfit::Unfit;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "drain_drop",
    group: Group::Condensate,
    sentence: "How far a condensate drain must fall over its length.",
    equation: "drop = length * slope",
    arguments: &[
        Argument::new("length", Scale::of(Unit::Foot), "of the drain, along the floor"),
        Argument::new(
            "slope",
            Scale::of(Unit::Inch),
            "the fall in each foot; `2 %` and `20 mm/m` are taken, too",
        )
        .or(0.25, "common practice"),
    ],
    result: Scale::of(Unit::Inch),
    range: "A straight run that falls all the way, up to 12 inches in each foot. The maker's instructions \
            and local codes govern the slope.",
    warnings: &[],
    example: &["12 ft", "0.25 in"],
    references: &[
        "International Mechanical Code 307.2.1: at least 1/8 in per foot, as quoted in trade education; 1/4 \
         in per foot is common practice.",
    ],
    compute: |numbers| {
        let [length, slope] = each(numbers);
        not_negative(length, "the length", "measure the drain along the floor")?;
        positive(slope, "the slope")?;
        if slope > 12.0 {
            return Err(Unfit::new(
                format!("{slope} inches in each foot is steeper than 45 degrees"),
                "give the fall in each foot, such as 0.25 in, or as 2 % or 20 mm/m",
            ));
        }
        Ok(length * slope)
    },
};
