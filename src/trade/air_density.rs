//! How much dry air weighs at an altitude and a temperature, in the standard atmosphere.
//!
//! # Equation
//!
//! `density = 144 * pressure / (53.352 * (temperature + 459.67)), pressure = 14.696 * (1 - 0.0000068754 *
//! altitude)^5.2559`, in lb/ft³, psia, °F and ft.
//!
//! # Arguments
//!
//! - `altitude`, ft: above sea level.
//! - `temperature`, °F: of the air.
//!
//! # Range
//!
//! From 1,500 ft below the sea to 15,000 ft above, and from -60 to 300 °F. The weather moves the barometer, and the
//! density with it, by up to 3 %; damp air in a house is up to 1 % lighter.
//!
//! # Example
//!
//! Computed with a library of humid air: at 5,000 ft and 70 °F dry air weighs 0.06231 lb/ft³, against 0.07489 at sea
//! level.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::air_density::FORMULA;
//! let density = formula.compute_typed(&["5000 ft", "70 °F"])?;
//! assert_eq!((density.number_in(formula.result) * 1e4).round(), 623.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - ICAO standard atmosphere, as ASHRAE Handbook, Fundamentals, chapter Psychrometrics, writes its pressure
//!   (memory).
//! - The gas law; the gas constant of dry air is 53.352 ft·lbf/(lb·°R).

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::atmosphere::density;
use super::formula::{Formula, each};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "air_density",
    group: Group::Air,
    sentence: "How much dry air weighs at an altitude and a temperature, in the standard atmosphere.",
    equation: "density = 144 * pressure / (53.352 * (temperature + 459.67)), pressure = 14.696 * (1 - \
               0.0000068754 * altitude)^5.2559",
    arguments: &[
        Argument::new("altitude", Scale::of(Unit::Foot), "above sea level"),
        Argument::new("temperature", Scale::of(Unit::DegreeFahrenheit), "of the air"),
    ],
    result: Scale::of(Unit::PoundPerCubicFoot),
    range: "From 1,500 ft below the sea to 15,000 ft above, and from -60 to 300 °F. The weather moves the \
            barometer, and the density with it, by up to 3 %; damp air in a house is up to 1 % lighter.",
    warnings: &[],
    example: &["5000 ft", "70 °F"],
    references: &[
        "ICAO standard atmosphere, as ASHRAE Handbook, Fundamentals, chapter Psychrometrics, writes its \
         pressure (memory).",
        "The gas law; the gas constant of dry air is 53.352 ft·lbf/(lb·°R).",
    ],
    compute: |numbers| {
        let [altitude, temperature] = each(numbers);
        density(altitude, temperature)
    },
};
