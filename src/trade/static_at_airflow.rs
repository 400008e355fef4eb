//! The static pressure that the same ducts take at another airflow.
//!
//! # Equation
//!
//! `new_static = static * (new_airflow / airflow)^2`, in in.w.c. and CFM.
//!
//! # Arguments
//!
//! - `static`, in.w.c.: the static pressure as measured.
//! - `airflow`, CFM: the airflow at which that was measured.
//! - `new_airflow`, CFM: the airflow in question.
//!
//! # Range
//!
//! The same ducts, filter, coil and dampers, and air in turbulent flow: a clean filter alone follows a lower power.
//! Good to a few per cent between half and twice the airflow.
//!
//! # Warnings
//!
//! - Where the new airflow is below half or above twice the old: the fan laws are stretched; measure at the new
//!   airflow.
//!
//! # Example
//!
//! Arithmetic: 0.50 in.w.c. at 1,000 CFM become 0.605 in.w.c. at 1,100 CFM.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::static_at_airflow::FORMULA;
//! let pressure = formula.compute_typed(&["0.50 in.w.c.", "1000 CFM", "1100 CFM"])?;
//! assert_eq!((pressure.number_in(formula.result) * 1e3).round(), 605.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The square law of turbulent flow: elementary fluid mechanics.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::doubts;
use super::fan::ratio;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "static_at_airflow",
    group: Group::Air,
    sentence: "The static pressure that the same ducts take at another airflow.",
    equation: "new_static = static * (new_airflow / airflow)^2",
    arguments: &[
        Argument::new(
            "static",
            Scale::of(Unit::InchWaterColumn),
            "the static pressure as measured",
        ),
        Argument::new(
            "airflow",
            Scale::of(Unit::CubicFootPerMinute),
            "the airflow at which that was measured",
        ),
        Argument::new(
            "new_airflow",
            Scale::of(Unit::CubicFootPerMinute),
            "the airflow in question",
        ),
    ],
    result: Scale::of(Unit::InchWaterColumn),
    range: "The same ducts, filter, coil and dampers, and air in turbulent flow: a clean filter alone \
            follows a lower power. Good to a few per cent between half and twice the airflow.",
    warnings: &[doubts::STRETCHED_BY_AIRFLOW],
    example: &["0.50 in.w.c.", "1000 CFM", "1100 CFM"],
    references: &["The square law of turbulent flow: elementary fluid mechanics."],
    compute: |numbers| {
        let [pressure, airflow, new_airflow] = each(numbers);
        positive(pressure, "the static pressure")?;
        Ok(pressure * ratio(new_airflow, airflow)?.powi(2))
    },
};
