//! The share of the water of natural gas that condenses where the flue gas has settled at a temperature.
//!
//! # Equation
//!
//! `share = 100 * (1 - (dry + excess) * saturated / ((1 - saturated) * water))`, where burning the gas leaves `water`
//! and `dry`, oxygen tells `excess`, and `saturated` is the saturation pressure at the flue temperature over 101.325
//! kPa; 0 above the dew point.
//!
//! # Arguments
//!
//! - `o2`, %: oxygen in dry flue gas, before any dilution air.
//! - `flue_temperature`, °F: the flue gas as it leaves, cooled evenly.
//!
//! # Range
//!
//! Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Flue temperatures from 32 °F to below 212
//! °F, dry combustion air at sea level. A real furnace condenses more: its cold surfaces dry the gas further than the
//! mean temperature says. The maker's instructions and local codes govern where the water goes.
//!
//! # Warnings
//!
//! - Where oxygen is above 12 %: the sample may hold air that never was at the burner; look for leaks at the probe and
//!   the joints, and sample before any draft hood.
//!
//! # Example
//!
//! Computed: at 5.24 % of oxygen and 104 °F, 54.6 % of the water.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::condensed_share_natural::FORMULA;
//! let share = formula.compute_typed(&["5.24 %", "104 °F"])?;
//! assert_eq!(share.display(formula.result).digits(3).to_string(), "54.6 %");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Stoichiometry of complete combustion with dry air.
//! - A gas distributor's published typical analysis of natural gas: 95 % methane, 3.2 % ethane.
//! - IAPWS-IF97, revised release of 2007, equation 30: the saturation pressure of water.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::doubts;
use super::flue::FlueGas;
use super::formula::{Formula, each};
use super::fuel;
use super::group::Group;
use super::saturation::FREEZING;
use super::unfit::Unfit;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "condensed_share_natural",
    group: Group::Condensate,
    sentence: "The share of the water of natural gas that condenses where the flue gas has settled at a \
               temperature.",
    equation: "share = 100 * (1 - (dry + excess) * saturated / ((1 - saturated) * water))",
    arguments: &[
        Argument::new(
            "o2",
            Scale::of(Unit::Percent),
            "oxygen in dry flue gas, before any dilution air",
        ),
        Argument::new(
            "flue_temperature",
            Scale::of(Unit::DegreeFahrenheit),
            "the flue gas as it leaves, cooled evenly",
        ),
    ],
    result: Scale::of(Unit::Percent),
    range: "Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Flue temperatures \
            from 32 °F to below 212 °F, dry combustion air at sea level. A real furnace condenses more: its \
            cold surfaces dry the gas further than the mean temperature says. The maker's instructions and \
            local codes govern where the water goes.",
    warnings: &[doubts::DILUTE],
    example: &["5.24 %", "104 °F"],
    references: &[
        "Stoichiometry of complete combustion with dry air.",
        "A gas distributor's published typical analysis of natural gas: 95 % methane, 3.2 % ethane.",
        "IAPWS-IF97, revised release of 2007, equation 30: the saturation pressure of water.",
    ],
    compute: |numbers| {
        let [o2, temperature] = each(numbers);
        let flue = FlueGas::from_oxygen(&fuel::NATURAL, o2)?;
        if !(32.0..212.0).contains(&temperature) {
            return Err(Unfit::new(
                format!("at {temperature} °F no water condenses from flue gas as water"),
                "give the temperature of the flue gas where it leaves the furnace",
            ));
        }
        Ok(100.0 * flue.condensed((temperature - 32.0) / 1.8 + FREEZING))
    },
};
