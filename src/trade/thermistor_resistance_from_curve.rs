//! The resistance that a thermistor should have at a temperature, on a curve through three points of its own table.
//!
//! # Equation
//!
//! `1.8 / (temperature + 459.67) = a + b * ln(resistance) + c * ln(resistance)^3, a, b and c as the three points have
//! them`
//!
//! # Arguments
//!
//! - `temperature`, °F: where the thermistor is.
//! - `cold`, Ω: its resistance at the lowest of three temperatures of its table.
//! - `cold_at`, °F: the lowest temperature.
//! - `middle`, Ω: its resistance at the middle one.
//! - `middle_at`, °F: the middle temperature.
//! - `warm`, Ω: its resistance at the highest.
//! - `warm_at`, °F: the highest temperature.
//!
//! # Range
//!
//! Thermistors whose resistance falls as they warm, off their circuit, from -40 to 302 °F; three points of the sensor's
//! own table, each at least 9 °F from the next, about the span that matters. Between outer points up to 150 °F apart it
//! is within 0.02 °F of the table, beside what the sensor itself may be off.
//!
//! # Warnings
//!
//! - Where the temperature lies outside of the outer points: a curve is less sure beyond the points it goes through;
//!   choose points on both sides of it.
//! - Where the three points bend more than a thermistor does: one of them may be misread, or from another sensor's
//!   table; hold the points against the table again.
//!
//! # Example
//!
//! Computed: a 10 kΩ thermistor whose table has 32,651 Ω at 0 °C, 10,000 Ω at 25 °C and 3603 Ω at 50 °C has 19,902 Ω at
//! 50 °F.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::thermistor_resistance_from_curve::FORMULA;
//! let resistance = formula.compute_typed(&["50 °F", "32651 Ω", "32 °F", "10 kΩ", "77 °F", "3603 Ω", "122 °F"])?;
//! assert_eq!(resistance.display(formula.result).digits(3).to_string(), "19902 Ω");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Steinhart and Hart, Calibration curves for thermistors, Deep-Sea Research 15 (1968).

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each};
use super::group::Group;
use super::steinhart_hart::Curve;
use super::table_rows;
use super::thermistor::rows;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "thermistor_resistance_from_curve",
    group: Group::Electrical,
    sentence: "The resistance that a thermistor should have at a temperature, on a curve through three \
               points of its own table.",
    equation: "1.8 / (temperature + 459.67) = a + b * ln(resistance) + c * ln(resistance)^3, a, b and c as \
               the three points have them",
    arguments: &[
        Argument::new(
            "temperature",
            Scale::of(Unit::DegreeFahrenheit),
            "where the thermistor is",
        ),
        table_rows::LOWEST_OF_THREE,
        table_rows::LOWEST_OF_THREE_AT,
        table_rows::MIDDLE,
        table_rows::MIDDLE_AT,
        table_rows::HIGHEST,
        table_rows::HIGHEST_AT,
    ],
    result: Scale::of(Unit::Ohm),
    range: "Thermistors whose resistance falls as they warm, off their circuit, from -40 to 302 °F; three \
            points of the sensor's own table, each at least 9 °F from the next, about the span that matters. \
            Between outer points up to 150 °F apart it is within 0.02 °F of the table, beside what the \
            sensor itself may be off.",
    warnings: &[
        Warning {
            when: "the temperature lies outside of the outer points",
            reason: "a curve is less sure beyond the points it goes through",
            help: "choose points on both sides of it",
            applies: |numbers, _| !(numbers[2]..=numbers[6]).contains(&numbers[0]),
        },
        table_rows::BENT,
    ],
    example: &["50 °F", "32651 Ω", "32 °F", "10 kΩ", "77 °F", "3603 Ω", "122 °F"],
    references: &["Steinhart and Hart, Calibration curves for thermistors, Deep-Sea Research 15 (1968)."],
    compute: |numbers| {
        let [temperature, ..] = each::<7>(numbers);
        Curve::through(rows(&numbers[1..]))?.resistance(temperature)
    },
};
