//! The resistance of a solid aluminium wire, of an American wire gauge.
//!
//! # Equation
//!
//! `resistance = 2.8264e-8 / (pi / 4 * diameter^2) * (378.6 + temperature) / 446.6`, where `diameter` is 0.000127 m *
//! 92^((36 - gauge) / 39).
//!
//! # Arguments
//!
//! - `gauge`: the American wire gauge: 18 for most thermostat cable.
//! - `temperature`, °F: of the wire; taken as 68 °F where it is not given: what wire tables are for.
//!
//! # Range
//!
//! Whole gauges from 0 to 30, aluminium from -40 to 392 °F, direct current or 60 Hz. Stranded wire has about 2 % more.
//!
//! # Example
//!
//! Computed: gauge 12 at 68 °F.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::wire_resistance_aluminium::FORMULA;
//! let resistance = formula.compute_typed(&["12", "68 °F"])?;
//! assert_eq!(resistance.display(formula.result).digits(3).to_string(), "2.6 Ω/kft");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Wire sizes: ASTM B258, 0.127 mm * 92^((36 - gauge) / 39) (memory).
//! - Aluminium wire: 0.028264 Ω mm²/m at 68 °F, and 378.6 °F plus its temperature in proportion; ASTM B230 (memory).
use super::copper;
use super::formula::{Formula, each};
use super::wire_resistance;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "wire_resistance_aluminium",
    sentence: "The resistance of a solid aluminium wire, of an American wire gauge.",
    equation: "resistance = 2.8264e-8 / (pi / 4 * diameter^2) * (378.6 + temperature) / 446.6",
    range: "Whole gauges from 0 to 30, aluminium from -40 to 392 °F, direct current or 60 Hz. Stranded wire \
            has about 2 % more.",
    example: &["12", "68 °F"],
    references: &[
        "Wire sizes: ASTM B258, 0.127 mm * 92^((36 - gauge) / 39) (memory).",
        "Aluminium wire: 0.028264 Ω mm²/m at 68 °F, and 378.6 °F plus its temperature in proportion; ASTM \
         B230 (memory).",
    ],
    compute: |numbers| {
        let [gauge, temperature] = each(numbers);
        Ok(1000.0 * copper::ohms_per_foot(copper::ALUMINIUM, gauge, temperature)?)
    },
    ..wire_resistance::FORMULA
};
