//! What a transformer delivers, as a share of what its plate allows.
//!
//! # Equation
//!
//! `load = 100 * voltage * current / plate`
//!
//! # Arguments
//!
//! - `voltage`, V: across the secondary, loaded.
//! - `current`, A: out of the secondary, everything on that can be on at once.
//! - `plate`, VA: on the transformer's plate.
//!
//! # Range
//!
//! One secondary. Over 100 % is over the plate. A clamp shows small currents poorly: ten turns of the wire through it
//! show ten times the current.
//!
//! # Warnings
//!
//! - Where the load is above 100 %: the transformer gives more than its plate allows, and burns out in the end; find
//!   what draws too much: a shorted coil, a cable, something added.
//!
//! # Example
//!
//! Arithmetic: 24 V and 1.5 A of 40 VA.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::transformer_load::FORMULA;
//! let load = formula.compute_typed(&["24 V", "1.5 A", "40 VA"])?;
//! assert_eq!(load.display(formula.result).digits(2).to_string(), "90 %");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The definition of apparent power; the plate governs.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "transformer_load",
    group: Group::Electrical,
    sentence: "What a transformer delivers, as a share of what its plate allows.",
    equation: "load = 100 * voltage * current / plate",
    arguments: &[
        Argument::new("voltage", Scale::of(Unit::Volt), "across the secondary, loaded"),
        Argument::new(
            "current",
            Scale::of(Unit::Ampere),
            "out of the secondary, everything on that can be on at once",
        ),
        Argument::new("plate", Scale::of(Unit::VoltAmpere), "on the transformer's plate"),
    ],
    result: Scale::of(Unit::Percent),
    range: "One secondary. Over 100 % is over the plate. A clamp shows small currents poorly: ten turns of \
            the wire through it show ten times the current.",
    warnings: &[Warning {
        when: "the load is above 100 %",
        reason: "the transformer gives more than its plate allows, and burns out in the end",
        help: "find what draws too much: a shorted coil, a cable, something added",
        applies: |_, load| load > 100.0,
    }],
    example: &["24 V", "1.5 A", "40 VA"],
    references: &["The definition of apparent power; the plate governs."],
    compute: |numbers| {
        let [voltage, current, plate] = each(numbers);
        not_negative(voltage, "the voltage", "read it without its sign")?;
        not_negative(current, "the current", "read it without its sign")?;
        positive(plate, "the power on the plate")?;
        Ok(100.0 * voltage * current / plate)
    },
};
