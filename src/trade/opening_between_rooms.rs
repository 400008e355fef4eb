//! The free area of each of the two openings that join rooms on one storey.
//!
//! # Equation
//!
//! `area = max(input / 1000, 100)`, in square inches and BTU/h.
//!
//! # Arguments
//!
//! - `input`, BTU/h: of all fuel-burning appliances in the space together.
//!
//! # Range
//!
//! Two openings, one within 12 in of the top and one within 12 in of the bottom, none narrower than 3 in, into rooms
//! that together are large enough. Free area, not the hole in the wall: see `louver_area`. The local code and the
//! maker's instructions govern.
//!
//! # Example
//!
//! Published: 150,000 BTU/h want 150 in² each, and 80,000 BTU/h still 100 in² each.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::opening_between_rooms::FORMULA;
//! let area = formula.compute_typed(&["150000 BTU/h"])?;
//! assert_eq!(area.number_in(formula.result).round(), 150.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 304.5.3.1, and NFPA 54, National Fuel Gas Code, in the same terms.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "opening_between_rooms",
    group: Group::CombustionAir,
    sentence: "The free area of each of the two openings that join rooms on one storey.",
    equation: "area = max(input / 1000, 100)",
    arguments: &[Argument::new(
        "input",
        Scale::of(Unit::BtuPerHour),
        "of all fuel-burning appliances in the space together",
    )],
    result: Scale::of(Unit::SquareInch),
    range: "Two openings, one within 12 in of the top and one within 12 in of the bottom, none narrower \
            than 3 in, into rooms that together are large enough. Free area, not the hole in the wall: see \
            `louver_area`. The local code and the maker's instructions govern.",
    warnings: &[],
    example: &["150000 BTU/h"],
    references: &[
        "International Fuel Gas Code, 304.5.3.1, and NFPA 54, National Fuel Gas Code, in the same terms.",
    ],
    compute: |numbers| {
        let [input] = each(numbers);
        positive(input, "the input")?;
        Ok((input / 1000.0).max(100.0))
    },
};
