//! The pressure a fan makes, static or total, at another speed in the same ducts.
//!
//! # Equation
//!
//! `new_pressure = pressure * (new_speed / speed)^2`, in in.w.c. and rpm.
//!
//! # Arguments
//!
//! - `pressure`, in.w.c.: the pressure as measured.
//! - `speed`, rpm: the speed at which that was measured.
//! - `new_speed`, rpm: the speed in question.
//!
//! # Range
//!
//! The same fan, duct and air. A motor that holds its airflow by itself does not follow the fan laws, and no fan
//! follows them across a stall; between half and twice the speed they are good to a few per cent.
//!
//! # Warnings
//!
//! - Where the new speed is below half or above twice the old: the fan laws are stretched; measure at the new speed.
//!
//! # Example
//!
//! Arithmetic: 0.50 in.w.c. at 1,000 rpm become 0.605 in.w.c. at 1,100 rpm.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::fan_pressure_at_speed::FORMULA;
//! let pressure = formula.compute_typed(&["0.50 in.w.c.", "1000 rpm", "1100 rpm"])?;
//! assert_eq!((pressure.number_in(formula.result) * 1e3).round(), 605.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The fan laws: elementary fluid mechanics.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::doubts;
use super::fan::ratio;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "fan_pressure_at_speed",
    group: Group::Air,
    sentence: "The pressure a fan makes, static or total, at another speed in the same ducts.",
    equation: "new_pressure = pressure * (new_speed / speed)^2",
    arguments: &[
        Argument::new(
            "pressure",
            Scale::of(Unit::InchWaterColumn),
            "the pressure as measured",
        ),
        Argument::new(
            "speed",
            Scale::of(Unit::RevolutionPerMinute),
            "the speed at which that was measured",
        ),
        Argument::new(
            "new_speed",
            Scale::of(Unit::RevolutionPerMinute),
            "the speed in question",
        ),
    ],
    result: Scale::of(Unit::InchWaterColumn),
    range: "The same fan, duct and air. A motor that holds its airflow by itself does not follow the fan \
            laws, and no fan follows them across a stall; between half and twice the speed they are good to \
            a few per cent.",
    warnings: &[doubts::STRETCHED_BY_SPEED],
    example: &["0.50 in.w.c.", "1000 rpm", "1100 rpm"],
    references: &["The fan laws: elementary fluid mechanics."],
    compute: |numbers| {
        let [pressure, speed, new_speed] = each(numbers);
        positive(pressure, "the pressure")?;
        Ok(pressure * ratio(new_speed, speed)?.powi(2))
    },
};
