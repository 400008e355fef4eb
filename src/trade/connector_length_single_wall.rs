//! The longest horizontal connector of single-wall pipe, by the height of its vent.
//!
//! # Equation
//!
//! `length = 0.75 * height`, in ft.
//!
//! # Arguments
//!
//! - `height`, ft: of the vertical part of the chimney or vent.
//!
//! # Range
//!
//! One natural-draft appliance on a chimney or vent that is not sized by the vent tables, which have their own
//! limits. The local code and the maker's instructions govern.
//!
//! # Example
//!
//! Arithmetic: a vent of 20 ft, 15 ft.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::connector_length_single_wall::FORMULA;
//! let length = formula.compute_typed(&["20 ft"])?;
//! assert_eq!(length.number_in(formula.result).round(), 15.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 503.10.9, and NFPA 54: 75 % of the height (section numbers from memory).

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "connector_length_single_wall",
    group: Group::Venting,
    sentence: "The longest horizontal connector of single-wall pipe, by the height of its vent.",
    equation: "length = 0.75 * height",
    arguments: &[Argument::new(
        "height",
        Scale::of(Unit::Foot),
        "of the vertical part of the chimney or vent",
    )],
    result: Scale::of(Unit::Foot),
    range: "One natural-draft appliance on a chimney or vent that is not sized by the vent tables, which \
            have their own limits. The local code and the maker's instructions govern.",
    warnings: &[],
    example: &["20 ft"],
    references: &[
        "International Fuel Gas Code, 503.10.9, and NFPA 54: 75 % of the height (section numbers from \
         memory).",
    ],
    compute: |numbers| {
        let [height] = each(numbers);
        positive(height, "the height")?;
        Ok(0.75 * height)
    },
};
