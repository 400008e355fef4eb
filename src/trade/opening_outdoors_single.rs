//! The free area of a single opening to the outdoors.
//!
//! # Equation
//!
//! `area = max(input / 3000, connector_area)`, in square inches and BTU/h.
//!
//! # Arguments
//!
//! - `input`, BTU/h: of all fuel-burning appliances in the space together.
//! - `connector_area`, in²: of all vent connectors in the space together; 0 where there is none.
//!
//! # Range
//!
//! One opening within 12 in of the top, not narrower than 3 in, to the outdoors straight or by a vertical or
//! horizontal duct; clearances of 1 in at the sides and back and 6 in at the front of the appliance. Free area, not
//! the hole in the wall: see `louver_area`. The local code and the maker's instructions govern.
//!
//! # Example
//!
//! Arithmetic: 100,000 BTU/h want 33.3 in², and two connectors of 5 in across, 39.3 in², want 39.3.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::opening_outdoors_single::FORMULA;
//! let area = formula.compute_typed(&["100000 BTU/h", "39.3 in2"])?;
//! assert_eq!((area.number_in(formula.result) * 10.0).round(), 393.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 304.6.2, and NFPA 54, National Fuel Gas Code, in the same terms.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "opening_outdoors_single",
    group: Group::CombustionAir,
    sentence: "The free area of a single opening to the outdoors.",
    equation: "area = max(input / 3000, connector_area)",
    arguments: &[
        Argument::new(
            "input",
            Scale::of(Unit::BtuPerHour),
            "of all fuel-burning appliances in the space together",
        ),
        Argument::new(
            "connector_area",
            Scale::of(Unit::SquareInch),
            "of all vent connectors in the space together; 0 where there is none",
        ),
    ],
    result: Scale::of(Unit::SquareInch),
    range: "One opening within 12 in of the top, not narrower than 3 in, to the outdoors straight or by a \
            vertical or horizontal duct; clearances of 1 in at the sides and back and 6 in at the front of \
            the appliance. Free area, not the hole in the wall: see `louver_area`. The local code and the \
            maker's instructions govern.",
    warnings: &[],
    example: &["100000 BTU/h", "39.3 in2"],
    references: &[
        "International Fuel Gas Code, 304.6.2, and NFPA 54, National Fuel Gas Code, in the same terms.",
    ],
    compute: |numbers| {
        let [input, connector_area]: [f64; 2] = each(numbers);
        positive(input, "the input")?;
        not_negative(
            connector_area,
            "the area of the connectors",
            "give the sum of their sections, 0 where there is none",
        )?;
        Ok((input / 3000.0).max(connector_area))
    },
};
