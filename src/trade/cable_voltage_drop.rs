//! The voltage that a current loses along a cable, out and back.
//!
//! # Equation
//!
//! `drop = current * 2 * length * resistance of a foot of the wire`, as `wire_resistance` has it.
//!
//! # Arguments
//!
//! - `gauge`: the American wire gauge: 18 for most thermostat cable.
//! - `length`, ft: of the cable, one way.
//! - `current`, A: through the wire and back.
//! - `temperature`, °F: of the wire; taken as 68 °F where it is not given: what wire tables are for.
//!
//! # Range
//!
//! Whole gauges from 0 to 30, solid copper from -40 to 392 °F, direct current or 60 Hz. Terminals and splices drop
//! more, and are often the fault. Codes govern the size of wires.
//!
//! # Warnings
//!
//! - Where the drop is above 1.2 V: in a 24 V circuit that is more than a twentieth, and relays and boards may let go
//!   (common practice); take thicker wire or a shorter way, or look for a load that takes too much.
//! - Where the wire carries more than 8 A for each mm²: it runs hot (common practice); check current and gauge; the
//!   electrical code governs the size of wires.
//!
//! # Example
//!
//! Computed: 0.8 A through 50 ft of gauge 18.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::cable_voltage_drop::FORMULA;
//! let drop = formula.compute_typed(&["18", "50 ft", "0.8 A", "68 °F"])?;
//! assert_eq!(drop.display(formula.result).digits(3).to_string(), "0.511 V");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Wire sizes: ASTM B258, 0.127 mm * 92^((36 - gauge) / 39) (memory).
//! - Copper: 0.017241 Ω mm²/m at 68 °F, and 390.1 °F plus its temperature in proportion; NBS Handbook 100 (1966;
//!   memory).

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::copper;
use super::formula::{Formula, each, not_negative};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "cable_voltage_drop",
    group: Group::Electrical,
    sentence: "The voltage that a current loses along a cable, out and back.",
    equation: "drop = current * 2 * length * resistance of a foot of the wire",
    arguments: &[
        Argument::new(
            "gauge",
            Scale::of(Unit::Number),
            "the American wire gauge: 18 for most thermostat cable",
        ),
        Argument::new("length", Scale::of(Unit::Foot), "of the cable, one way"),
        Argument::new("current", Scale::of(Unit::Ampere), "through the wire and back"),
        Argument::new("temperature", Scale::of(Unit::DegreeFahrenheit), "of the wire")
            .or(68.0, "what wire tables are for"),
    ],
    result: Scale::of(Unit::Volt),
    range: "Whole gauges from 0 to 30, solid copper from -40 to 392 °F, direct current or 60 Hz. Terminals \
            and splices drop more, and are often the fault. Codes govern the size of wires.",
    warnings: &[
        Warning {
            when: "the drop is above 1.2 V",
            reason: "in a 24 V circuit that is more than a twentieth, and relays and boards may let go (common practice)",
            help: "take thicker wire or a shorter way, or look for a load that takes too much",
            applies: |_, drop| drop > 1.2,
        },
        Warning {
            when: "the wire carries more than 8 A for each mm²",
            reason: "it runs hot (common practice)",
            help: "check current and gauge; the electrical code governs the size of wires",
            applies: |numbers, _| numbers[2] > copper::most_current(numbers[0]),
        },
    ],
    example: &["18", "50 ft", "0.8 A", "68 °F"],
    references: &[
        "Wire sizes: ASTM B258, 0.127 mm * 92^((36 - gauge) / 39) (memory).",
        "Copper: 0.017241 Ω mm²/m at 68 °F, and 390.1 °F plus its temperature in proportion; NBS Handbook \
         100 (1966; memory).",
    ],
    compute: |numbers| {
        let [gauge, length, current, temperature] = each(numbers);
        not_negative(length, "the length", "measure the cable one way")?;
        not_negative(current, "the current", "read it without its sign")?;
        Ok(current * 2.0 * length * copper::ohms_per_foot(copper::COPPER, gauge, temperature)?)
    },
};
