//! The most current that a transformer may deliver.
//!
//! # Equation
//!
//! `current = plate / voltage`
//!
//! # Arguments
//!
//! - `plate`, VA: on the transformer's plate.
//! - `voltage`, V: of the secondary, as its plate has it; taken as 24 V where it is not given: the control voltage of
//!   furnaces.
//!
//! # Range
//!
//! One secondary. A fuse or breaker on the transformer may allow less.
//!
//! # Example
//!
//! Computed: 50 VA at 24 V.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::transformer_secondary_current::FORMULA;
//! let current = formula.compute_typed(&["50 VA", "24 V"])?;
//! assert_eq!(current.display(formula.result).digits(3).to_string(), "2.08 A");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The definition of apparent power.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "transformer_secondary_current",
    group: Group::Electrical,
    sentence: "The most current that a transformer may deliver.",
    equation: "current = plate / voltage",
    arguments: &[
        Argument::new("plate", Scale::of(Unit::VoltAmpere), "on the transformer's plate"),
        Argument::new(
            "voltage",
            Scale::of(Unit::Volt),
            "of the secondary, as its plate has it",
        )
        .or(24.0, "the control voltage of furnaces"),
    ],
    result: Scale::of(Unit::Ampere),
    range: "One secondary. A fuse or breaker on the transformer may allow less.",
    warnings: &[],
    example: &["50 VA", "24 V"],
    references: &["The definition of apparent power."],
    compute: |numbers| {
        let [plate, voltage] = each(numbers);
        positive(plate, "the power on the plate")?;
        positive(voltage, "the voltage")?;
        Ok(plate / voltage)
    },
};
