//! The size of metal louver that gives a wanted free area, where its free share is not known.
//!
//! # Equation
//!
//! `area = free_area / 0.75`, in square inches.
//!
//! # Arguments
//!
//! - `free_area`, in²: the free area that is wanted.
//!
//! # Range
//!
//! Louvers and grilles of metal whose maker prints no free share: 75 % is taken as open. Screens are no finer than
//! 1/4 in. The local code and the maker's instructions govern.
//!
//! # Example
//!
//! Arithmetic: 30 in² free are 40 in² of metal louver.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::louver_area_metal::FORMULA;
//! let area = formula.compute_typed(&["30 in2"])?;
//! assert_eq!(area.number_in(formula.result).round(), 40.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 304.10, and NFPA 54, National Fuel Gas Code, in the same terms.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "louver_area_metal",
    group: Group::CombustionAir,
    sentence: "The size of metal louver that gives a wanted free area, where its free share is not known.",
    equation: "area = free_area / 0.75",
    arguments: &[Argument::new(
        "free_area",
        Scale::of(Unit::SquareInch),
        "the free area that is wanted",
    )],
    result: Scale::of(Unit::SquareInch),
    range: "Louvers and grilles of metal whose maker prints no free share: 75 % is taken as open. Screens \
            are no finer than 1/4 in. The local code and the maker's instructions govern.",
    warnings: &[],
    example: &["30 in2"],
    references: &[
        "International Fuel Gas Code, 304.10, and NFPA 54, National Fuel Gas Code, in the same terms.",
    ],
    compute: |numbers| {
        let [free_area] = each(numbers);
        positive(free_area, "the free area")?;
        Ok(free_area / 0.75)
    },
};
