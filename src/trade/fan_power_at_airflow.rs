//! The power a fan takes at its shaft when its speed is changed for another airflow.
//!
//! # Equation
//!
//! `new_power = power * (new_airflow / airflow)^3`, in W and CFM.
//!
//! # Arguments
//!
//! - `power`, W: the power at the shaft; as a rough guide, that into the motor.
//! - `airflow`, CFM: the airflow at which that was measured.
//! - `new_airflow`, CFM: the airflow in question.
//!
//! # Range
//!
//! The same fan, duct and air. A motor that holds its airflow by itself does not follow the fan laws, and no fan
//! follows them across a stall; between half and twice the speed they are good to a few per cent.
//!
//! # Warnings
//!
//! - Where the new airflow is below half or above twice the old: the fan laws are stretched; measure at the new
//!   airflow.
//! - Where the new airflow is the higher one: the power grows with the cube of the airflow; see that the amps stay
//!   within the motor's plate.
//!
//! # Example
//!
//! Arithmetic: 400 W at 1,000 CFM become 532 W at 1,100 CFM.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::fan_power_at_airflow::FORMULA;
//! let power = formula.compute_typed(&["400 W", "1000 CFM", "1100 CFM"])?;
//! assert_eq!(power.number_in(formula.result).round(), 532.0);
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
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "fan_power_at_airflow",
    group: Group::Air,
    sentence: "The power a fan takes at its shaft when its speed is changed for another airflow.",
    equation: "new_power = power * (new_airflow / airflow)^3",
    arguments: &[
        Argument::new(
            "power",
            Scale::of(Unit::Watt),
            "the power at the shaft; as a rough guide, that into the motor",
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
    result: Scale::of(Unit::Watt),
    range: "The same fan, duct and air. A motor that holds its airflow by itself does not follow the fan \
            laws, and no fan follows them across a stall; between half and twice the speed they are good to \
            a few per cent.",
    warnings: &[
        doubts::STRETCHED_BY_AIRFLOW,
        Warning {
            when: "the new airflow is the higher one",
            reason: "the power grows with the cube of the airflow",
            help: "see that the amps stay within the motor's plate",
            applies: |numbers, _| numbers[2] > numbers[1],
        },
    ],
    example: &["400 W", "1000 CFM", "1100 CFM"],
    references: &["The fan laws: elementary fluid mechanics."],
    compute: |numbers| {
        let [power, airflow, new_airflow] = each(numbers);
        positive(power, "the power")?;
        Ok(power * ratio(new_airflow, airflow)?.powi(3))
    },
};
