//! How much more air natural gas got than burning it needs, from oxygen in the flue gas.
//!
//! # Equation
//!
//! `excess_air = 100 * dry * o2 / (air * (20.946 - o2))`, where burning 1 volume of the gas completely takes `air` =
//! 9.68 volumes of dry air and leaves `dry` = 8.69 volumes of dry flue gas.
//!
//! # Arguments
//!
//! - `o2`, %: oxygen in dry flue gas, before any dilution air.
//!
//! # Range
//!
//! Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Complete combustion. The common short
//! form, oxygen over 20.9 less oxygen, takes both volumes as equal and reads a tenth too high.
//!
//! # Warnings
//!
//! - Where oxygen is above 12 %: the sample may hold air that never was at the burner; look for leaks at the probe and
//!   the joints, and sample before any draft hood.
//!
//! # Example
//!
//! Published: 28.1 % at 5.0 % of oxygen, in the tip sheet below.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::excess_air_natural::FORMULA;
//! let excess = formula.compute_typed(&["5.0 %"])?;
//! assert_eq!(excess.display(formula.result).digits(3).to_string(), "28.2 %");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Stoichiometry of complete combustion with dry air.
//! - A gas distributor's published typical analysis of natural gas: 95 % methane, 3.2 % ethane.
//! - US Department of Energy, Steam Tip Sheet #4 (2006): excess air for five values of oxygen.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::doubts;
use super::flue::FlueGas;
use super::formula::{Formula, each};
use super::fuel;
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "excess_air_natural",
    group: Group::Combustion,
    sentence: "How much more air natural gas got than burning it needs, from oxygen in the flue gas.",
    equation: "excess_air = 100 * dry * o2 / (air * (20.946 - o2))",
    arguments: &[Argument::new(
        "o2",
        Scale::of(Unit::Percent),
        "oxygen in dry flue gas, before any dilution air",
    )],
    result: Scale::of(Unit::Percent),
    range: "Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Complete combustion. \
            The common short form, oxygen over 20.9 less oxygen, takes both volumes as equal and reads a \
            tenth too high.",
    warnings: &[doubts::DILUTE],
    example: &["5.0 %"],
    references: &[
        "Stoichiometry of complete combustion with dry air.",
        "A gas distributor's published typical analysis of natural gas: 95 % methane, 3.2 % ethane.",
        "US Department of Energy, Steam Tip Sheet #4 (2006): excess air for five values of oxygen.",
    ],
    compute: |numbers| {
        let [o2] = each(numbers);
        Ok(FlueGas::from_oxygen(&fuel::NATURAL, o2)?.excess_air())
    },
};
