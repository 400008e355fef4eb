//! The smallest steel pipe that carries the natural gas wanted at an allowed pressure drop.
//!
//! # Equation
//!
//! `inside_diameter = flow^0.381 / (19.17 * (pressure_drop / (0.6094 * length))^0.206)`, in inches, ft³/h, in.w.c.
//! and ft; then the next nominal size that is no smaller inside.
//!
//! # Arguments
//!
//! - `flow`, ft³/h: the gas that all appliances on it take together: input / heating value.
//! - `length`, ft: of the pipe, to the farthest appliance.
//! - `pressure_drop`, in.w.c.: the drop that is allowed.
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
//! Arithmetic: 100 ft³/h over 60 ft at a drop of 0.5 in.w.c. want 0.73 in inside: nominal 0.75 in.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::gas_pipe_size_natural::FORMULA;
//! let size = formula.compute_typed(&["100 ft3/h", "60 ft", "0.5 in.w.c."])?;
//! assert_eq!((size.number_in(formula.result) * 100.0).round(), 75.0);
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
use super::doubts;
use super::formula::{Formula, each};
use super::gas_pipe::{NATURAL, diameter, nominal_size};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "gas_pipe_size_natural",
    group: Group::Gas,
    sentence: "The smallest steel pipe that carries the natural gas wanted at an allowed pressure drop.",
    equation: "inside_diameter = flow^0.381 / (19.17 * (pressure_drop / (0.6094 * length))^0.206)",
    arguments: &[
        Argument::new(
            "flow",
            Scale::of(Unit::CubicFootPerHour),
            "the gas that all appliances on it take together: input / heating value",
        ),
        Argument::new(
            "length",
            Scale::of(Unit::Foot),
            "of the pipe, to the farthest appliance",
        ),
        Argument::new(
            "pressure_drop",
            Scale::of(Unit::InchWaterColumn),
            "the drop that is allowed",
        ),
    ],
    result: Scale::of(Unit::Inch),
    range: "Steel pipe of schedule 40, nominal 1/4 to 4 in, supply pressure below 1.5 psi, natural gas of \
            specific gravity 0.60. The length is the whole way from the meter or regulator to the farthest \
            appliance, with allowance for fittings where there are many. Tubing, and pipe of another \
            schedule, have their own tables. Pipe is sized and laid by licensed fitters.",
    warnings: &[doubts::STARVING],
    example: &["100 ft3/h", "60 ft", "0.5 in.w.c."],
    references: &[
        "International Fuel Gas Code, 402.4, and NFPA 54: the low-pressure equation, with Cr 0.6094 for \
         natural gas and 1.2462 for propane.",
        "ASME B36.10M: inside diameters of schedule 40, as the codes' tables print them.",
    ],
    compute: |numbers| {
        let [flow, length, pressure_drop] = each(numbers);
        nominal_size(diameter(flow, length, pressure_drop, NATURAL)?)
    },
};
