//! The temperature that a thermistor tells by its resistance, between two rows of its own table.
//!
//! # Equation
//!
//! `temperature = 1.8 / (1 / cold_k + ln(cold / resistance) / ln(cold / warm) * (1 / warm_k - 1 / cold_k)) - 459.67,
//! with cold_k = (cold_at + 459.67) / 1.8 and warm_k likewise`
//!
//! # Arguments
//!
//! - `resistance`, Ω: as measured, off its circuit.
//! - `cold`, Ω: its resistance in the row of the lower temperature.
//! - `cold_at`, °F: the lower temperature.
//! - `warm`, Ω: its resistance in the row of the higher temperature.
//! - `warm_at`, °F: the higher temperature.
//!
//! # Range
//!
//! Thermistors whose resistance falls as they warm, off their circuit, from -40 to 302 °F; two rows of the sensor's own
//! table, at least 0.5 °F apart, with the reading between them. With rows 18 °F apart it is about 0.03 °F off, 36 °F
//! apart 0.1 °F, beside what the sensor itself may be off.
//!
//! # Warnings
//!
//! - Where the resistance lies outside of the two rows: beyond them the curve bends away; take the rows of the table
//!   just above and just below it.
//! - Where the two rows are more than 36 °F apart: between them a thermistor bends, and it may be some tenths of a
//!   degree off; take the two rows of the table next to it.
//!
//! # Example
//!
//! Published: a 10 kΩ thermistor whose table has 12,262 Ω at 20 °C, 9814 Ω at 25 °C and 7908 Ω at 30 °C; between the
//! outer rows the middle one comes out at 77.0 °F.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::thermistor_temperature_from_table::FORMULA;
//! let temperature = formula.compute_typed(&["9814 Ω", "12262 Ω", "68 °F", "7908 Ω", "86 °F"])?;
//! assert_eq!(temperature.display(formula.result).digits(3).to_string(), "77 °F");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The beta equation of thermistors, R = R25 exp(beta (1 / T - 1 / 298.15)), T in kelvin: elementary physics of
//!   semiconductors.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;
use super::table_rows;
use super::thermistor::{Curve, in_range, rows};
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "thermistor_temperature_from_table",
    group: Group::Electrical,
    sentence: "The temperature that a thermistor tells by its resistance, between two rows of its own table.",
    equation: "temperature = 1.8 / (1 / cold_k + ln(cold / resistance) / ln(cold / warm) * (1 / warm_k - 1 / \
               cold_k)) - 459.67, with cold_k = (cold_at + 459.67) / 1.8 and warm_k likewise",
    arguments: &[
        Argument::new("resistance", Scale::of(Unit::Ohm), "as measured, off its circuit"),
        table_rows::LOWER,
        table_rows::LOWER_AT,
        table_rows::HIGHER,
        table_rows::HIGHER_AT,
    ],
    result: Scale::of(Unit::DegreeFahrenheit),
    range: "Thermistors whose resistance falls as they warm, off their circuit, from -40 to 302 °F; two rows \
            of the sensor's own table, at least 0.5 °F apart, with the reading between them. With rows 18 °F \
            apart it is about 0.03 °F off, 36 °F apart 0.1 °F, beside what the sensor itself may be off.",
    warnings: &[
        Warning {
            when: "the resistance lies outside of the two rows",
            reason: "beyond them the curve bends away",
            help: "take the rows of the table just above and just below it",
            applies: |numbers, _| !(numbers[3]..=numbers[1]).contains(&numbers[0]),
        },
        table_rows::FAR_APART,
    ],
    example: &["9814 Ω", "12262 Ω", "68 °F", "7908 Ω", "86 °F"],
    references: &[
        "The beta equation of thermistors, R = R25 exp(beta (1 / T - 1 / 298.15)), T in kelvin: elementary \
         physics of semiconductors.",
    ],
    compute: |numbers| {
        let [resistance, ..] = each::<5>(numbers);
        let [cold, warm] = rows(&numbers[1..]);
        let curve = Curve::between(cold, warm)?;
        positive(resistance, "the resistance")?;
        let temperature = curve.temperature(resistance);
        in_range(temperature)?;
        Ok(temperature)
    },
};
