//! Carbon dioxide in dry flue gas, from oxygen and the most that the fuel can give.
//!
//! # Equation
//!
//! `co2 = ultimate_co2 * (1 - o2 / 20.9)`
//!
//! # Arguments
//!
//! - `o2`, %: oxygen in dry flue gas, before any dilution air.
//! - `ultimate_co2`, %: the most carbon dioxide that the fuel can give: about 11.9 % for natural gas, 13.8 % for
//!   propane.
//!
//! # Range
//!
//! Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Complete combustion. The carbon dioxide
//! of fresh air, 0.04 %, is left out, as analysers leave it.
//!
//! # Warnings
//!
//! - Where oxygen is above 12 %: the sample may hold air that never was at the burner; look for leaks at the probe and
//!   the joints, and sample before any draft hood.
//!
//! # Example
//!
//! Arithmetic: 5.0 % of oxygen, with an ultimate carbon dioxide of 11.9 %, is 9.05 % of carbon dioxide.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::co2_from_o2::FORMULA;
//! let co2 = formula.compute_typed(&["5.0 %", "11.9 %"])?;
//! assert_eq!(co2.display(formula.result).digits(3).to_string(), "9.05 %");
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
use super::formula::{Formula, each};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "co2_from_o2",
    group: Group::Combustion,
    sentence: "Carbon dioxide in dry flue gas, from oxygen and the most that the fuel can give.",
    equation: "co2 = ultimate_co2 * (1 - o2 / 20.9)",
    arguments: &[
        Argument::new(
            "o2",
            Scale::of(Unit::Percent),
            "oxygen in dry flue gas, before any dilution air",
        ),
        Argument::new(
            "ultimate_co2",
            Scale::of(Unit::Percent),
            "the most carbon dioxide that the fuel can give: about 11.9 % for natural gas, 13.8 % for \
             propane",
        ),
    ],
    result: Scale::of(Unit::Percent),
    range: "Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Complete combustion. \
            The carbon dioxide of fresh air, 0.04 %, is left out, as analysers leave it.",
    warnings: &[doubts::DILUTE],
    example: &["5.0 %", "11.9 %"],
    references: &[
        "Common practice: a dry sample is a mixture of undiluted flue gas and of air with 20.9 % of oxygen.",
    ],
    compute: |numbers| {
        let [o2, ultimate] = each(numbers);
        flue::oxygen_of_a_flame(o2)?;
        flue::ultimate_of_a_fuel(ultimate)?;
        Ok(ultimate * (1.0 - o2 / flue::OXYGEN_AS_READ))
    },
};
