//! The round duct that takes the same pressure as a rectangular one at the same airflow.
//!
//! # Equation
//!
//! `diameter = 1.30 * (width * height)^0.625 / (width + height)^0.25`, in inches.
//!
//! # Arguments
//!
//! - `width`, in: one side, inside.
//! - `height`, in: the other side, inside.
//!
//! # Range
//!
//! Sides up to eight to one: flatter ones are refused. The same airflow, not the same velocity: the round duct has
//! the smaller section.
//!
//! # Warnings
//!
//! - Where the duct is flatter than four to one: so flat a duct costs much sheet and friction; take a squarer duct
//!   where there is room for one.
//!
//! # Example
//!
//! Published in the table of the source: 12 by 8 in is 10.7 in.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::equivalent_round_diameter::FORMULA;
//! let diameter = formula.compute_typed(&["12 in", "8 in"])?;
//! assert_eq!((diameter.number_in(formula.result) * 10.0).round(), 107.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - R. G. Huebscher, 1948, as in ASHRAE Handbook, Fundamentals, chapter Duct Design; the table also in the ASHAE
//!   Guide, 1956, chapter 32.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;
use super::unfit::Unfit;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "equivalent_round_diameter",
    group: Group::Air,
    sentence: "The round duct that takes the same pressure as a rectangular one at the same airflow.",
    equation: "diameter = 1.30 * (width * height)^0.625 / (width + height)^0.25",
    arguments: &[
        Argument::new("width", Scale::of(Unit::Inch), "one side, inside"),
        Argument::new("height", Scale::of(Unit::Inch), "the other side, inside"),
    ],
    result: Scale::of(Unit::Inch),
    range: "Sides up to eight to one: flatter ones are refused. The same airflow, not the same velocity: \
            the round duct has the smaller section.",
    warnings: &[Warning {
        when: "the duct is flatter than four to one",
        reason: "so flat a duct costs much sheet and friction",
        help: "take a squarer duct where there is room for one",
        applies: |numbers, _| numbers[0].max(numbers[1]) > 4.0 * numbers[0].min(numbers[1]),
    }],
    example: &["12 in", "8 in"],
    references: &[
        "R. G. Huebscher, 1948, as in ASHRAE Handbook, Fundamentals, chapter Duct Design; the table also in \
         the ASHAE Guide, 1956, chapter 32.",
    ],
    compute: |numbers| {
        let [width, height]: [f64; 2] = each(numbers);
        positive(width, "the width")?;
        positive(height, "the height")?;
        if width.max(height) > 8.0 * width.min(height) {
            return Err(Unfit::new(
                "the duct is flatter than eight to one",
                "check width and height for a slip of the decimal point",
            ));
        }
        Ok(1.3 * (width * height).powf(0.625) / (width + height).powf(0.25))
    },
};
