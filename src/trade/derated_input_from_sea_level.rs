//! The input by the rule of 4 % for each 1000 ft, counted from sea level.
//!
//! # Equation
//!
//! `derated_input = input * (1 - 0.04 * altitude / 1000)`, in BTU/h and ft.
//!
//! # Arguments
//!
//! - `input`, BTU/h: on the rating plate, for sea level.
//! - `altitude`, ft: above sea level.
//!
//! # Range
//!
//! From sea level to 10,000 ft, as far as the tables of the rule go. Two readings of the rule circulate: this one
//! counts from sea level, and codes apply it above 2000 ft only; `derated_input_above_2000_ft` counts what lies above
//! 2000 ft. They differ by 8 % of the plate. The rating plate and the authority say which holds, and many makers
//! print their own table.
//!
//! # Warnings
//!
//! - Where the altitude is 2000 ft or less: codes apply the rule above 2000 ft only; leave the input as the plate
//!   says unless the maker or the authority asks for less.
//!
//! # Example
//!
//! Arithmetic: 100,000 BTU/h at 5,000 ft become 80,000 BTU/h.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::derated_input_from_sea_level::FORMULA;
//! let input = formula.compute_typed(&["100000 BTU/h", "5000 ft"])?;
//! assert_eq!(input.number_in(formula.result).round(), 80_000.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - NFPA 54, National Fuel Gas Code, high altitude: 4 % for each 1000 ft above sea level, at elevations above 2000
//!   ft (section number not confirmed).

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;
use super::limits::within;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "derated_input_from_sea_level",
    group: Group::Gas,
    sentence: "The input by the rule of 4 % for each 1000 ft, counted from sea level.",
    equation: "derated_input = input * (1 - 0.04 * altitude / 1000)",
    arguments: &[
        Argument::new(
            "input",
            Scale::of(Unit::BtuPerHour),
            "on the rating plate, for sea level",
        ),
        Argument::new("altitude", Scale::of(Unit::Foot), "above sea level"),
    ],
    result: Scale::of(Unit::BtuPerHour),
    range: "From sea level to 10,000 ft, as far as the tables of the rule go. Two readings of the rule \
            circulate: this one counts from sea level, and codes apply it above 2000 ft only; \
            `derated_input_above_2000_ft` counts what lies above 2000 ft. They differ by 8 % of the plate. \
            The rating plate and the authority say which holds, and many makers print their own table.",
    warnings: &[Warning {
        when: "the altitude is 2000 ft or less",
        reason: "codes apply the rule above 2000 ft only",
        help: "leave the input as the plate says unless the maker or the authority asks for less",
        applies: |numbers, _| numbers[1] <= 2000.0,
    }],
    example: &["100000 BTU/h", "5000 ft"],
    references: &[
        "NFPA 54, National Fuel Gas Code, high altitude: 4 % for each 1000 ft above sea level, at \
         elevations above 2000 ft (section number not confirmed).",
    ],
    compute: |numbers| {
        let [input, altitude] = each(numbers);
        positive(input, "the plate's input")?;
        within(altitude, 0.0, 10_000.0, "the altitude", "ft")?;
        Ok(input * (1.0 - 0.04 * altitude / 1000.0))
    },
};
