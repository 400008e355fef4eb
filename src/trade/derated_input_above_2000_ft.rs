//! The input by the rule of 4 % for each 1000 ft, counted from 2000 ft.
//!
//! # Equation
//!
//! `derated_input = input * (1 - 0.04 * max(altitude - 2000, 0) / 1000)`, in BTU/h and ft.
//!
//! # Arguments
//!
//! - `input`, BTU/h: on the rating plate, for sea level.
//! - `altitude`, ft: above sea level.
//!
//! # Range
//!
//! From sea level to 10,000 ft. Two readings of the rule circulate: this one counts what lies above 2000 ft, as many
//! makers' instructions do; `derated_input_from_sea_level` counts from sea level. They differ by 8 % of the plate.
//! The rating plate and the authority say which holds, and many makers print their own table.
//!
//! # Warnings
//!
//! - Where the altitude is above 2000 ft: by the other reading of the rule the input is 8 % of the plate lower; ask
//!   the authority, and read the plate and the maker's table.
//!
//! # Example
//!
//! Arithmetic: 100,000 BTU/h at 5,000 ft become 88,000 BTU/h.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::derated_input_above_2000_ft::FORMULA;
//! let input = formula.compute_typed(&["100000 BTU/h", "5000 ft"])?;
//! assert_eq!(input.number_in(formula.result).round(), 88_000.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Makers' instructions: 4 % for each 1000 ft above 2000 ft (common practice).

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;
use super::limits::within;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "derated_input_above_2000_ft",
    group: Group::Gas,
    sentence: "The input by the rule of 4 % for each 1000 ft, counted from 2000 ft.",
    equation: "derated_input = input * (1 - 0.04 * max(altitude - 2000, 0) / 1000)",
    arguments: &[
        Argument::new(
            "input",
            Scale::of(Unit::BtuPerHour),
            "on the rating plate, for sea level",
        ),
        Argument::new("altitude", Scale::of(Unit::Foot), "above sea level"),
    ],
    result: Scale::of(Unit::BtuPerHour),
    range: "From sea level to 10,000 ft. Two readings of the rule circulate: this one counts what lies \
            above 2000 ft, as many makers' instructions do; `derated_input_from_sea_level` counts from sea \
            level. They differ by 8 % of the plate. The rating plate and the authority say which holds, and \
            many makers print their own table.",
    warnings: &[Warning {
        when: "the altitude is above 2000 ft",
        reason: "by the other reading of the rule the input is 8 % of the plate lower",
        help: "ask the authority, and read the plate and the maker's table",
        applies: |numbers, _| numbers[1] > 2000.0,
    }],
    example: &["100000 BTU/h", "5000 ft"],
    references: &["Makers' instructions: 4 % for each 1000 ft above 2000 ft (common practice)."],
    compute: |numbers| {
        let [input, altitude] = each(numbers);
        positive(input, "the plate's input")?;
        within(altitude, 0.0, 10_000.0, "the altitude", "ft")?;
        Ok(input * (1.0 - 0.04 * (altitude - 2000.0).max(0.0) / 1000.0))
    },
};
