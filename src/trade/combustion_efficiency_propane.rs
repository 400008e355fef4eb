//! The share of the heat of propane that does not leave by the stack, from oxygen and temperature.
//!
//! # Equation
//!
//! `efficiency = 100 * (1 - (heat of the warm dry gas + heat of the warm vapour + latent heat of all water) / gross
//! heating value)`, for what burning 1 volume of the gas leaves, with the excess air that oxygen tells.
//!
//! # Arguments
//!
//! - `o2`, %: oxygen in dry flue gas, before any dilution air.
//! - `net_stack_temperature`, °F: how much warmer the flue gas leaves than the combustion air came.
//!
//! # Range
//!
//! Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Flue gas well above its dew point, so
//! that all water leaves as vapour: refused where it would condense, which is the range of condensing furnaces, and
//! above 1200 °F of net temperature. Complete combustion with dry air near 77 °F. It counts only what leaves by the
//! stack: not the jacket, not idle times, so it is no AFUE.
//!
//! # Warnings
//!
//! - Where oxygen is above 12 %: the sample may hold air that never was at the burner; look for leaks at the probe and
//!   the joints, and sample before any draft hood.
//! - Where the flue gas is within 27 °F of its dew point: part of its water may condense, in humid air or on cold
//!   metal, and give up heat that is not counted; sample where the flue gas is hotter; a condensing furnace is judged
//!   by its maker's instructions.
//!
//! # Example
//!
//! Computed: 7 % of oxygen and 400 °F give 80.7 %.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::combustion_efficiency_propane::FORMULA;
//! let efficiency = formula.compute_typed(&["7.0 %", "400 °F"])?;
//! assert_eq!(efficiency.display(formula.result).digits(3).to_string(), "80.7 %");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Stoichiometry of complete combustion with dry air.
//! - Pure propane, C3H8.
//! - Enthalpies: NASA polynomials in the coefficients of GRI-Mech 3.0; heats of combustion: ISO 6976 (memory).

use super::combustion_efficiency_natural;
use super::doubts;
use super::flue::FlueGas;
use super::formula::{Formula, each};
use super::fuel;
use super::stack;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "combustion_efficiency_propane",
    sentence: "The share of the heat of propane that does not leave by the stack, from oxygen and \
               temperature.",
    warnings: &[
        doubts::DILUTE,
        Warning {
            when: "the flue gas is within 27 °F of its dew point",
            reason: "part of its water may condense, in humid air or on cold metal, and give up heat that \
                     is not counted",
            help: "sample where the flue gas is hotter; a condensing furnace is judged by its maker's \
                   instructions",
            applies: |numbers, _| {
                FlueGas::from_oxygen(&fuel::PROPANE, numbers[0])
                    .is_ok_and(|flue| stack::is_near_dew_point(&flue, numbers[1]))
            },
        },
    ],
    example: &["7.0 %", "400 °F"],
    references: &[
        "Stoichiometry of complete combustion with dry air.",
        "Pure propane, C3H8.",
        "Enthalpies: NASA polynomials in the coefficients of GRI-Mech 3.0; heats of combustion: ISO 6976 \
         (memory).",
    ],
    compute: |numbers| {
        let [o2, net] = each(numbers);
        let flue = FlueGas::from_oxygen(&fuel::PROPANE, o2)?;
        stack::efficiency(&flue, net)
    },
    ..combustion_efficiency_natural::FORMULA
};
