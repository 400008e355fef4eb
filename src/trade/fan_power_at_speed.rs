//! The power a fan takes at its shaft at another speed.
//!
//! # Equation
//!
//! `new_power = power * (new_speed / speed)^3`, in W and rpm.
//!
//! # Arguments
//!
//! - `power`, W: the power at the shaft; as a rough guide, that into the motor.
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
//! - Where the new speed is the higher one: the power grows with the cube of the speed; see that the amps stay within
//!   the motor's plate.
//!
//! # Example
//!
//! Arithmetic: 400 W at 1,000 rpm become 532 W at 1,100 rpm.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::fan_power_at_speed::FORMULA;
//! let power = formula.compute_typed(&["400 W", "1000 rpm", "1100 rpm"])?;
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
    name: "fan_power_at_speed",
    group: Group::Air,
    sentence: "The power a fan takes at its shaft at another speed.",
    equation: "new_power = power * (new_speed / speed)^3",
    arguments: &[
        Argument::new(
            "power",
            Scale::of(Unit::Watt),
            "the power at the shaft; as a rough guide, that into the motor",
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
    result: Scale::of(Unit::Watt),
    range: "The same fan, duct and air. A motor that holds its airflow by itself does not follow the fan \
            laws, and no fan follows them across a stall; between half and twice the speed they are good to \
            a few per cent.",
    warnings: &[
        doubts::STRETCHED_BY_SPEED,
        Warning {
            when: "the new speed is the higher one",
            reason: "the power grows with the cube of the speed",
            help: "see that the amps stay within the motor's plate",
            applies: |numbers, _| numbers[2] > numbers[1],
        },
    ],
    example: &["400 W", "1000 rpm", "1100 rpm"],
    references: &["The fan laws: elementary fluid mechanics."],
    compute: |numbers| {
        let [power, speed, new_speed] = each(numbers);
        positive(power, "the power")?;
        Ok(power * ratio(new_speed, speed)?.powi(3))
    },
};
