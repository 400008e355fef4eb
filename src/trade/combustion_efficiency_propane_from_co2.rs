//! The share of the heat of propane that does not leave by the stack, from carbon dioxide and temperature.
//!
//! # Equation
//!
//! `efficiency = 100 * (1 - (heat of the warm dry gas + heat of the warm vapour + latent heat of all water) / gross
//! heating value)`, for what burning 1 volume of the gas leaves, with the excess air that carbon dioxide tells.
//!
//! # Arguments
//!
//! - `co2`, %: carbon dioxide in dry flue gas, before any dilution air.
//! - `net_stack_temperature`, °F: how much warmer the flue gas leaves than the combustion air came.
//!
//! # Range
//!
//! Carbon dioxide up to what the fuel can give, and not so low that oxygen is 15 % or more. Flue gas well above its dew
//! point, so that all water leaves as vapour: refused where it would condense, which is the range of condensing
//! furnaces, and above 1200 °F of net temperature. Complete combustion with dry air near 77 °F. It counts only what
//! leaves by the stack: not the jacket, not idle times, so it is no AFUE.
//!
//! # Warnings
//!
//! - Where carbon dioxide is so low that oxygen is above 12 %: the sample may hold air that never was at the burner;
//!   look for leaks at the probe and the joints, and sample before any draft hood.
//! - Where the flue gas is within 27 °F of its dew point: part of its water may condense, in humid air or on cold
//!   metal, and give up heat that is not counted; sample where the flue gas is hotter; a condensing furnace is judged
//!   by its maker's instructions.
//!
//! # Example
//!
//! Computed: 9 % of carbon dioxide and 400 °F give 80.5 %.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::combustion_efficiency_propane_from_co2::FORMULA;
//! let efficiency = formula.compute_typed(&["9.0 %", "400 °F"])?;
//! assert_eq!(efficiency.display(formula.result).digits(3).to_string(), "80.5 %");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Stoichiometry of complete combustion with dry air.
//! - Pure propane, C3H8.
//! - Enthalpies: NASA polynomials in the coefficients of GRI-Mech 3.0; heats of combustion: ISO 6976 (memory).

use super::combustion_efficiency_natural_from_co2;
use super::flue::{self, FlueGas};
use super::formula::{Formula, each};
use super::fuel;
use super::stack;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "combustion_efficiency_propane_from_co2",
    sentence: "The share of the heat of propane that does not leave by the stack, from carbon dioxide and \
               temperature.",
    warnings: &[
        Warning {
            when: "carbon dioxide is so low that oxygen is above 12 %",
            reason: "the sample may hold air that never was at the burner",
            help: "look for leaks at the probe and the joints, and sample before any draft hood",
            applies: |numbers, _| {
                FlueGas::from_carbon_dioxide(&fuel::PROPANE, numbers[0])
                    .is_ok_and(|flue| flue::is_dilute(flue.oxygen()))
            },
        },
        Warning {
            when: "the flue gas is within 27 °F of its dew point",
            reason: "part of its water may condense, in humid air or on cold metal, and give up heat that \
                     is not counted",
            help: "sample where the flue gas is hotter; a condensing furnace is judged by its maker's \
                   instructions",
            applies: |numbers, _| {
                FlueGas::from_carbon_dioxide(&fuel::PROPANE, numbers[0])
                    .is_ok_and(|flue| stack::is_near_dew_point(&flue, numbers[1]))
            },
        },
    ],
    references: &[
        "Stoichiometry of complete combustion with dry air.",
        "Pure propane, C3H8.",
        "Enthalpies: NASA polynomials in the coefficients of GRI-Mech 3.0; heats of combustion: ISO 6976 \
         (memory).",
    ],
    compute: |numbers| {
        let [co2, net] = each(numbers);
        let flue = FlueGas::from_carbon_dioxide(&fuel::PROPANE, co2)?;
        stack::efficiency(&flue, net)
    },
    ..combustion_efficiency_natural_from_co2::FORMULA
};
