//! The numbered drill whose hole is nearest to a diameter.
//!
//! # Equation
//!
//! `drill = the number whose diameter lies nearest`
//!
//! # Arguments
//!
//! - `diameter`, in: of the hole, as measured with a pin or a drill's shank.
//!
//! # Range
//!
//! Diameters from drill 80 (0.0135 in) to drill 1 (0.2280 in), give or take 2 %; of two as near, the smaller hole. Never
//! open an orifice with a drill to find its size: only the maker's parts go into a burner.
//!
//! # Warnings
//!
//! - Where the drill's hole passes more than 3 % more or less gas: the hole is of no number size; look for a letter, a
//!   fraction of an inch or a metric size, and whether the hole is worn.
//!
//! # Example
//!
//! Table: 0.089 in is drill 43.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::drill_for_diameter::FORMULA;
//! let drill = formula.compute_typed(&["0.089 in"])?;
//! assert_eq!(drill.number_in(formula.result), 43.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - ASME B94.11M, twist drills: the number sizes, as machinists' tables print them.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::drills;
use super::formula::{Formula, each};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "drill_for_diameter",
    group: Group::Gas,
    sentence: "The numbered drill whose hole is nearest to a diameter.",
    equation: "drill = the number whose diameter lies nearest",
    arguments: &[Argument::new(
        "diameter",
        Scale::of(Unit::Inch),
        "of the hole, as measured with a pin or a drill's shank",
    )
    .drilled()],
    result: Scale::of(Unit::Number),
    range: "Diameters from drill 80 (0.0135 in) to drill 1 (0.2280 in), give or take 2 %; of two as near, the \
            smaller hole. Never open an orifice with a drill to find its size: only the maker's parts go into \
            a burner.",
    warnings: &[Warning {
        when: "the drill's hole passes more than 3 % more or less gas",
        reason: "the hole is of no number size",
        help: "look for a letter, a fraction of an inch or a metric size, and whether the hole is worn",
        applies: |numbers, drill| {
            drills::diameter(drill).is_ok_and(|nearest| ((nearest / numbers[0]).powi(2) - 1.0).abs() > 0.03)
        },
    }],
    example: &["0.089 in"],
    references: &["ASME B94.11M, twist drills: the number sizes, as machinists' tables print them."],
    compute: |numbers| {
        let [diameter] = each(numbers);
        drills::nearest(diameter)
    },
};
