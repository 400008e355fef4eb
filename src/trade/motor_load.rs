//! The current of a motor, as a share of what its plate allows.
//!
//! # Equation
//!
//! `load = 100 * current / plate`
//!
//! # Arguments
//!
//! - `current`, A: as measured in one line, the motor up to speed, doors on.
//! - `plate`, A: on the motor's plate, for the voltage and speed in use.
//!
//! # Range
//!
//! Over 100 % is over the plate: 105 % is 5 % too much. Running current, not that of the start. A clamp reads the
//! current of an electronic motor right only if it shows true RMS.
//!
//! # Warnings
//!
//! - Where the load is above 100 %: the motor gives more than its plate allows, and its windings burn in the end; find
//!   what holds it: the voltage, the bearings, the wheel, the ducts.
//!
//! # Example
//!
//! Arithmetic: 6.3 A on a plate of 6.0 A.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::motor_load::FORMULA;
//! let load = formula.compute_typed(&["6.3 A", "6.0 A"])?;
//! assert_eq!(load.display(formula.result).digits(3).to_string(), "105 %");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The definition; the plate governs.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative, positive};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "motor_load",
    group: Group::Electrical,
    sentence: "The current of a motor, as a share of what its plate allows.",
    equation: "load = 100 * current / plate",
    arguments: &[
        Argument::new(
            "current",
            Scale::of(Unit::Ampere),
            "as measured in one line, the motor up to speed, doors on",
        ),
        Argument::new(
            "plate",
            Scale::of(Unit::Ampere),
            "on the motor's plate, for the voltage and speed in use",
        ),
    ],
    result: Scale::of(Unit::Percent),
    range: "Over 100 % is over the plate: 105 % is 5 % too much. Running current, not that of the start. A \
            clamp reads the current of an electronic motor right only if it shows true RMS.",
    warnings: &[Warning {
        when: "the load is above 100 %",
        reason: "the motor gives more than its plate allows, and its windings burn in the end",
        help: "find what holds it: the voltage, the bearings, the wheel, the ducts",
        applies: |_, load| load > 100.0,
    }],
    example: &["6.3 A", "6.0 A"],
    references: &["The definition; the plate governs."],
    compute: |numbers| {
        let [current, plate] = each(numbers);
        not_negative(current, "the current", "read it without its sign")?;
        positive(plate, "the current on the plate")?;
        Ok(100.0 * current / plate)
    },
};
