//! How much warmer the air leaves the furnace than it came.
//!
//! # Equation
//!
//! `rise = supply - return`, all in °F.
//!
//! # Arguments
//!
//! - `supply`, °F: the air just after the furnace, out of sight of the heat exchanger.
//! - `return`, °F: the air just before it.
//!
//! # Range
//!
//! Any two temperatures, taken at steady state; below zero where the probes are swapped or the furnace cools.
//!
//! # Warnings
//!
//! - Where the rise is below zero: the supply is colder than the return; look whether the probes are swapped or the
//!   furnace cools.
//! - Where the rise is above 150 °F: no furnace warms its air so much; keep the probe out of sight of the heat
//!   exchanger, and look whether one shows °C.
//!
//! # Example
//!
//! Arithmetic: air at 70 °F leaves at 125 °F.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::temperature_rise::FORMULA;
//! let rise = formula.compute_typed(&["125 °F", "70 °F"])?;
//! assert_eq!(rise.display(formula.result).to_string(), "55 °F");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The definition; the range allowed stands on the rating plate.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "temperature_rise",
    group: Group::Air,
    sentence: "How much warmer the air leaves the furnace than it came.",
    equation: "rise = supply - return",
    arguments: &[
        Argument::new(
            "supply",
            Scale::of(Unit::DegreeFahrenheit),
            "the air just after the furnace, out of sight of the heat exchanger",
        ),
        Argument::new(
            "return",
            Scale::of(Unit::DegreeFahrenheit),
            "the air just before it",
        ),
    ],
    result: Scale::difference(Unit::DegreeFahrenheit),
    range: "Any two temperatures, taken at steady state; below zero where the probes are swapped or the furnace cools.",
    warnings: &[
        Warning {
            when: "the rise is below zero",
            reason: "the supply is colder than the return",
            help: "look whether the probes are swapped or the furnace cools",
            applies: |_, rise| rise < 0.0,
        },
        Warning {
            when: "the rise is above 150 °F",
            reason: "no furnace warms its air so much",
            help: "keep the probe out of sight of the heat exchanger, and look whether one shows °C",
            applies: |_, rise| rise > 150.0,
        },
    ],
    example: &["125 °F", "70 °F"],
    references: &["The definition; the range allowed stands on the rating plate."],
    compute: |numbers| {
        let [supply, return_air] = each(numbers);
        Ok(supply - return_air)
    },
};
