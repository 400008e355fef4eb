//! The free area of each of two openings to the outdoors by horizontal ducts.
//!
//! # Equation
//!
//! `area = input / 2000`, in square inches and BTU/h.
//!
//! # Arguments
//!
//! - `input`, BTU/h: of all fuel-burning appliances in the space together.
//!
//! # Range
//!
//! Two openings, one within 12 in of the top and one within 12 in of the bottom, none narrower than 3 in; ducts as
//! large as the openings all the way. Free area, not the hole in the wall: see `louver_area`. The local code and the
//! maker's instructions govern.
//!
//! # Example
//!
//! Arithmetic: 100,000 BTU/h want 50 in² each.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::opening_outdoors_horizontal::FORMULA;
//! let area = formula.compute_typed(&["100000 BTU/h"])?;
//! assert_eq!(area.number_in(formula.result).round(), 50.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 304.6.1, and NFPA 54, National Fuel Gas Code, in the same terms.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "opening_outdoors_horizontal",
    group: Group::CombustionAir,
    sentence: "The free area of each of two openings to the outdoors by horizontal ducts.",
    equation: "area = input / 2000",
    arguments: &[Argument::new(
        "input",
        Scale::of(Unit::BtuPerHour),
        "of all fuel-burning appliances in the space together",
    )],
    result: Scale::of(Unit::SquareInch),
    range: "Two openings, one within 12 in of the top and one within 12 in of the bottom, none narrower \
            than 3 in; ducts as large as the openings all the way. Free area, not the hole in the wall: see \
            `louver_area`. The local code and the maker's instructions govern.",
    warnings: &[],
    example: &["100000 BTU/h"],
    references: &[
        "International Fuel Gas Code, 304.6.1, and NFPA 54, National Fuel Gas Code, in the same terms.",
    ],
    compute: |numbers| {
        let [input] = each(numbers);
        positive(input, "the input")?;
        Ok(input / 2000.0)
    },
};
