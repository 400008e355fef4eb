//! The resistance of a copper winding or wire at another temperature.
//!
//! # Equation
//!
//! `resistance = known * (390.1 + temperature) / (390.1 + known_at)`, in °F; 390.1 °F is what 234.5 °C is from the
//! freezing point, in °F.
//!
//! # Arguments
//!
//! - `known`, Ω: the resistance that is known.
//! - `known_at`, °F: the temperature it is known for: tables use 68 °F, labels often 77 °F.
//! - `temperature`, °F: the temperature that it is wanted for.
//!
//! # Range
//!
//! Copper from -40 to 392 °F, evenly warm. Windings of aluminium rise by about as much, igniters and thermistors do
//! not.
//!
//! # Example
//!
//! Computed: 10 Ω at 68 °F are 11.6 Ω at 140 °F.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::copper_resistance::FORMULA;
//! let resistance = formula.compute_typed(&["10 Ω", "68 °F", "140 °F"])?;
//! assert_eq!(resistance.display(formula.result).digits(3).to_string(), "11.6 Ω");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Copper: resistance in proportion to 234.5 °C plus its temperature in °C; NBS Handbook 100, Copper Wire Tables
//!   (1966; memory).

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::copper;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "copper_resistance",
    group: Group::Electrical,
    sentence: "The resistance of a copper winding or wire at another temperature.",
    equation: "resistance = known * (390.1 + temperature) / (390.1 + known_at)",
    arguments: &[
        Argument::new("known", Scale::of(Unit::Ohm), "the resistance that is known"),
        Argument::new(
            "known_at",
            Scale::of(Unit::DegreeFahrenheit),
            "the temperature it is known for: tables use 68 °F, labels often 77 °F",
        ),
        Argument::new(
            "temperature",
            Scale::of(Unit::DegreeFahrenheit),
            "the temperature that it is wanted for",
        ),
    ],
    result: Scale::of(Unit::Ohm),
    range: "Copper from -40 to 392 °F, evenly warm. Windings of aluminium rise by about as much, igniters \
            and thermistors do not.",
    warnings: &[],
    example: &["10 Ω", "68 °F", "140 °F"],
    references: &[
        "Copper: resistance in proportion to 234.5 °C plus its temperature in °C; NBS Handbook 100, Copper \
         Wire Tables (1966; memory).",
    ],
    compute: |numbers| {
        let [known, known_at, temperature] = each(numbers);
        positive(known, "the known resistance")?;
        copper::in_range(known_at)?;
        copper::in_range(temperature)?;
        Ok(known * copper::relative(temperature) / copper::relative(known_at))
    },
};
