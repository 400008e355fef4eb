//! The size of louver or grille that gives a wanted free area, where its free share is known.
//!
//! # Equation
//!
//! `area = 100 * free_area / free_share`, in square inches and per cent.
//!
//! # Arguments
//!
//! - `free_area`, in²: the free area that is wanted.
//! - `free_share`, %: how much of its face is open, as its maker prints it.
//!
//! # Range
//!
//! A share above 0 and up to 100 %. Screens are no finer than 1/4 in. The local code and the maker's instructions
//! govern.
//!
//! # Example
//!
//! Arithmetic: 30 in² free at 60 % are 50 in² of louver.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::louver_area::FORMULA;
//! let area = formula.compute_typed(&["30 in2", "60 %"])?;
//! assert_eq!(area.number_in(formula.result).round(), 50.0);
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
use super::limits::within;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "louver_area",
    group: Group::CombustionAir,
    sentence: "The size of louver or grille that gives a wanted free area, where its free share is known.",
    equation: "area = 100 * free_area / free_share",
    arguments: &[
        Argument::new(
            "free_area",
            Scale::of(Unit::SquareInch),
            "the free area that is wanted",
        ),
        Argument::new(
            "free_share",
            Scale::of(Unit::Percent),
            "how much of its face is open, as its maker prints it",
        ),
    ],
    result: Scale::of(Unit::SquareInch),
    range: "A share above 0 and up to 100 %. Screens are no finer than 1/4 in. The local code and the \
            maker's instructions govern.",
    warnings: &[],
    example: &["30 in2", "60 %"],
    references: &[
        "International Fuel Gas Code, 304.10, and NFPA 54, National Fuel Gas Code, in the same terms.",
    ],
    compute: |numbers| {
        let [free_area, free_share] = each(numbers);
        positive(free_area, "the free area")?;
        positive(free_share, "the free share")?;
        within(free_share, 0.0, 100.0, "the free share", "%")?;
        Ok(100.0 * free_area / free_share)
    },
};
