//! The resistance that a thermistor should have at a temperature.
//!
//! # Equation
//!
//! `resistance = resistance_at_77 * exp(beta * (1.8 / (temperature + 459.67) - 1 / 298.15))`
//!
//! # Arguments
//!
//! - `temperature`, °F: where the thermistor is.
//! - `resistance_at_77`, Ω: its resistance at 77 °F, from its label or the maker's table: often 10 kΩ.
//! - `beta`: its beta in kelvin, from the maker's table: often 3400 to 4000.
//!
//! # Range
//!
//! Thermistors whose resistance falls as they warm, off their circuit, from -40 to 302 °F; beta from 1000 to 10000 K.
//! The maker's table governs: within 45 °F of 77 °F the equation is about 1 °F off, further away some degrees.
//!
//! # Warnings
//!
//! - Where the temperature is below 32 °F or above 122 °F: one beta does not follow a thermistor over a wide span; it
//!   may be some degrees off; go by rows of the maker's table: `thermistor_resistance_from_table`.
//!
//! # Example
//!
//! Computed: a thermistor of 10 kΩ and beta 3934 at 50 °F; a curve through three points of its table has 19,902 Ω,
//! which is 0.4 °F away.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::thermistor_resistance::FORMULA;
//! let resistance = formula.compute_typed(&["50 °F", "10 kΩ", "3934"])?;
//! assert_eq!(resistance.display(formula.result).digits(3).to_string(), "20117 Ω");
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
use super::thermistor;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "thermistor_resistance",
    group: Group::Electrical,
    sentence: "The resistance that a thermistor should have at a temperature.",
    equation: "resistance = resistance_at_77 * exp(beta * (1.8 / (temperature + 459.67) - 1 / 298.15))",
    arguments: &[
        Argument::new(
            "temperature",
            Scale::of(Unit::DegreeFahrenheit),
            "where the thermistor is",
        ),
        Argument::new(
            "resistance_at_77",
            Scale::of(Unit::Ohm),
            "its resistance at 77 °F, from its label or the maker's table: often 10 kΩ",
        ),
        Argument::new(
            "beta",
            Scale::of(Unit::Number),
            "its beta in kelvin, from the maker's table: often 3400 to 4000",
        ),
    ],
    result: Scale::of(Unit::Ohm),
    range: "Thermistors whose resistance falls as they warm, off their circuit, from -40 to 302 °F; beta \
            from 1000 to 10000 K. The maker's table governs: within 45 °F of 77 °F the equation is about 1 \
            °F off, further away some degrees.",
    warnings: &[Warning {
        when: "the temperature is below 32 °F or above 122 °F",
        reason: "one beta does not follow a thermistor over a wide span; it may be some degrees off",
        help: "go by rows of the maker's table: `thermistor_resistance_from_table`",
        applies: |numbers, _| thermistor::is_far(numbers[0]),
    }],
    example: &["50 °F", "10 kΩ", "3934"],
    references: &[
        "The beta equation of thermistors, R = R25 exp(beta (1 / T - 1 / 298.15)), T in kelvin: elementary \
         physics of semiconductors.",
    ],
    compute: |numbers| {
        let [temperature, at_77, beta] = each(numbers);
        let curve = thermistor::Curve::new(at_77, beta)?;
        thermistor::in_range(temperature)?;
        Ok(curve.resistance(temperature))
    },
};
