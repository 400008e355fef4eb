//! How hot a copper winding is, from its resistance cold and hot.
//!
//! # Equation
//!
//! `temperature = (390.1 + cold_at) * hot / cold - 390.1`
//!
//! # Arguments
//!
//! - `cold`, Ω: the winding's resistance cold.
//! - `cold_at`, °F: its temperature then, the room's after a night off.
//! - `hot`, Ω: the same winding, power off and locked out, within seconds of stopping.
//!
//! # Range
//!
//! Copper from -40 to 392 °F. It is the mean of the winding; its hottest spot is hotter. Resistances of a few ohms want
//! a meter that is zeroed with its leads.
//!
//! # Warnings
//!
//! - Where the winding is colder than it was cold: a motor that ran is warmer, so the two resistances are swapped, or
//!   not of the same winding; measure both between the same two wires, with leads zeroed.
//! - Where the winding is above 266 °F: class B insulation, which most furnace motors have, is made for no more; find
//!   what overloads the motor or keeps cooling air from it.
//!
//! # Example
//!
//! Computed: 10.0 Ω at 68 °F that become 13.1 Ω.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::winding_temperature::FORMULA;
//! let temperature = formula.compute_typed(&["10.0 Ω", "68 °F", "13.1 Ω"])?;
//! assert_eq!(temperature.display(formula.result).digits(3).to_string(), "210 °F");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The resistance method, as in IEEE 112 and IEC 60034-1, as quoted in trade education.
//! - Copper: resistance in proportion to 234.5 °C plus its temperature in °C; NBS Handbook 100, Copper Wire Tables
//!   (1966; memory).
//! - IEC 60085, thermal class 130 (B): 130 °C (memory).

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::copper;
use super::formula::{Formula, each, positive};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "winding_temperature",
    group: Group::Electrical,
    sentence: "How hot a copper winding is, from its resistance cold and hot.",
    equation: "temperature = (390.1 + cold_at) * hot / cold - 390.1",
    arguments: &[
        Argument::new("cold", Scale::of(Unit::Ohm), "the winding's resistance cold"),
        Argument::new(
            "cold_at",
            Scale::of(Unit::DegreeFahrenheit),
            "its temperature then, the room's after a night off",
        ),
        Argument::new(
            "hot",
            Scale::of(Unit::Ohm),
            "the same winding, power off and locked out, within seconds of stopping",
        ),
    ],
    result: Scale::of(Unit::DegreeFahrenheit),
    range: "Copper from -40 to 392 °F. It is the mean of the winding; its hottest spot is hotter. \
            Resistances of a few ohms want a meter that is zeroed with its leads.",
    warnings: &[
        Warning {
            when: "the winding is colder than it was cold",
            reason: "a motor that ran is warmer, so the two resistances are swapped, or not of the same winding",
            help: "measure both between the same two wires, with leads zeroed",
            applies: |numbers, temperature| temperature < numbers[1],
        },
        Warning {
            when: "the winding is above 266 °F",
            reason: "class B insulation, which most furnace motors have, is made for no more",
            help: "find what overloads the motor or keeps cooling air from it",
            applies: |_, temperature| temperature > 266.0,
        },
    ],
    example: &["10.0 Ω", "68 °F", "13.1 Ω"],
    references: &[
        "The resistance method, as in IEEE 112 and IEC 60034-1, as quoted in trade education.",
        "Copper: resistance in proportion to 234.5 °C plus its temperature in °C; NBS Handbook 100, Copper \
         Wire Tables (1966; memory).",
        "IEC 60085, thermal class 130 (B): 130 °C (memory).",
    ],
    compute: |numbers| {
        let [cold, cold_at, hot] = each(numbers);
        positive(cold, "the cold resistance")?;
        positive(hot, "the hot resistance")?;
        copper::in_range(cold_at)?;
        let temperature = copper::temperature(copper::relative(cold_at) * hot / cold);
        copper::in_range(temperature)?;
        Ok(temperature)
    },
};
