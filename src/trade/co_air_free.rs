//! The carbon monoxide that flue gas would hold without its excess air.
//!
//! # Equation
//!
//! `co_air_free = co * 20.9 / (20.9 - o2)`, in ppm and per cent of dry gas.
//!
//! # Arguments
//!
//! - `co`, ppm: carbon monoxide as measured, in dry flue gas.
//! - `o2`, %: oxygen in the same sample.
//!
//! # Range
//!
//! Oxygen from 0 to below 15 %: above, little flue gas is left in the sample and an oxygen cell's error of a few tenths of
//! a point takes over the result. The sample is taken before any dilution air.
//!
//! # Warnings
//!
//! - Where it is above 400 ppm: a vented central furnace may not leave more; shut it down, and let nobody use it until
//!   it is known why and put right.
//!
//! # Example
//!
//! 87 ppm at 5.0 % of oxygen is 114 ppm free of air: worked in trade education from the definition below.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::co_air_free::FORMULA;
//! let co = formula.compute_typed(&["87 ppm", "5.0 %"])?;
//! assert_eq!(co.number_in(formula.result).round(), 114.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - ANSI Z21 test standards, the definition of an air-free sample, as quoted in trade education.
//! - ANSI Z21.47: 400 ppm for a vented central furnace.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::doubts;
use super::flue::{OXYGEN_AS_READ, carbon_monoxide_of_a_flame, oxygen_of_a_flame};
use super::formula::{Formula, each};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "co_air_free",
    group: Group::Combustion,
    sentence: "The carbon monoxide that flue gas would hold without its excess air.",
    equation: "co_air_free = co * 20.9 / (20.9 - o2)",
    arguments: &[
        Argument::new(
            "co",
            Scale::of(Unit::PartPerMillion),
            "carbon monoxide as measured, in dry flue gas",
        ),
        Argument::new("o2", Scale::of(Unit::Percent), "oxygen in the same sample"),
    ],
    result: Scale::of(Unit::PartPerMillion),
    range: "Oxygen from 0 to below 15 %: above, little flue gas is left in the sample and an oxygen cell's error of a few \
            tenths of a point takes over the result. The sample is taken before any dilution air.",
    warnings: &[doubts::UNSAFE],
    example: &["87 ppm", "5.0 %"],
    references: &[
        "ANSI Z21 test standards, the definition of an air-free sample, as quoted in trade education.",
        "ANSI Z21.47: 400 ppm for a vented central furnace.",
    ],
    compute: |numbers| {
        let [co, o2] = each(numbers);
        carbon_monoxide_of_a_flame(co)?;
        oxygen_of_a_flame(o2)?;
        Ok(co * OXYGEN_AS_READ / (OXYGEN_AS_READ - o2))
    },
};
