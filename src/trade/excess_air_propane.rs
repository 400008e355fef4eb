//! How much more air propane got than burning it needs, from oxygen in the flue gas.
//!
//! # Equation
//!
//! `excess_air = 100 * dry * o2 / (air * (20.946 - o2))`, where burning 1 volume of the gas completely takes `air` =
//! 23.87 volumes of dry air and leaves `dry` = 21.87 volumes of dry flue gas.
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
//! Computed: 5 % of oxygen is 28.7 % of excess air.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::excess_air_propane::FORMULA;
//! let excess = formula.compute_typed(&["5.0 %"])?;
//! assert_eq!(excess.display(formula.result).digits(3).to_string(), "28.7 %");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Stoichiometry of complete combustion with dry air.
//! - Pure propane, C3H8.

use super::excess_air_natural;
use super::flue::FlueGas;
use super::formula::{Formula, each};
use super::fuel;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "excess_air_propane",
    sentence: "How much more air propane got than burning it needs, from oxygen in the flue gas.",
    references: &[
        "Stoichiometry of complete combustion with dry air.",
        "Pure propane, C3H8.",
    ],
    compute: |numbers| {
        let [o2] = each(numbers);
        Ok(FlueGas::from_oxygen(&fuel::PROPANE, o2)?.excess_air())
    },
    ..excess_air_natural::FORMULA
};
