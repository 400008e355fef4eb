//! The input of a burner whose orifices were left as they are when the gas was changed.
//!
//! # Equation
//!
//! `new_input = input * new_heating_value / heating_value * sqrt(new_pressure / pressure * specific_gravity /
//! new_specific_gravity)`, in BTU/h, BTU/ft³ and in.w.c..
//!
//! # Arguments
//!
//! - `input`, BTU/h: with the gas the orifices were made for.
//! - `pressure`, in.w.c.: the manifold pressure for that gas.
//! - `heating_value`, BTU/ft³: of the old gas; about 1000 for natural gas.
//! - `specific_gravity`: of the old gas against air; about 0.60 for natural gas.
//! - `new_pressure`, in.w.c.: the manifold pressure as measured with the new gas.
//! - `new_heating_value`, BTU/ft³: of the new gas; about 2500 for propane.
//! - `new_specific_gravity`: of the new gas against air; about 1.52 for propane.
//!
//! # Range
//!
//! Two gases through the same orifices at sea level, pressures of at most 1 psi. It tells a fault, not a way to
//! convert: only the maker's conversion kit, put in by those licensed for it, makes a furnace fit for another gas.
//!
//! # Warnings
//!
//! - Where the input is more than a tenth over: the burner makes carbon monoxide and overheats the furnace; close the
//!   gas cock; orifices and gas do not belong together.
//!
//! # Example
//!
//! Common practice: propane through orifices for natural gas gives about 2.8 times the input at its own pressure, 1.6
//! times at the same one.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::input_with_other_gas::FORMULA;
//! let input = formula.compute_typed(&["80000 BTU/h", "3.5 in.w.c.", "1000 BTU/ft3", "0.60", "11 in.w.c.", "2500 BTU/ft3", "1.50"])?;
//! assert_eq!((input.number_in(formula.result) / 1e3).round(), 224.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The square-root law of flow through an orifice: elementary fluid mechanics.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;
use super::orifice::heat;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "input_with_other_gas",
    group: Group::Gas,
    sentence: "The input of a burner whose orifices were left as they are when the gas was changed.",
    equation: "new_input = input * new_heating_value / heating_value * sqrt(new_pressure / pressure * \
               specific_gravity / new_specific_gravity)",
    arguments: &[
        Argument::new(
            "input",
            Scale::of(Unit::BtuPerHour),
            "with the gas the orifices were made for",
        ),
        Argument::new(
            "pressure",
            Scale::of(Unit::InchWaterColumn),
            "the manifold pressure for that gas",
        ),
        Argument::new(
            "heating_value",
            Scale::of(Unit::BtuPerCubicFoot),
            "of the old gas; about 1000 for natural gas",
        ),
        Argument::new(
            "specific_gravity",
            Scale::of(Unit::Number),
            "of the old gas against air; about 0.60 for natural gas",
        ),
        Argument::new(
            "new_pressure",
            Scale::of(Unit::InchWaterColumn),
            "the manifold pressure as measured with the new gas",
        ),
        Argument::new(
            "new_heating_value",
            Scale::of(Unit::BtuPerCubicFoot),
            "of the new gas; about 2500 for propane",
        ),
        Argument::new(
            "new_specific_gravity",
            Scale::of(Unit::Number),
            "of the new gas against air; about 1.52 for propane",
        ),
    ],
    result: Scale::of(Unit::BtuPerHour),
    range: "Two gases through the same orifices at sea level, pressures of at most 1 psi. It tells a fault, \
            not a way to convert: only the maker's conversion kit, put in by those licensed for it, makes a \
            furnace fit for another gas.",
    warnings: &[Warning {
        when: "the input is more than a tenth over",
        reason: "the burner makes carbon monoxide and overheats the furnace",
        help: "close the gas cock; orifices and gas do not belong together",
        applies: |numbers, input| input > 1.1 * numbers[0],
    }],
    example: &[
        "80000 BTU/h",
        "3.5 in.w.c.",
        "1000 BTU/ft3",
        "0.60",
        "11 in.w.c.",
        "2500 BTU/ft3",
        "1.50",
    ],
    references: &["The square-root law of flow through an orifice: elementary fluid mechanics."],
    compute: |numbers| {
        let [
            input,
            pressure,
            heating_value,
            specific_gravity,
            new_pressure,
            new_heating_value,
            new_specific_gravity,
        ] = each(numbers);
        positive(input, "the input")?;
        let old = heat(pressure, heating_value, specific_gravity)?;
        let new = heat(new_pressure, new_heating_value, new_specific_gravity)?;
        Ok(input * new / old)
    },
};
