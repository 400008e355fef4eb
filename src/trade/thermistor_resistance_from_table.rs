//! The resistance that a thermistor should have at a temperature, between two rows of its own table.
//!
//! # Equation
//!
//! `resistance = cold * (warm / cold)^((1 / k - 1 / cold_k) / (1 / warm_k - 1 / cold_k)), with k = (temperature +
//! 459.67) / 1.8, cold_k and warm_k likewise`
//!
//! # Arguments
//!
//! - `temperature`, °F: where the thermistor is.
//! - `cold`, Ω: its resistance in the row of the lower temperature.
//! - `cold_at`, °F: the lower temperature.
//! - `warm`, Ω: its resistance in the row of the higher temperature.
//! - `warm_at`, °F: the higher temperature.
//!
//! # Range
//!
//! Thermistors whose resistance falls as they warm, off their circuit, from -40 to 302 °F; two rows of the sensor's own
//! table, at least 0.5 °F apart, with the temperature between them. With rows 18 °F apart it is about 0.03 °F off, 36
//! °F apart 0.1 °F, beside what the sensor itself may be off.
//!
//! # Warnings
//!
//! - Where the temperature lies outside of the two rows: beyond them the curve bends away; take the rows of the table
//!   just above and just below it.
//! - Where the two rows are more than 36 °F apart: between them a thermistor bends, and it may be some tenths of a
//!   degree off; take the two rows of the table next to it.
//!
//! # Example
//!
//! Published: a 10 kΩ thermistor whose table has 12,262 Ω at 20 °C, 9814 Ω at 25 °C and 7908 Ω at 30 °C; between the
//! outer rows the middle one comes out within 3 Ω.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::thermistor_resistance_from_table::FORMULA;
//! let resistance = formula.compute_typed(&["77 °F", "12262 Ω", "68 °F", "7908 Ω", "86 °F"])?;
//! assert_eq!(resistance.display(formula.result).digits(3).to_string(), "9811 Ω");
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
use super::formula::{Formula, each};
use super::group::Group;
use super::table_rows;
use super::thermistor::{Curve, in_range, rows};
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "thermistor_resistance_from_table",
    group: Group::Electrical,
    sentence: "The resistance that a thermistor should have at a temperature, between two rows of its own \
               table.",
    equation: "resistance = cold * (warm / cold)^((1 / k - 1 / cold_k) / (1 / warm_k - 1 / cold_k)), with k \
               = (temperature + 459.67) / 1.8, cold_k and warm_k likewise",
    arguments: &[
        Argument::new(
            "temperature",
            Scale::of(Unit::DegreeFahrenheit),
            "where the thermistor is",
        ),
        table_rows::LOWER,
        table_rows::LOWER_AT,
        table_rows::HIGHER,
        table_rows::HIGHER_AT,
    ],
    result: Scale::of(Unit::Ohm),
    range: "Thermistors whose resistance falls as they warm, off their circuit, from -40 to 302 °F; two rows \
            of the sensor's own table, at least 0.5 °F apart, with the temperature between them. With rows \
            18 °F apart it is about 0.03 °F off, 36 °F apart 0.1 °F, beside what the sensor itself may be \
            off.",
    warnings: &[
        Warning {
            when: "the temperature lies outside of the two rows",
            reason: "beyond them the curve bends away",
            help: "take the rows of the table just above and just below it",
            applies: |numbers, _| !(numbers[2]..=numbers[4]).contains(&numbers[0]),
        },
        table_rows::FAR_APART,
    ],
    example: &["77 °F", "12262 Ω", "68 °F", "7908 Ω", "86 °F"],
    references: &[
        "The beta equation of thermistors, R = R25 exp(beta (1 / T - 1 / 298.15)), T in kelvin: elementary \
         physics of semiconductors.",
    ],
    compute: |numbers| {
        let [temperature, ..] = each::<5>(numbers);
        let [cold, warm] = rows(&numbers[1..]);
        let curve = Curve::between(cold, warm)?;
        in_range(temperature)?;
        Ok(curve.resistance(temperature))
    },
};
