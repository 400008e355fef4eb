//! The voltage that a current loses along a cable of aluminium, out and back.
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
//! Whole gauges from 0 to 30, solid aluminium from -40 to 392 °F, direct current or 60 Hz. Terminals and splices drop
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
//! Computed: 100 ft of gauge 12 there and back at 10 A.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::cable_voltage_drop_aluminium::FORMULA;
//! let drop = formula.compute_typed(&["12", "50 ft", "10 A", "68 °F"])?;
//! assert_eq!(drop.display(formula.result).digits(3).to_string(), "2.6 V");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Wire sizes: ASTM B258, 0.127 mm * 92^((36 - gauge) / 39) (memory).
//! - Aluminium wire: 0.028264 Ω mm²/m at 68 °F, and 378.6 °F plus its temperature in proportion; ASTM B230 (memory).
use super::cable_voltage_drop;
use super::copper;
use super::formula::{Formula, each, not_negative};

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "cable_voltage_drop_aluminium",
    sentence: "The voltage that a current loses along a cable of aluminium, out and back.",
    range: "Whole gauges from 0 to 30, solid aluminium from -40 to 392 °F, direct current or 60 Hz. Terminals \
            and splices drop more, and are often the fault. Codes govern the size of wires.",
    example: &["12", "50 ft", "10 A", "68 °F"],
    references: &[
        "Wire sizes: ASTM B258, 0.127 mm * 92^((36 - gauge) / 39) (memory).",
        "Aluminium wire: 0.028264 Ω mm²/m at 68 °F, and 378.6 °F plus its temperature in proportion; ASTM \
         B230 (memory).",
    ],
    compute: |numbers| {
        let [gauge, length, current, temperature] = each(numbers);
        not_negative(length, "the length", "measure the cable one way")?;
        not_negative(current, "the current", "read it without its sign")?;
        Ok(current * 2.0 * length * copper::ohms_per_foot(copper::ALUMINIUM, gauge, temperature)?)
    },
    ..cable_voltage_drop::FORMULA
};
