//! The resistance of a solid copper wire, of an American wire gauge.
//!
//! # Equation
//!
//! `resistance = 1.7241e-8 / (pi / 4 * diameter^2) * (390.1 + temperature) / 458.1`, where `diameter` is 0.000127 m *
//! 92^((36 - gauge) / 39).
//!
//! # Arguments
//!
//! - `gauge`: the American wire gauge: 18 for most thermostat cable.
//! - `temperature`, °F: of the wire; taken as 68 °F where it is not given: what wire tables are for.
//!
//! # Range
//!
//! Whole gauges from 0 to 30, copper from -40 to 392 °F, direct current or 60 Hz. Stranded wire has about 2 % more.
//!
//! # Example
//!
//! Computed: gauge 18 at 68 °F.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::wire_resistance::FORMULA;
//! let resistance = formula.compute_typed(&["18", "68 °F"])?;
//! assert_eq!(resistance.display(formula.result).digits(3).to_string(), "6.38 Ω/kft");
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
use super::formula::{Formula, each};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "wire_resistance",
    group: Group::Electrical,
    sentence: "The resistance of a solid copper wire, of an American wire gauge.",
    equation: "resistance = 1.7241e-8 / (pi / 4 * diameter^2) * (390.1 + temperature) / 458.1",
    arguments: &[
        Argument::new(
            "gauge",
            Scale::of(Unit::Number),
            "the American wire gauge: 18 for most thermostat cable",
        ),
        Argument::new("temperature", Scale::of(Unit::DegreeFahrenheit), "of the wire")
            .or(68.0, "what wire tables are for"),
    ],
    result: Scale::of(Unit::OhmPerThousandFeet),
    range: "Whole gauges from 0 to 30, copper from -40 to 392 °F, direct current or 60 Hz. Stranded wire \
            has about 2 % more.",
    warnings: &[],
    example: &["18", "68 °F"],
    references: &[
        "Wire sizes: ASTM B258, 0.127 mm * 92^((36 - gauge) / 39) (memory).",
        "Copper: 0.017241 Ω mm²/m at 68 °F, and 390.1 °F plus its temperature in proportion; NBS Handbook \
         100 (1966; memory).",
    ],
    compute: |numbers| {
        let [gauge, temperature] = each(numbers);
        Ok(1000.0 * copper::ohms_per_foot(copper::COPPER, gauge, temperature)?)
    },
};
