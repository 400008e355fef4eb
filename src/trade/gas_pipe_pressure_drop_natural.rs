//! The pressure that a steel pipe takes from the natural gas that flows in it.
//!
//! # Equation
//!
//! `pressure_drop = 0.6094 * length * (flow^0.381 / (19.17 * inside_diameter))^(1 / 0.206)`, in in.w.c., ft, ft³/h
//! and in.
//!
//! # Arguments
//!
//! - `size`, in: the nominal size of the pipe: 0.5, 0.75, 1, 1.25 …, or DN 15, DN 20, DN 25, DN 32 ….
//! - `length`, ft: of the pipe, to the farthest appliance.
//! - `flow`, ft³/h: the gas that all appliances on it take together: input / heating value.
//!
//! # Range
//!
//! Steel pipe of schedule 40, nominal 1/4 to 4 in, supply pressure below 1.5 psi, natural gas of specific gravity
//! 0.60. The length is the whole way from the meter or regulator to the farthest appliance, with allowance for
//! fittings where there are many. Tubing, and pipe of another schedule, have their own tables. Pipe is sized and laid
//! by licensed fitters.
//!
//! # Warnings
//!
//! - Where more than 3 in.w.c. are lost: appliances at the end of the pipe may starve; size for 0.3 to 0.5 in.w.c. in
//!   low-pressure pipe (common practice).
//!
//! # Example
//!
//! Arithmetic: 100 ft³/h through 60 ft of three-quarter-inch pipe take 0.28 in.w.c.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::gas_pipe_pressure_drop_natural::FORMULA;
//! let drop = formula.compute_typed(&["0.75 in", "60 ft", "100 ft3/h"])?;
//! assert_eq!((drop.number_in(formula.result) * 100.0).round(), 28.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 402.4, and NFPA 54: the low-pressure equation, with Cr 0.6094 for natural gas and
//!   1.2462 for propane.
//! - ASME B36.10M: inside diameters of schedule 40, as the codes' tables print them.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each};
use super::gas_pipe::{NATURAL, inside_diameter, pressure_drop};
use super::group::Group;
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "gas_pipe_pressure_drop_natural",
    group: Group::Gas,
    sentence: "The pressure that a steel pipe takes from the natural gas that flows in it.",
    equation: "pressure_drop = 0.6094 * length * (flow^0.381 / (19.17 * inside_diameter))^(1 / 0.206)",
    arguments: &[
        Argument::new(
            "size",
            Scale::of(Unit::Inch),
            "the nominal size of the pipe: 0.5, 0.75, 1, 1.25 …, or DN 15, DN 20, DN 25, DN 32 …",
        ),
        Argument::new(
            "length",
            Scale::of(Unit::Foot),
            "of the pipe, to the farthest appliance",
        ),
        Argument::new(
            "flow",
            Scale::of(Unit::CubicFootPerHour),
            "the gas that all appliances on it take together: input / heating value",
        ),
    ],
    result: Scale::of(Unit::InchWaterColumn),
    range: "Steel pipe of schedule 40, nominal 1/4 to 4 in, supply pressure below 1.5 psi, natural gas of \
            specific gravity 0.60. The length is the whole way from the meter or regulator to the farthest \
            appliance, with allowance for fittings where there are many. Tubing, and pipe of another \
            schedule, have their own tables. Pipe is sized and laid by licensed fitters.",
    warnings: &[Warning {
        when: "more than 3 in.w.c. are lost",
        reason: "appliances at the end of the pipe may starve",
        help: "size for 0.3 to 0.5 in.w.c. in low-pressure pipe (common practice)",
        applies: |_, drop| drop > 3.0,
    }],
    example: &["0.75 in", "60 ft", "100 ft3/h"],
    references: &[
        "International Fuel Gas Code, 402.4, and NFPA 54: the low-pressure equation, with Cr 0.6094 for \
         natural gas and 1.2462 for propane.",
        "ASME B36.10M: inside diameters of schedule 40, as the codes' tables print them.",
    ],
    compute: |numbers| {
        let [size, length, flow] = each(numbers);
        pressure_drop(inside_diameter(size)?, length, flow, NATURAL)
    },
};
