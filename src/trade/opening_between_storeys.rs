//! The free area of the openings that join rooms on different storeys.
//!
//! # Equation
//!
//! `area = 2 * input / 1000`, in square inches and BTU/h.
//!
//! # Arguments
//!
//! - `input`, BTU/h: of all fuel-burning appliances in the space together.
//!
//! # Range
//!
//! One or more openings in doors or floors, all together; into rooms that together are large enough. Free area, not
//! the hole in the wall: see `louver_area`. The local code and the maker's instructions govern.
//!
//! # Example
//!
//! Arithmetic: 100,000 BTU/h want 200 in².
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::opening_between_storeys::FORMULA;
//! let area = formula.compute_typed(&["100000 BTU/h"])?;
//! assert_eq!(area.number_in(formula.result).round(), 200.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 304.5.3.2, and NFPA 54, National Fuel Gas Code, in the same terms.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "opening_between_storeys",
    group: Group::CombustionAir,
    sentence: "The free area of the openings that join rooms on different storeys.",
    equation: "area = 2 * input / 1000",
    arguments: &[Argument::new(
        "input",
        Scale::of(Unit::BtuPerHour),
        "of all fuel-burning appliances in the space together",
    )],
    result: Scale::of(Unit::SquareInch),
    range: "One or more openings in doors or floors, all together; into rooms that together are large \
            enough. Free area, not the hole in the wall: see `louver_area`. The local code and the maker's \
            instructions govern.",
    warnings: &[],
    example: &["100000 BTU/h"],
    references: &[
        "International Fuel Gas Code, 304.5.3.2, and NFPA 54, National Fuel Gas Code, in the same terms.",
    ],
    compute: |numbers| {
        let [input] = each(numbers);
        positive(input, "the input")?;
        Ok(2.0 * input / 1000.0)
    },
};
