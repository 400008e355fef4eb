//! How much more air propane got than burning it needs, from carbon dioxide in the flue gas.
//!
//! # Equation
//!
//! `excess_air = 100 * dry * (ultimate - co2) / (air * (co2 - 0.04))`, where burning 1 volume of the gas completely
//! takes `air` = 23.87 volumes of dry air and leaves `dry` = 21.87 volumes of dry flue gas, `ultimate` = 13.76 % of it
//! carbon dioxide.
//!
//! # Arguments
//!
//! - `co2`, %: carbon dioxide in dry flue gas, before any dilution air.
//!
//! # Range
//!
//! Carbon dioxide up to what the fuel can give, and not so low that oxygen is 15 % or more. Complete combustion; a gas
//! of other make-up has another ultimate carbon dioxide, so oxygen tells it better.
//!
//! # Warnings
//!
//! - Where carbon dioxide is so low that oxygen is above 12 %: the sample may hold air that never was at the burner;
//!   look for leaks at the probe and the joints, and sample before any draft hood.
//!
//! # Example
//!
//! Computed: 10.4 % of carbon dioxide is 29.7 % of excess air.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::excess_air_propane_from_co2::FORMULA;
//! let excess = formula.compute_typed(&["10.4 %"])?;
//! assert_eq!(excess.display(formula.result).digits(3).to_string(), "29.7 %");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Stoichiometry of complete combustion with dry air.
//! - Pure propane, C3H8.

use super::excess_air_natural_from_co2;
use super::flue::{self, FlueGas};
use super::formula::{Formula, each};
use super::fuel;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "excess_air_propane_from_co2",
    sentence: "How much more air propane got than burning it needs, from carbon dioxide in the flue gas.",
    warnings: &[Warning {
        when: "carbon dioxide is so low that oxygen is above 12 %",
        reason: "the sample may hold air that never was at the burner",
        help: "look for leaks at the probe and the joints, and sample before any draft hood",
        applies: |numbers, _| {
            FlueGas::from_carbon_dioxide(&fuel::PROPANE, numbers[0])
                .is_ok_and(|flue| flue::is_dilute(flue.oxygen()))
        },
    }],
    example: &["10.4 %"],
    references: &[
        "Stoichiometry of complete combustion with dry air.",
        "Pure propane, C3H8.",
    ],
    compute: |numbers| {
        let [co2] = each(numbers);
        Ok(FlueGas::from_carbon_dioxide(&fuel::PROPANE, co2)?.excess_air())
    },
    ..excess_air_natural_from_co2::FORMULA
};
