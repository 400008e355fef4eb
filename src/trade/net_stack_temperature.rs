//! How much warmer the flue gas leaves than the combustion air came.
//!
//! # Equation
//!
//! `net_stack_temperature = stack - combustion_air`
//!
//! # Arguments
//!
//! - `stack`, °F: the flue gas where its oxygen is measured, at steady state.
//! - `combustion_air`, °F: the air to the burner: the room's, or in the intake pipe of a sealed furnace.
//!
//! # Range
//!
//! A stack that is warmer than its air. Both at steady state, the probe in the middle of the stream.
//!
//! # Warnings
//!
//! - Where the net temperature is above 700 °F: no furnace's flue gas leaves so hot (common practice); look at the probe, the unit and
//!   both readings; if they stand, shut the furnace down and find why.
//!
//! # Example
//!
//! Arithmetic: 430 °F in the stack and 70 °F in the room.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::net_stack_temperature::FORMULA;
//! let net = formula.compute_typed(&["430 °F", "70 °F"])?;
//! assert_eq!(net.display(formula.result).digits(3).to_string(), "360 °F");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The definition.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "net_stack_temperature",
    group: Group::Combustion,
    sentence: "How much warmer the flue gas leaves than the combustion air came.",
    equation: "net_stack_temperature = stack - combustion_air",
    arguments: &[
        Argument::new(
            "stack",
            Scale::of(Unit::DegreeFahrenheit),
            "the flue gas where its oxygen is measured, at steady state",
        ),
        Argument::new(
            "combustion_air",
            Scale::of(Unit::DegreeFahrenheit),
            "the air to the burner: the room's, or in the intake pipe of a sealed furnace",
        ),
    ],
    result: Scale::difference(Unit::DegreeFahrenheit),
    range: "A stack that is warmer than its air. Both at steady state, the probe in the middle of the \
            stream.",
    warnings: &[Warning {
        when: "the net temperature is above 700 °F",
        reason: "no furnace's flue gas leaves so hot (common practice)",
        help: "look at the probe, the unit and both readings; if they stand, shut the furnace down and find why",
        applies: |_, net| net > 700.0,
    }],
    example: &["430 °F", "70 °F"],
    references: &["The definition."],
    compute: |numbers| {
        let [stack, combustion_air]: [f64; 2] = each(numbers);
        positive(stack - combustion_air, "the stack temperature less the air's")?;
        Ok(stack - combustion_air)
    },
};
