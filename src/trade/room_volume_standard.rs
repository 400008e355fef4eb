//! The room that appliances need where all their air comes from indoors, by the standard method.
//!
//! # Equation
//!
//! `volume = 50 * input / 1000`, in ft³ and BTU/h.
//!
//! # Arguments
//!
//! - `input`, BTU/h: of all fuel-burning appliances in the space together.
//!
//! # Range
//!
//! Appliances that take their air from the room: those with sealed combustion are left out. Not for a house that is
//! known to leak less than 0.40 air changes an hour: see `room_volume_known_infiltration`. Rooms count together where
//! openings join them. The local code and the maker's instructions govern.
//!
//! # Example
//!
//! Published: 80,000 BTU/h want 4,000 ft³.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::room_volume_standard::FORMULA;
//! let volume = formula.compute_typed(&["80000 BTU/h"])?;
//! assert_eq!(volume.number_in(formula.result).round(), 4_000.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 304.5.1, and NFPA 54, National Fuel Gas Code, in the same terms.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "room_volume_standard",
    group: Group::CombustionAir,
    sentence: "The room that appliances need where all their air comes from indoors, by the standard method.",
    equation: "volume = 50 * input / 1000",
    arguments: &[Argument::new(
        "input",
        Scale::of(Unit::BtuPerHour),
        "of all fuel-burning appliances in the space together",
    )],
    result: Scale::of(Unit::CubicFoot),
    range: "Appliances that take their air from the room: those with sealed combustion are left out. Not \
            for a house that is known to leak less than 0.40 air changes an hour: see \
            `room_volume_known_infiltration`. Rooms count together where openings join them. The local code \
            and the maker's instructions govern.",
    warnings: &[],
    example: &["80000 BTU/h"],
    references: &[
        "International Fuel Gas Code, 304.5.1, and NFPA 54, National Fuel Gas Code, in the same terms.",
    ],
    compute: |numbers| {
        let [input] = each(numbers);
        positive(input, "the input")?;
        Ok(50.0 * input / 1000.0)
    },
};
