//! The carbon monoxide that flue gas would hold without its excess air, from carbon dioxide.
//!
//! # Equation
//!
//! `co_air_free = co * ultimate_co2 / co2`
//!
//! # Arguments
//!
//! - `co`, ppm: carbon monoxide as measured, in dry flue gas.
//! - `co2`, %: carbon dioxide in the same sample.
//! - `ultimate_co2`, %: the most carbon dioxide that the fuel can give: about 11.9 % for natural gas, 13.8 % for
//!   propane.
//!
//! # Range
//!
//! Carbon dioxide up to the ultimate one, and not so low that the sample is mostly air, with 15 % of oxygen or more.
//! The sample is taken before any dilution air.
//!
//! # Warnings
//!
//! - Where it is above 400 ppm: a vented central furnace may not leave more; shut it down, and let nobody use it until
//!   it is known why and put right.
//!
//! # Example
//!
//! Computed: 50 ppm at 7.0 % of carbon dioxide, with an ultimate one of 11.7 %, is 83.6 ppm free of air.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::co_air_free_from_co2::FORMULA;
//! let co = formula.compute_typed(&["50 ppm", "7.0 %", "11.7 %"])?;
//! assert_eq!(co.display(formula.result).digits(3).to_string(), "83.6 ppm");
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
use super::flue;
use super::formula::{Formula, each};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "co_air_free_from_co2",
    group: Group::Combustion,
    sentence: "The carbon monoxide that flue gas would hold without its excess air, from carbon dioxide.",
    equation: "co_air_free = co * ultimate_co2 / co2",
    arguments: &[
        Argument::new(
            "co",
            Scale::of(Unit::PartPerMillion),
            "carbon monoxide as measured, in dry flue gas",
        ),
        Argument::new(
            "co2",
            Scale::of(Unit::Percent),
            "carbon dioxide in the same sample",
        ),
        Argument::new(
            "ultimate_co2",
            Scale::of(Unit::Percent),
            "the most carbon dioxide that the fuel can give: about 11.9 % for natural gas, 13.8 % for \
             propane",
        ),
    ],
    result: Scale::of(Unit::PartPerMillion),
    range: "Carbon dioxide up to the ultimate one, and not so low that the sample is mostly air, with 15 % \
            of oxygen or more. The sample is taken before any dilution air.",
    warnings: &[doubts::UNSAFE],
    example: &["50 ppm", "7.0 %", "11.7 %"],
    references: &[
        "ANSI Z21 test standards, the definition of an air-free sample, as quoted in trade education.",
        "ANSI Z21.47: 400 ppm for a vented central furnace.",
    ],
    compute: |numbers| {
        let [co, co2, ultimate] = each(numbers);
        flue::carbon_monoxide_of_a_flame(co)?;
        flue::ultimate_of_a_fuel(ultimate)?;
        flue::carbon_dioxide_of_a_flame(co2, ultimate)?;
        Ok(co * ultimate / co2)
    },
};
