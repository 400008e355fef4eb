//! Oxygen in dry flue gas, from carbon dioxide and the most that the fuel can give.
//!
//! # Equation
//!
//! `o2 = 20.9 * (1 - co2 / ultimate_co2)`
//!
//! # Arguments
//!
//! - `co2`, %: carbon dioxide in dry flue gas, before any dilution air.
//! - `ultimate_co2`, %: the most carbon dioxide that the fuel can give: about 11.9 % for natural gas, 13.8 % for
//!   propane.
//!
//! # Range
//!
//! Carbon dioxide up to the ultimate one, and not so low that oxygen is 15 % or more. Complete combustion. The carbon
//! dioxide of fresh air, 0.04 %, is left out, as analysers leave it.
//!
//! # Warnings
//!
//! - Where oxygen comes out above 12 %: the sample may hold air that never was at the burner; look for leaks at the
//!   probe and the joints, and sample before any draft hood.
//!
//! # Example
//!
//! Arithmetic: 9.0 % of carbon dioxide, with an ultimate one of 11.9 %, is 5.09 % of oxygen.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::o2_from_co2::FORMULA;
//! let o2 = formula.compute_typed(&["9.0 %", "11.9 %"])?;
//! assert_eq!(o2.display(formula.result).digits(3).to_string(), "5.09 %");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Common practice: a dry sample is a mixture of undiluted flue gas and of air with 20.9 % of oxygen.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::flue;
use super::formula::{Formula, each};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "o2_from_co2",
    group: Group::Combustion,
    sentence: "Oxygen in dry flue gas, from carbon dioxide and the most that the fuel can give.",
    equation: "o2 = 20.9 * (1 - co2 / ultimate_co2)",
    arguments: &[
        Argument::new(
            "co2",
            Scale::of(Unit::Percent),
            "carbon dioxide in dry flue gas, before any dilution air",
        ),
        Argument::new(
            "ultimate_co2",
            Scale::of(Unit::Percent),
            "the most carbon dioxide that the fuel can give: about 11.9 % for natural gas, 13.8 % for \
             propane",
        ),
    ],
    result: Scale::of(Unit::Percent),
    range: "Carbon dioxide up to the ultimate one, and not so low that oxygen is 15 % or more. Complete \
            combustion. The carbon dioxide of fresh air, 0.04 %, is left out, as analysers leave it.",
    warnings: &[Warning {
        when: "oxygen comes out above 12 %",
        reason: "the sample may hold air that never was at the burner",
        help: "look for leaks at the probe and the joints, and sample before any draft hood",
        applies: |_, o2| flue::is_dilute(o2),
    }],
    example: &["9.0 %", "11.9 %"],
    references: &[
        "Common practice: a dry sample is a mixture of undiluted flue gas and of air with 20.9 % of oxygen.",
    ],
    compute: |numbers| {
        let [co2, ultimate] = each(numbers);
        flue::ultimate_of_a_fuel(ultimate)?;
        flue::carbon_dioxide_of_a_flame(co2, ultimate)?;
        Ok(flue::OXYGEN_AS_READ * (1.0 - co2 / ultimate))
    },
};
