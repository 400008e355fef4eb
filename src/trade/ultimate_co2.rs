//! The most carbon dioxide that the fuel can give, from oxygen and carbon dioxide of one sample.
//!
//! # Equation
//!
//! `ultimate_co2 = co2 * 20.9 / (20.9 - o2)`
//!
//! # Arguments
//!
//! - `o2`, %: oxygen in dry flue gas, before any dilution air.
//! - `co2`, %: carbon dioxide of the same sample, by a cell of its own: an analyser that works it out from oxygen gives
//!   back what it was set to.
//!
//! # Range
//!
//! Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Complete combustion. What comes out tells
//! the fuel: about 11.9 % is natural gas, 13.8 % propane; other values, a leak or a wrong cell.
//!
//! # Warnings
//!
//! - Where oxygen is above 12 %: the sample may hold air that never was at the burner; look for leaks at the probe and
//!   the joints, and sample before any draft hood.
//!
//! # Example
//!
//! Arithmetic: 5.0 % of oxygen beside 9.05 % of carbon dioxide is 11.9 %.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::ultimate_co2::FORMULA;
//! let ultimate = formula.compute_typed(&["5.0 %", "9.05 %"])?;
//! assert_eq!(ultimate.display(formula.result).digits(3).to_string(), "11.9 %");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Common practice: a dry sample is a mixture of undiluted flue gas and of air with 20.9 % of oxygen.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::doubts;
use super::flue;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "ultimate_co2",
    group: Group::Combustion,
    sentence: "The most carbon dioxide that the fuel can give, from oxygen and carbon dioxide of one \
               sample.",
    equation: "ultimate_co2 = co2 * 20.9 / (20.9 - o2)",
    arguments: &[
        Argument::new(
            "o2",
            Scale::of(Unit::Percent),
            "oxygen in dry flue gas, before any dilution air",
        ),
        Argument::new(
            "co2",
            Scale::of(Unit::Percent),
            "carbon dioxide of the same sample, by a cell of its own: an analyser that works it out from \
             oxygen gives back what it was set to",
        ),
    ],
    result: Scale::of(Unit::Percent),
    range: "Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Complete combustion. \
            What comes out tells the fuel: about 11.9 % is natural gas, 13.8 % propane; other values, a \
            leak or a wrong cell.",
    warnings: &[doubts::DILUTE],
    example: &["5.0 %", "9.05 %"],
    references: &[
        "Common practice: a dry sample is a mixture of undiluted flue gas and of air with 20.9 % of oxygen.",
    ],
    compute: |numbers| {
        let [o2, co2] = each(numbers);
        flue::oxygen_of_a_flame(o2)?;
        positive(co2, "carbon dioxide")?;
        let ultimate = co2 * flue::OXYGEN_AS_READ / (flue::OXYGEN_AS_READ - o2);
        flue::ultimate_of_a_fuel(ultimate)?;
        Ok(ultimate)
    },
};
