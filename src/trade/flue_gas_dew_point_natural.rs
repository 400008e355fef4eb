//! The temperature at which water begins to condense from the flue gas of natural gas.
//!
//! # Equation
//!
//! `dew_point = saturation temperature at (101.325 kPa * water / (water + dry + excess))`, where burning the gas leaves
//! `water` and `dry`, and oxygen tells `excess`; the saturation line is that of IAPWS-IF97.
//!
//! # Arguments
//!
//! - `o2`, %: oxygen in dry flue gas, before any dilution air.
//!
//! # Range
//!
//! Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Dry combustion air at sea level. Humid
//! air raises it by up to about 5 °F; altitude lowers it by about 1.4 °F for each 1000 ft. Sulphur in the gas, and
//! acids from dirty air, condense sooner.
//!
//! # Warnings
//!
//! - Where oxygen is above 12 %: the sample may hold air that never was at the burner; look for leaks at the probe and
//!   the joints, and sample before any draft hood.
//!
//! # Example
//!
//! Computed: 5.2 % of oxygen, about 30 % of excess air: 129 °F.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::flue_gas_dew_point_natural::FORMULA;
//! let dew_point = formula.compute_typed(&["5.2 %"])?;
//! assert_eq!(dew_point.display(formula.result).digits(3).to_string(), "129 °F");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Stoichiometry of complete combustion with dry air.
//! - A gas distributor's published typical analysis of natural gas: 95 % methane, 3.2 % ethane.
//! - IAPWS-IF97, revised release of 2007, equation 31: the saturation temperature of water.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::doubts;
use super::flue::FlueGas;
use super::formula::{Formula, each};
use super::fuel;
use super::group::Group;
use super::saturation::FREEZING;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "flue_gas_dew_point_natural",
    group: Group::Combustion,
    sentence: "The temperature at which water begins to condense from the flue gas of natural gas.",
    equation: "dew_point = saturation temperature at (101.325 kPa * water / (water + dry + excess))",
    arguments: &[Argument::new(
        "o2",
        Scale::of(Unit::Percent),
        "oxygen in dry flue gas, before any dilution air",
    )],
    result: Scale::of(Unit::DegreeFahrenheit),
    range: "Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Dry combustion air \
            at sea level. Humid air raises it by up to about 5 °F; altitude lowers it by about 1.4 °F for \
            each 1000 ft. Sulphur in the gas, and acids from dirty air, condense sooner.",
    warnings: &[doubts::DILUTE],
    example: &["5.2 %"],
    references: &[
        "Stoichiometry of complete combustion with dry air.",
        "A gas distributor's published typical analysis of natural gas: 95 % methane, 3.2 % ethane.",
        "IAPWS-IF97, revised release of 2007, equation 31: the saturation temperature of water.",
    ],
    compute: |numbers| {
        let [o2] = each(numbers);
        let flue = FlueGas::from_oxygen(&fuel::NATURAL, o2)?;
        Ok((flue.dew_point() - FREEZING) * 1.8 + 32.0)
    },
};
