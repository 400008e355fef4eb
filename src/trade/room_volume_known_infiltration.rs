//! The room that appliances need where all their air comes from indoors and the house's leakage is known.
//!
//! # Equation
//!
//! `volume = (21 * other_input + 15 * fan_assisted_input) / (1000 * air_changes)`, in ft³, BTU/h and air changes an
//! hour.
//!
//! # Arguments
//!
//! - `other_input`, BTU/h: of all appliances that are not fan-assisted, together; 0 where there is none.
//! - `fan_assisted_input`, BTU/h: of all fan-assisted appliances together; 0 where there is none.
//! - `air_changes`: of the house in an hour, as found by a test or set by the code.
//!
//! # Range
//!
//! Air changes above 0 and up to 0.60 an hour: where the house leaks more, the method takes 0.60. Appliances with
//! sealed combustion are left out. The air changes are those of everyday pressure, not those of a blower door at 50
//! Pa. The local code and the maker's instructions govern.
//!
//! # Example
//!
//! Published: 100,000 BTU/h fan-assisted want 7,500 ft³ at 0.20 air changes an hour.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::room_volume_known_infiltration::FORMULA;
//! let volume = formula.compute_typed(&["0 BTU/h", "100000 BTU/h", "0.20"])?;
//! assert_eq!(volume.number_in(formula.result).round(), 7_500.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 304.5.2, and NFPA 54, National Fuel Gas Code, in the same terms.
//! - Appendix E, table E-1, of the Minnesota edition prints its results.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;
use super::unfit::Unfit;

/// Air changes an hour above which the method gives no credit.
const MOST_AIR_CHANGES: f64 = 0.60;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "room_volume_known_infiltration",
    group: Group::CombustionAir,
    sentence: "The room that appliances need where all their air comes from indoors and the house's leakage \
               is known.",
    equation: "volume = (21 * other_input + 15 * fan_assisted_input) / (1000 * air_changes)",
    arguments: &[
        Argument::new(
            "other_input",
            Scale::of(Unit::BtuPerHour),
            "of all appliances that are not fan-assisted, together; 0 where there is none",
        ),
        Argument::new(
            "fan_assisted_input",
            Scale::of(Unit::BtuPerHour),
            "of all fan-assisted appliances together; 0 where there is none",
        ),
        Argument::new(
            "air_changes",
            Scale::of(Unit::Number),
            "of the house in an hour, as found by a test or set by the code",
        ),
    ],
    result: Scale::of(Unit::CubicFoot),
    range: "Air changes above 0 and up to 0.60 an hour: where the house leaks more, the method takes 0.60. \
            Appliances with sealed combustion are left out. The air changes are those of everyday pressure, \
            not those of a blower door at 50 Pa. The local code and the maker's instructions govern.",
    warnings: &[],
    example: &["0 BTU/h", "100000 BTU/h", "0.20"],
    references: &[
        "International Fuel Gas Code, 304.5.2, and NFPA 54, National Fuel Gas Code, in the same terms.",
        "Appendix E, table E-1, of the Minnesota edition prints its results.",
    ],
    compute: |numbers| {
        let [other_input, fan_assisted_input, air_changes] = each(numbers);
        let help = "give the input of each kind, 0 where there is none";
        not_negative(other_input, "the input of appliances without a fan", help)?;
        not_negative(fan_assisted_input, "the input of fan-assisted appliances", help)?;
        positive(other_input + fan_assisted_input, "the input")?;
        positive(air_changes, "the air change")?;
        if air_changes > MOST_AIR_CHANGES {
            return Err(Unfit::new(
                format!("{air_changes} air changes an hour are more than the method counts"),
                "give 0.60, however leaky the house is",
            ));
        }
        Ok((21.0 * other_input + 15.0 * fan_assisted_input) / (1000.0 * air_changes))
    },
};
