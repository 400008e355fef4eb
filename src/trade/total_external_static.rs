//! The pressure the blower works against outside the furnace.
//!
//! # Equation
//!
//! `total = |return| + |supply|`, all in in.w.c.
//!
//! # Arguments
//!
//! - `return`, in.w.c.: between the room and the air just before the furnace, with or without its minus sign.
//! - `supply`, in.w.c.: between the air just after the furnace, before the coil, and the room.
//!
//! # Range
//!
//! Blower running at the speed in question, doors on, filter in place. Signs are dropped, since many gauges show none: it
//! does not notice a return that is under pressure.
//!
//! # Warnings
//!
//! - Where more than 5 in.w.c. come out: no furnace's blower makes so much; look whether a gauge shows Pa.
//! - Where the supply is below zero: behind a blower the air is under pressure; look whether the hoses are swapped or the
//!   probe stands before the blower, and measure again.
//!
//! # Example
//!
//! Arithmetic: 0.35 in.w.c. of suction before the furnace and 0.30 in.w.c. behind it.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::total_external_static::FORMULA;
//! let total = formula.compute_typed(&["-0.35 in.w.c.", "0.30 in.w.c."])?;
//! assert_eq!(total.display(formula.result).to_string(), "0.65 in.w.c.");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Common practice; the most that is allowed stands on the rating plate.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "total_external_static",
    group: Group::Air,
    sentence: "The pressure the blower works against outside the furnace.",
    equation: "total = |return| + |supply|",
    arguments: &[
        Argument::new(
            "return",
            Scale::of(Unit::InchWaterColumn),
            "between the room and the air just before the furnace, with or without its minus sign",
        ),
        Argument::new(
            "supply",
            Scale::of(Unit::InchWaterColumn),
            "between the air just after the furnace, before the coil, and the room",
        ),
    ],
    result: Scale::of(Unit::InchWaterColumn),
    range: "Blower running at the speed in question, doors on, filter in place. Signs are dropped, since many gauges show \
            none: it does not notice a return that is under pressure.",
    warnings: &[
        Warning {
            when: "more than 5 in.w.c. come out",
            reason: "no furnace's blower makes so much",
            help: "look whether a gauge shows Pa",
            applies: |_, total| total > 5.0,
        },
        Warning {
            when: "the supply is below zero",
            reason: "behind a blower the air is under pressure",
            help: "look whether the hoses are swapped or the probe stands before the blower, and measure again",
            applies: |numbers, _| numbers[1] < 0.0,
        },
    ],
    example: &["-0.35 in.w.c.", "0.30 in.w.c."],
    references: &["Common practice; the most that is allowed stands on the rating plate."],
    compute: |numbers| {
        let [return_air, supply]: [f64; 2] = each(numbers);
        Ok(return_air.abs() + supply.abs())
    },
};
