//! The airflow of a fan at another speed.
//!
//! # Equation
//!
//! `new_airflow = airflow * new_speed / speed`, in CFM and rpm.
//!
//! # Arguments
//!
//! - `airflow`, CFM: the airflow as measured.
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
//! Arithmetic: 1,000 CFM at 1,000 rpm become 1,100 CFM at 1,100 rpm.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::fan_airflow_at_speed::FORMULA;
//! let airflow = formula.compute_typed(&["1000 CFM", "1000 rpm", "1100 rpm"])?;
//! assert_eq!(airflow.number_in(formula.result).round(), 1_100.0);
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
    name: "fan_airflow_at_speed",
    group: Group::Air,
    sentence: "The airflow of a fan at another speed.",
    equation: "new_airflow = airflow * new_speed / speed",
    arguments: &[
        Argument::new(
            "airflow",
            Scale::of(Unit::CubicFootPerMinute),
            "the airflow as measured",
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
    result: Scale::of(Unit::CubicFootPerMinute),
    range: "The same fan, duct and air. A motor that holds its airflow by itself does not follow the fan \
            laws, and no fan follows them across a stall; between half and twice the speed they are good to \
            a few per cent.",
    warnings: &[doubts::STRETCHED_BY_SPEED],
    example: &["1000 CFM", "1000 rpm", "1100 rpm"],
    references: &["The fan laws: elementary fluid mechanics."],
    compute: |numbers| {
        let [airflow, speed, new_speed] = each(numbers);
        positive(airflow, "the airflow")?;
        Ok(airflow * ratio(new_speed, speed)?)
    },
};
