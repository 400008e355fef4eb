//! The input that a burner takes at a manifold pressure other than its rating plate's.
//!
//! # Equation
//!
//! `input_at_pressure = input * sqrt(pressure / plate_pressure)`, in BTU/h and in.w.c.
//!
//! # Arguments
//!
//! - `input`, BTU/h: the input on the rating plate.
//! - `pressure`, in.w.c.: the manifold pressure as measured, burner lit.
//! - `plate_pressure`, in.w.c.: the manifold pressure on the rating plate.
//!
//! # Range
//!
//! The orifices, the gas and the altitude are those the plate was made for, and the pressure is at most 27.7 in.w.c.,
//! small beside the atmosphere's, as all manifold pressures are.
//!
//! # Warnings
//!
//! - Where the input is more than 5 % over the plate's: the burner is overfired; set the manifold pressure to the
//!   plate's, within the maker's range; if it is, look at gauge and plate once more.
//! - Where the input is more than 5 % under the plate's: the burner is underfired, and its flue gas may condense
//!   where it must not; look at the supply pressure and the gas valve's setting.
//!
//! # Example
//!
//! Arithmetic: 80,000 BTU/h at 3.5 in.w.c. become 76,495 BTU/h at 3.2 in.w.c., a ratio of 0.956.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::input_at_manifold_pressure::FORMULA;
//! let input = formula.compute_typed(&["80000 BTU/h", "3.2 in.w.c.", "3.5 in.w.c."])?;
//! assert_eq!(input.number_in(formula.result).round(), 76_495.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The square-root law of flow through an orifice: elementary fluid mechanics.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;
use super::limits::within;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "input_at_manifold_pressure",
    group: Group::Gas,
    sentence: "The input that a burner takes at a manifold pressure other than its rating plate's.",
    equation: "input_at_pressure = input * sqrt(pressure / plate_pressure)",
    arguments: &[
        Argument::new(
            "input",
            Scale::of(Unit::BtuPerHour),
            "the input on the rating plate",
        ),
        Argument::new(
            "pressure",
            Scale::of(Unit::InchWaterColumn),
            "the manifold pressure as measured, burner lit",
        ),
        Argument::new(
            "plate_pressure",
            Scale::of(Unit::InchWaterColumn),
            "the manifold pressure on the rating plate",
        ),
    ],
    result: Scale::of(Unit::BtuPerHour),
    range: "The orifices, the gas and the altitude are those the plate was made for, and the pressure is at most 27.7 in.w.c., \
            small beside the atmosphere's, as all manifold pressures are.",
    warnings: &[
        Warning {
            when: "the input is more than 5 % over the plate's",
            reason: "the burner is overfired",
            help: "set the manifold pressure to the plate's, within the maker's range; if it is, look at gauge and plate once more",
            applies: |numbers, input| input > 1.05 * numbers[0],
        },
        Warning {
            when: "the input is more than 5 % under the plate's",
            reason: "the burner is underfired, and its flue gas may condense where it must not",
            help: "look at the supply pressure and the gas valve's setting",
            applies: |numbers, input| input < 0.95 * numbers[0],
        },
    ],
    example: &["80000 BTU/h", "3.2 in.w.c.", "3.5 in.w.c."],
    references: &["The square-root law of flow through an orifice: elementary fluid mechanics."],
    compute: |numbers| {
        let [input, pressure, plate_pressure]: [f64; 3] = each(numbers);
        positive(input, "the plate's input")?;
        not_negative(
            pressure,
            "the manifold pressure",
            "zero the gauge, and check which hose is on which port",
        )?;
        positive(plate_pressure, "the plate's manifold pressure")?;
        // Beyond a psi, a gas gets thinner on its way through the hole; no burner of a house runs at half of that.
        within(pressure, 0.0, 27.7, "the manifold pressure", "in.w.c.")?;
        within(
            plate_pressure,
            0.0,
            27.7,
            "the plate's manifold pressure",
            "in.w.c.",
        )?;
        Ok(input * (pressure / plate_pressure).sqrt())
    },
};
