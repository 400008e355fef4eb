//! How many standard cubic feet are in a cubic foot that a meter without compensation has counted.
//!
//! # Equation
//!
//! `correction = (barometer + pressure) / 14.73 * 519.67 / (temperature + 459.67)`, in psia and °F; the barometer is
//! that of the standard atmosphere, see `air_density`.
//!
//! # Arguments
//!
//! - `pressure`, in.w.c.: of the gas in the meter, above the air around it.
//! - `temperature`, °F: of the gas in the meter: outdoors, nearly that of the air.
//! - `altitude`, ft: above sea level.
//!
//! # Range
//!
//! A diaphragm meter that counts what goes through it, uncorrected. Many meters compensate for temperature, and say
//! so on their face: give 60 °F for those. The weather moves the barometer by up to 3 %; gas suppliers differ in the
//! third digit about the standard pressure. Altitude as for `air_density`; -60 to 150 °F.
//!
//! # Example
//!
//! Arithmetic: at 5,000 ft, 7 in.w.c. and 60 °F a metered cubic foot holds 0.847 standard ones.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::gas_volume_correction::FORMULA;
//! let correction = formula.compute_typed(&["7 in.w.c.", "60 °F", "5000 ft"])?;
//! assert_eq!((correction.number_in(formula.result) * 1e3).round(), 847.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The gas law.
//! - Standard gas of the United States trade: 60 °F and 14.73 psia.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each};
use super::group::Group;
use super::metered::correction;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "gas_volume_correction",
    group: Group::Gas,
    sentence: "How many standard cubic feet are in a cubic foot that a meter without compensation has \
               counted.",
    equation: "correction = (barometer + pressure) / 14.73 * 519.67 / (temperature + 459.67)",
    arguments: &[
        Argument::new(
            "pressure",
            Scale::of(Unit::InchWaterColumn),
            "of the gas in the meter, above the air around it",
        ),
        Argument::new(
            "temperature",
            Scale::of(Unit::DegreeFahrenheit),
            "of the gas in the meter: outdoors, nearly that of the air",
        ),
        Argument::new("altitude", Scale::of(Unit::Foot), "above sea level"),
    ],
    result: Scale::of(Unit::Number),
    range: "A diaphragm meter that counts what goes through it, uncorrected. Many meters compensate for \
            temperature, and say so on their face: give 60 °F for those. The weather moves the barometer by \
            up to 3 %; gas suppliers differ in the third digit about the standard pressure. Altitude as for \
            `air_density`; -60 to 150 °F.",
    warnings: &[],
    example: &["7 in.w.c.", "60 °F", "5000 ft"],
    references: &[
        "The gas law.",
        "Standard gas of the United States trade: 60 °F and 14.73 psia.",
    ],
    compute: |numbers| {
        let [pressure, temperature, altitude] = each(numbers);
        correction(pressure, temperature, altitude)
    },
};
