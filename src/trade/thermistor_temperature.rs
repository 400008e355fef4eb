//! The temperature that a thermistor tells by its resistance.
//!
//! # Equation
//!
//! `temperature = 1.8 / (1 / 298.15 + ln(resistance / resistance_at_77) / beta) - 459.67`
//!
//! # Arguments
//!
//! - `resistance`, Ω: as measured, off its circuit.
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
//!   may be some degrees off; go by rows of the maker's table: `thermistor_temperature_from_table`.
//!
//! # Example
//!
//! Computed: 8057 Ω of a thermistor of 10 kΩ and beta 3934, for which a curve through three points of its table has 86
//! °F.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::thermistor_temperature::FORMULA;
//! let temperature = formula.compute_typed(&["8057 Ω", "10 kΩ", "3934"])?;
//! assert_eq!(temperature.display(formula.result).digits(3).to_string(), "85.9 °F");
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
use super::thermistor;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "thermistor_temperature",
    group: Group::Electrical,
    sentence: "The temperature that a thermistor tells by its resistance.",
    equation: "temperature = 1.8 / (1 / 298.15 + ln(resistance / resistance_at_77) / beta) - 459.67",
    arguments: &[
        Argument::new("resistance", Scale::of(Unit::Ohm), "as measured, off its circuit"),
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
    result: Scale::of(Unit::DegreeFahrenheit),
    range: "Thermistors whose resistance falls as they warm, off their circuit, from -40 to 302 °F; beta \
            from 1000 to 10000 K. The maker's table governs: within 45 °F of 77 °F the equation is about 1 \
            °F off, further away some degrees.",
    warnings: &[Warning {
        when: "the temperature is below 32 °F or above 122 °F",
        reason: "one beta does not follow a thermistor over a wide span; it may be some degrees off",
        help: "go by rows of the maker's table: `thermistor_temperature_from_table`",
        applies: |_, temperature| thermistor::is_far(temperature),
    }],
    example: &["8057 Ω", "10 kΩ", "3934"],
    references: &[
        "The beta equation of thermistors, R = R25 exp(beta (1 / T - 1 / 298.15)), T in kelvin: elementary \
         physics of semiconductors.",
    ],
    compute: |numbers| {
        let [resistance, at_77, beta] = each(numbers);
        let curve = thermistor::Curve::new(at_77, beta)?;
        positive(resistance, "the resistance")?;
        let temperature = curve.temperature(resistance);
        thermistor::in_range(temperature)?;
        Ok(temperature)
    },
};
