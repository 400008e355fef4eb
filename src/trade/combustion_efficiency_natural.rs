//! The share of the heat of natural gas that does not leave by the stack, from oxygen and temperature.
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
//! Published: 75.2 % at 7 % of oxygen and 500 °F, in the tip sheet below; from the enthalpies it is 75.8 %, and 0.3 to
//! 0.8 points more over the whole of its table.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::combustion_efficiency_natural::FORMULA;
//! let efficiency = formula.compute_typed(&["7.0 %", "500 °F"])?;
//! assert_eq!(efficiency.display(formula.result).digits(3).to_string(), "75.8 %");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Stoichiometry of complete combustion with dry air.
//! - A gas distributor's published typical analysis of natural gas: 95 % methane, 3.2 % ethane.
//! - Enthalpies: NASA polynomials in the coefficients of GRI-Mech 3.0; heats of combustion: ISO 6976 (memory).
//! - US Department of Energy, Steam Tip Sheet #4 (2006): combustion efficiency of natural gas.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::doubts;
use super::flue::FlueGas;
use super::formula::{Formula, each};
use super::fuel;
use super::group::Group;
use super::stack;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "combustion_efficiency_natural",
    group: Group::Combustion,
    sentence: "The share of the heat of natural gas that does not leave by the stack, from oxygen and \
               temperature.",
    equation: "efficiency = 100 * (1 - (heat of the warm dry gas + heat of the warm vapour + latent heat of \
               all water) / gross heating value)",
    arguments: &[
        Argument::new(
            "o2",
            Scale::of(Unit::Percent),
            "oxygen in dry flue gas, before any dilution air",
        ),
        Argument::new(
            "net_stack_temperature",
            Scale::difference(Unit::DegreeFahrenheit),
            "how much warmer the flue gas leaves than the combustion air came",
        ),
    ],
    result: Scale::of(Unit::Percent),
    range: "Oxygen from 0 to below 15 %: above, little flue gas is left in the sample. Flue gas well above \
            its dew point, so that all water leaves as vapour: refused where it would condense, which is \
            the range of condensing furnaces, and above 1200 °F of net temperature. Complete combustion \
            with dry air near 77 °F. It counts only what leaves by the stack: not the jacket, not idle \
            times, so it is no AFUE.",
    warnings: &[
        doubts::DILUTE,
        Warning {
            when: "the flue gas is within 27 °F of its dew point",
            reason: "part of its water may condense, in humid air or on cold metal, and give up heat that \
                     is not counted",
            help: "sample where the flue gas is hotter; a condensing furnace is judged by its maker's \
                   instructions",
            applies: |numbers, _| {
                FlueGas::from_oxygen(&fuel::NATURAL, numbers[0])
                    .is_ok_and(|flue| stack::is_near_dew_point(&flue, numbers[1]))
            },
        },
    ],
    example: &["7.0 %", "500 °F"],
    references: &[
        "Stoichiometry of complete combustion with dry air.",
        "A gas distributor's published typical analysis of natural gas: 95 % methane, 3.2 % ethane.",
        "Enthalpies: NASA polynomials in the coefficients of GRI-Mech 3.0; heats of combustion: ISO 6976 \
         (memory).",
        "US Department of Energy, Steam Tip Sheet #4 (2006): combustion efficiency of natural gas.",
    ],
    compute: |numbers| {
        let [o2, net] = each(numbers);
        let flue = FlueGas::from_oxygen(&fuel::NATURAL, o2)?;
        stack::efficiency(&flue, net)
    },
};
