//! The speed at which a belt turns a fan, from its two pulleys.
//!
//! # Equation
//!
//! `fan_speed = motor_speed * motor_pulley / fan_pulley`
//!
//! # Arguments
//!
//! - `motor_speed`, rpm: of the motor under load: on its plate.
//! - `motor_pulley`, in: the pitch diameter of the pulley on the motor; an adjustable one, as it is set.
//! - `fan_pulley`, in: the pitch diameter of the pulley on the fan.
//!
//! # Range
//!
//! A belt that does not slip; a V-belt loses a per cent or two. Pitch diameters, where the belt runs: measured over the
//! rim a pulley is larger by a few tenths of an inch. A higher speed asks for more amps: see `fan_power_at_speed`.
//!
//! # Example
//!
//! Arithmetic: a motor of 1725 rpm with 3 in turns a pulley of 7 in at 739 rpm.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::fan_speed_from_pulleys::FORMULA;
//! let speed = formula.compute_typed(&["1725 rpm", "3 in", "7 in"])?;
//! assert_eq!(speed.number_in(formula.result).round(), 739.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - A belt runs as fast over one pulley as over the other: elementary mechanics.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "fan_speed_from_pulleys",
    group: Group::Air,
    sentence: "The speed at which a belt turns a fan, from its two pulleys.",
    equation: "fan_speed = motor_speed * motor_pulley / fan_pulley",
    arguments: &[
        Argument::new(
            "motor_speed",
            Scale::of(Unit::RevolutionPerMinute),
            "of the motor under load: on its plate",
        ),
        Argument::new(
            "motor_pulley",
            Scale::of(Unit::Inch),
            "the pitch diameter of the pulley on the motor; an adjustable one, as it is set",
        ),
        Argument::new(
            "fan_pulley",
            Scale::of(Unit::Inch),
            "the pitch diameter of the pulley on the fan",
        ),
    ],
    result: Scale::of(Unit::RevolutionPerMinute),
    range: "A belt that does not slip; a V-belt loses a per cent or two. Pitch diameters, where the belt runs: \
            measured over the rim a pulley is larger by a few tenths of an inch. A higher speed asks for more \
            amps: see `fan_power_at_speed`.",
    warnings: &[],
    example: &["1725 rpm", "3 in", "7 in"],
    references: &["A belt runs as fast over one pulley as over the other: elementary mechanics."],
    compute: |numbers| {
        let [motor_speed, motor_pulley, fan_pulley] = each(numbers);
        positive(motor_speed, "the motor's speed")?;
        positive(motor_pulley, "the motor's pulley")?;
        positive(fan_pulley, "the fan's pulley")?;
        Ok(motor_speed * motor_pulley / fan_pulley)
    },
};
