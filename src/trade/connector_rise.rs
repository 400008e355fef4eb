//! How much a vent connector must rise toward its vent.
//!
//! # Equation
//!
//! `rise = 0.25 * length`, in inches and ft.
//!
//! # Arguments
//!
//! - `length`, ft: of the connector, horizontally.
//!
//! # Range
//!
//! Natural-draft connectors, without dips or sags. A condensing furnace's vent slopes the other way, back to the
//! furnace, as its maker says. The local code and the maker's instructions govern.
//!
//! # Example
//!
//! Arithmetic: 12 ft of connector rise by 3 in.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::connector_rise::FORMULA;
//! let rise = formula.compute_typed(&["12 ft"])?;
//! assert_eq!(rise.number_in(formula.result).round(), 3.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 503.10.8, and NFPA 54: 1/4 in for each foot (section numbers from memory).

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "connector_rise",
    group: Group::Venting,
    sentence: "How much a vent connector must rise toward its vent.",
    equation: "rise = 0.25 * length",
    arguments: &[Argument::new(
        "length",
        Scale::of(Unit::Foot),
        "of the connector, horizontally",
    )],
    result: Scale::of(Unit::Inch),
    range: "Natural-draft connectors, without dips or sags. A condensing furnace's vent slopes the other \
            way, back to the furnace, as its maker says. The local code and the maker's instructions \
            govern.",
    warnings: &[],
    example: &["12 ft"],
    references: &[
        "International Fuel Gas Code, 503.10.8, and NFPA 54: 1/4 in for each foot (section numbers from \
         memory).",
    ],
    compute: |numbers| {
        let [length] = each(numbers);
        positive(length, "the length")?;
        Ok(0.25 * length)
    },
};
