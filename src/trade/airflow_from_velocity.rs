//! The airflow through a duct or a grille, from how fast the air moves there.
//!
//! # Equation
//!
//! `airflow = velocity * area / 144`
//!
//! # Arguments
//!
//! - `velocity`, ft/min: the mean over the whole section, of many readings.
//! - `area`, in²: of the section, inside; of a grille, its free area.
//!
//! # Range
//!
//! The mean of a traverse: in a duct at 16 places and more, on a straight run well away from turns. The middle of a duct
//! is faster than the mean, by a tenth or more. At a grille the makers' factors govern.
//!
//! # Warnings
//!
//! - Where the air is faster than 2000 ft/min: no duct of a house has so much (common practice); look at the unit and at
//!   the area.
//!
//! # Example
//!
//! Arithmetic: 700 ft/min through a duct of 20 in by 8 in.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::airflow_from_velocity::FORMULA;
//! let airflow = formula.compute_typed(&["700 ft/min", "160 in2"])?;
//! assert_eq!(airflow.number_in(formula.result).round(), 778.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The definition of a mean velocity; a square foot is 144 square inches.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "airflow_from_velocity",
    group: Group::Air,
    sentence: "The airflow through a duct or a grille, from how fast the air moves there.",
    equation: "airflow = velocity * area / 144",
    arguments: &[
        Argument::new(
            "velocity",
            Scale::of(Unit::FootPerMinute),
            "the mean over the whole section, of many readings",
        ),
        Argument::new(
            "area",
            Scale::of(Unit::SquareInch),
            "of the section, inside; of a grille, its free area",
        ),
    ],
    result: Scale::of(Unit::CubicFootPerMinute),
    range: "The mean of a traverse: in a duct at 16 places and more, on a straight run well away from turns. \
            The middle of a duct is faster than the mean, by a tenth or more. At a grille the makers' factors \
            govern.",
    warnings: &[Warning {
        when: "the air is faster than 2000 ft/min",
        reason: "no duct of a house has so much (common practice)",
        help: "look at the unit and at the area",
        applies: |numbers, _| numbers[0] > 2000.0,
    }],
    example: &["700 ft/min", "160 in2"],
    references: &["The definition of a mean velocity; a square foot is 144 square inches."],
    compute: |numbers| {
        let [velocity, area] = each(numbers);
        not_negative(
            velocity,
            "the velocity",
            "turn the probe round, and take the velocity again",
        )?;
        positive(area, "the area")?;
        Ok(velocity * area / 144.0)
    },
};
