//! How far the input lies above or below the rating plate's.
//!
//! # Equation
//!
//! `deviation = 100 * (input - plate_input) / plate_input`, in per cent and BTU/h.
//!
//! # Arguments
//!
//! - `input`, BTU/h: as clocked.
//! - `plate_input`, BTU/h: on the rating plate, derated for the altitude where that is asked for.
//!
//! # Range
//!
//! Input as clocked at steady fire; its own error comes on top, see `timing_error`. Below zero the burner is
//! underfired.
//!
//! # Warnings
//!
//! - Where the input is more than 5 % over: the burner is overfired; check orifices, manifold pressure, heating value
//!   and altitude before anything else.
//! - Where the input is more than 5 % under: the burner is underfired; check orifices, manifold and supply pressure,
//!   heating value and altitude before anything else.
//!
//! # Example
//!
//! Arithmetic: 86,400 BTU/h against 80,000 on the plate are 8 % over.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::input_deviation::FORMULA;
//! let deviation = formula.compute_typed(&["86400 BTU/h", "80000 BTU/h"])?;
//! assert_eq!(deviation.number_in(formula.result).round(), 8.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Arithmetic; the 5 % of the warnings are common practice, and many makers ask for 2 %.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "input_deviation",
    group: Group::Gas,
    sentence: "How far the input lies above or below the rating plate's.",
    equation: "deviation = 100 * (input - plate_input) / plate_input",
    arguments: &[
        Argument::new("input", Scale::of(Unit::BtuPerHour), "as clocked"),
        Argument::new(
            "plate_input",
            Scale::of(Unit::BtuPerHour),
            "on the rating plate, derated for the altitude where that is asked for",
        ),
    ],
    result: Scale::of(Unit::Percent),
    range: "Input as clocked at steady fire; its own error comes on top, see `timing_error`. Below zero the \
            burner is underfired.",
    warnings: &[
        Warning {
            when: "the input is more than 5 % over",
            reason: "the burner is overfired",
            help: "check orifices, manifold pressure, heating value and altitude before anything else",
            applies: |_, deviation| deviation > 5.0,
        },
        Warning {
            when: "the input is more than 5 % under",
            reason: "the burner is underfired",
            help: "check orifices, manifold and supply pressure, heating value and altitude before anything \
                   else",
            applies: |_, deviation| deviation < -5.0,
        },
    ],
    example: &["86400 BTU/h", "80000 BTU/h"],
    references: &["Arithmetic; the 5 % of the warnings are common practice, and many makers ask for 2 %."],
    compute: |numbers| {
        let [input, plate_input] = each(numbers);
        not_negative(input, "the input", "time the dial again")?;
        positive(plate_input, "the plate's input")?;
        Ok(100.0 * (input - plate_input) / plate_input)
    },
};
