//! The propane that a smooth tube carries at an allowed pressure drop.
//!
//! # Equation
//!
//! `flow = (19.17 * inside_diameter * (pressure_drop / (1.2462 * length))^0.206)^(1 / 0.381)`, in ft³/h, in, in.w.c.
//! and ft.
//!
//! # Arguments
//!
//! - `inside_diameter`, in: of the tube itself, not its nominal size.
//! - `length`, ft: of the tube, to the farthest appliance.
//! - `pressure_drop`, in.w.c.: the drop that is allowed.
//!
//! # Range
//!
//! Smooth metal tubing of 1/4 to 4 in inside, supply pressure below 1.5 psi, propane of specific gravity 1.50. Its
//! maker or its standard names the inside diameter. Codes' tables go by copper of type K: 0.402 in for nominal 3/8,
//! 0.527 in for 1/2, 0.652 in for 5/8, 0.745 in for 3/4, 0.995 in for 1. The length is the whole way from the meter or regulator to the farthest appliance, with allowance for
//! fittings where there are many. Corrugated tubing has its maker's own tables. Pipe is sized and laid by licensed
//! fitters.
//!
//! # Warnings
//!
//! - Where more than 3 in.w.c. are lost: appliances at the end of the pipe may starve; size for 0.3 to 0.5 in.w.c. in
//!   low-pressure pipe (common practice).
//!
//! # Example
//!
//! Computed: 10 ft of tube with 0.527 in inside carry 76 ft³/h at a drop of 0.5 in.w.c.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::gas_tube_capacity_propane::FORMULA;
//! let flow = formula.compute_typed(&["0.527 in", "10 ft", "0.5 in.w.c."])?;
//! assert_eq!(flow.number_in(formula.result).round(), 76.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 402.4, and NFPA 54: the low-pressure equation, with Cr 0.6094 for natural gas and
//!   1.2462 for propane.
//! - ASTM B88: copper tube; the codes' tables for copper go by the inside diameter of type K (memory).

use super::formula::{Formula, each};
use super::gas_pipe::{PROPANE, capacity, tube};
use super::gas_tube_capacity_natural;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "gas_tube_capacity_propane",
    sentence: "The propane that a smooth tube carries at an allowed pressure drop.",
    equation: "flow = (19.17 * inside_diameter * (pressure_drop / (1.2462 * length))^0.206)^(1 / 0.381)",
    range: "Smooth metal tubing of 1/4 to 4 in inside, supply pressure below 1.5 psi, propane of specific \
            gravity 1.50. Its maker or its standard names the inside diameter. Codes' tables go by copper of type K: 0.402 in \
            for nominal 3/8, 0.527 in for 1/2, 0.652 in for 5/8, 0.745 in for 3/4, 0.995 in for 1. The length is the whole way from the meter or \
            regulator to the farthest appliance, with allowance for fittings where there are many. Corrugated \
            tubing has its maker's own tables. Pipe is sized and laid by licensed fitters.",
    compute: |numbers| {
        let [inside_diameter, length, pressure_drop] = each(numbers);
        capacity(tube(inside_diameter)?, length, pressure_drop, PROPANE)
    },
    ..gas_tube_capacity_natural::FORMULA
};
