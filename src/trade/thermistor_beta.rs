//! The beta of a thermistor, from two points of its maker's table.
//!
//! # Equation
//!
//! `beta = ln(cold / warm) / (1.8 / (cold_at + 459.67) - 1.8 / (warm_at + 459.67))`
//!
//! # Arguments
//!
//! - `cold`, Ω: its resistance at the lower temperature.
//! - `cold_at`, °F: the lower temperature.
//! - `warm`, Ω: its resistance at the higher temperature.
//! - `warm_at`, °F: the higher temperature.
//!
//! # Range
//!
//! Thermistors whose resistance falls as they warm, from -40 to 302 °F; the two points at least 9 °F apart, about the
//! temperatures that matter. The result is in kelvin.
//!
//! # Example
//!
//! Computed: 10 kΩ at 77 °F and 3603 Ω at 122 °F.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::thermistor_beta::FORMULA;
//! let beta = formula.compute_typed(&["10 kΩ", "77 °F", "3603 Ω", "122 °F"])?;
//! assert_eq!(beta.display(formula.result).digits(4).to_string(), "3934");
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
use super::formula::Formula;
use super::group::Group;
use super::thermistor;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "thermistor_beta",
    group: Group::Electrical,
    sentence: "The beta of a thermistor, from two points of its maker's table.",
    equation: "beta = ln(cold / warm) / (1.8 / (cold_at + 459.67) - 1.8 / (warm_at + 459.67))",
    arguments: &[
        Argument::new(
            "cold",
            Scale::of(Unit::Ohm),
            "its resistance at the lower temperature",
        ),
        Argument::new(
            "cold_at",
            Scale::of(Unit::DegreeFahrenheit),
            "the lower temperature",
        ),
        Argument::new(
            "warm",
            Scale::of(Unit::Ohm),
            "its resistance at the higher temperature",
        ),
        Argument::new(
            "warm_at",
            Scale::of(Unit::DegreeFahrenheit),
            "the higher temperature",
        ),
    ],
    result: Scale::of(Unit::Number),
    range: "Thermistors whose resistance falls as they warm, from -40 to 302 °F; the two points at least 9 \
            °F apart, about the temperatures that matter. The result is in kelvin.",
    warnings: &[],
    example: &["10 kΩ", "77 °F", "3603 Ω", "122 °F"],
    references: &[
        "The beta equation of thermistors, R = R25 exp(beta (1 / T - 1 / 298.15)), T in kelvin: elementary \
         physics of semiconductors.",
    ],
    compute: |numbers| {
        let [cold, warm] = thermistor::rows(numbers);
        thermistor::in_order(&[cold, warm], 9.0)?;
        Ok(thermistor::beta(cold, warm))
    },
};
