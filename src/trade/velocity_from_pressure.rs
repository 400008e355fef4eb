//! How fast air moves, from its velocity pressure.
//!
//! # Equation
//!
//! `velocity = 1096.7 * sqrt(velocity_pressure / density)`, in ft/min, in.w.c. and lb/ft³.
//!
//! # Arguments
//!
//! - `velocity_pressure`, in.w.c.: total less static pressure, as a Pitot tube shows it.
//! - `altitude`, ft: above sea level.
//! - `temperature`, °F: of the air at the tube.
//!
//! # Range
//!
//! A Pitot tube that faces the stream, away from turns. At one place; the mean of a section is that of the velocities,
//! not of the pressures. For standard air it is 4005 times the root. Altitude and temperature as for `air_density`.
//!
//! # Warnings
//!
//! - Where less than 0.02 in.w.c. is shown: hardly a gauge reads so little well; take a hot-wire or vane anemometer.
//!
//! # Example
//!
//! Computed: 0.04 in.w.c. of air at 70 °F at sea level.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::velocity_from_pressure::FORMULA;
//! let velocity = formula.compute_typed(&["0.04 in.w.c.", "0 ft", "70 °F"])?;
//! assert_eq!((velocity.number_in(formula.result) / 10.0).round(), 80.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Bernoulli's law: elementary fluid mechanics.
//! - ASHRAE Handbook, Fundamentals, chapter Measurement and Instruments: 1096.7, and 4005 for standard air (memory).

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::atmosphere::density;
use super::formula::{Formula, each, not_negative};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "velocity_from_pressure",
    group: Group::Air,
    sentence: "How fast air moves, from its velocity pressure.",
    equation: "velocity = 1096.7 * sqrt(velocity_pressure / density)",
    arguments: &[
        Argument::new(
            "velocity_pressure",
            Scale::of(Unit::InchWaterColumn),
            "total less static pressure, as a Pitot tube shows it",
        ),
        Argument::new("altitude", Scale::of(Unit::Foot), "above sea level"),
        Argument::new(
            "temperature",
            Scale::of(Unit::DegreeFahrenheit),
            "of the air at the tube",
        ),
    ],
    result: Scale::of(Unit::FootPerMinute),
    range: "A Pitot tube that faces the stream, away from turns. At one place; the mean of a section is that \
            of the velocities, not of the pressures. For standard air it is 4005 times the root. Altitude and \
            temperature as for `air_density`.",
    warnings: &[Warning {
        when: "less than 0.02 in.w.c. is shown",
        reason: "hardly a gauge reads so little well",
        help: "take a hot-wire or vane anemometer",
        applies: |numbers, _| numbers[0] < 0.02,
    }],
    example: &["0.04 in.w.c.", "0 ft", "70 °F"],
    references: &[
        "Bernoulli's law: elementary fluid mechanics.",
        "ASHRAE Handbook, Fundamentals, chapter Measurement and Instruments: 1096.7, and 4005 for standard \
         air (memory).",
    ],
    compute: |numbers| {
        let [velocity_pressure, altitude, temperature] = each(numbers);
        not_negative(
            velocity_pressure,
            "the velocity pressure",
            "swap the hoses, or turn the tube into the stream, and take it again",
        )?;
        Ok(1096.7 * (velocity_pressure / density(altitude, temperature)?).sqrt())
    },
};
