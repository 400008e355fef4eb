//! The propane that a steel pipe carries at an allowed pressure drop.
//!
//! # Equation
//!
//! `flow = (19.17 * inside_diameter * (pressure_drop / (1.2462 * length))^0.206)^(1 / 0.381)`, in ft³/h, in, in.w.c.
//! and ft.
//!
//! # Arguments
//!
//! - `size`, in: the nominal size of the pipe: 0.5, 0.75, 1, 1.25 …, or DN 15, DN 20, DN 25, DN 32 ….
//! - `length`, ft: of the pipe, to the farthest appliance.
//! - `pressure_drop`, in.w.c.: the drop that is allowed.
//!
//! # Range
//!
//! Steel pipe of schedule 40, nominal 1/4 to 4 in, supply pressure below 1.5 psi, propane of specific gravity 1.50.
//! The length is the whole way from the meter or regulator to the farthest appliance, with allowance for fittings
//! where there are many. Tubing, and pipe of another schedule, have their own tables. Pipe is sized and laid by
//! licensed fitters.
//!
//! # Warnings
//!
//! - Where more than 3 in.w.c. are lost: appliances at the end of the pipe may starve; size for 0.3 to 0.5 in.w.c. in
//!   low-pressure pipe (common practice).
//!
//! # Example
//!
//! Arithmetic: 20 ft of half-inch pipe carry 81 ft³/h at a drop of 0.5 in.w.c.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::gas_pipe_capacity_propane::FORMULA;
//! let flow = formula.compute_typed(&["0.5 in", "20 ft", "0.5 in.w.c."])?;
//! assert_eq!(flow.number_in(formula.result).round(), 81.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 402.4, and NFPA 54: the low-pressure equation, with Cr 0.6094 for natural gas and
//!   1.2462 for propane.
//! - ASME B36.10M: inside diameters of schedule 40, as the codes' tables print them.

use super::formula::{Formula, each};
use super::gas_pipe::{PROPANE, capacity, inside_diameter};
use super::gas_pipe_capacity_natural;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "gas_pipe_capacity_propane",
    sentence: "The propane that a steel pipe carries at an allowed pressure drop.",
    equation: "flow = (19.17 * inside_diameter * (pressure_drop / (1.2462 * length))^0.206)^(1 / 0.381)",
    range: "Steel pipe of schedule 40, nominal 1/4 to 4 in, supply pressure below 1.5 psi, propane of \
            specific gravity 1.50. The length is the whole way from the meter or regulator to the farthest \
            appliance, with allowance for fittings where there are many. Tubing, and pipe of another \
            schedule, have their own tables. Pipe is sized and laid by licensed fitters.",
    compute: |numbers| {
        let [size, length, pressure_drop] = each(numbers);
        capacity(inside_diameter(size)?, length, pressure_drop, PROPANE)
    },
    ..gas_pipe_capacity_natural::FORMULA
};
