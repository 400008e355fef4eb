//! The input that thinner air and gas leave, with orifices and manifold pressure untouched.
//!
//! # Equation
//!
//! `input_at_altitude = input * sqrt(barometer / 14.696)`, in BTU/h and psia; the barometer is that of the standard
//! atmosphere, see `air_density`.
//!
//! # Arguments
//!
//! - `input`, BTU/h: on the rating plate, for sea level.
//! - `altitude`, ft: above sea level.
//!
//! # Range
//!
//! The same orifices, the same gas by mass and the same manifold pressure above the air around it. It is physics, not
//! a rule: air falls with the pressure, the gas only with its root, and so codes ask for more than this. The rating
//! plate and the authority say how much. Altitude as for `air_density`.
//!
//! # Warnings
//!
//! - Where the altitude is above 2000 ft: the air for the flame falls faster than the gas; derate as the plate, the
//!   maker and the authority say.
//!
//! # Example
//!
//! Arithmetic: 100,000 BTU/h at 5,000 ft become 91,200 BTU/h; the air is down to 83 %.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::input_at_altitude::FORMULA;
//! let input = formula.compute_typed(&["100000 BTU/h", "5000 ft"])?;
//! assert_eq!((input.number_in(formula.result) / 100.0).round(), 912.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The square-root law of flow through an orifice, with the gas law.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::atmosphere::{SEA_LEVEL, pressure};
use super::formula::{Formula, each, positive};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "input_at_altitude",
    group: Group::Gas,
    sentence: "The input that thinner air and gas leave, with orifices and manifold pressure untouched.",
    equation: "input_at_altitude = input * sqrt(barometer / 14.696)",
    arguments: &[
        Argument::new(
            "input",
            Scale::of(Unit::BtuPerHour),
            "on the rating plate, for sea level",
        ),
        Argument::new("altitude", Scale::of(Unit::Foot), "above sea level"),
    ],
    result: Scale::of(Unit::BtuPerHour),
    range: "The same orifices, the same gas by mass and the same manifold pressure above the air around it. \
            It is physics, not a rule: air falls with the pressure, the gas only with its root, and so \
            codes ask for more than this. The rating plate and the authority say how much. Altitude as for \
            `air_density`.",
    warnings: &[Warning {
        when: "the altitude is above 2000 ft",
        reason: "the air for the flame falls faster than the gas",
        help: "derate as the plate, the maker and the authority say",
        applies: |numbers, _| numbers[1] > 2000.0,
    }],
    example: &["100000 BTU/h", "5000 ft"],
    references: &["The square-root law of flow through an orifice, with the gas law."],
    compute: |numbers| {
        let [input, altitude] = each(numbers);
        positive(input, "the plate's input")?;
        Ok(input * (pressure(altitude)? / SEA_LEVEL).sqrt())
    },
};
