//! The longest horizontal connector of a draft-hood or fan-assisted appliance, by its diameter.
//!
//! # Equation
//!
//! `length = 1.5 * diameter`, in ft and in.
//!
//! # Arguments
//!
//! - `diameter`, in: of the connector.
//!
//! # Range
//!
//! Natural-draft vents that serve more than one appliance, connectors from 3 to 24 in across. A longer one is allowed
//! where the vent tables are used with a tenth off for each further such length. The local code and the maker's
//! instructions govern.
//!
//! # Example
//!
//! Published: a 4 in connector, 6 ft.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::connector_length_by_diameter::FORMULA;
//! let length = formula.compute_typed(&["4 in"])?;
//! assert_eq!(length.number_in(formula.result).round(), 6.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 504.3.2 and 504.3.3.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each};
use super::group::Group;
use super::limits::within;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "connector_length_by_diameter",
    group: Group::Venting,
    sentence: "The longest horizontal connector of a draft-hood or fan-assisted appliance, by its diameter.",
    equation: "length = 1.5 * diameter",
    arguments: &[Argument::new(
        "diameter",
        Scale::of(Unit::Inch),
        "of the connector",
    )],
    result: Scale::of(Unit::Foot),
    range: "Natural-draft vents that serve more than one appliance, connectors from 3 to 24 in across. A \
            longer one is allowed where the vent tables are used with a tenth off for each further such \
            length. The local code and the maker's instructions govern.",
    warnings: &[],
    example: &["4 in"],
    references: &["International Fuel Gas Code, 504.3.2 and 504.3.3."],
    compute: |numbers| {
        let [diameter] = each(numbers);
        within(diameter, 3.0, 24.0, "the diameter", "in")?;
        Ok(1.5 * diameter)
    },
};
