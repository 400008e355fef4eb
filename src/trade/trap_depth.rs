//! How far below the drain the outlet of a trap must lie to keep its water against a suction.
//!
//! # Equation
//!
//! `depth = |suction| + margin`
//!
//! # Arguments
//!
//! - `suction`, in.w.c.: at the drain, blower or inducer at its fastest, with or without its minus sign.
//! - `margin`, in: how much lower than the suction lifts; taken as 1 in where it is not given: common practice.
//!
//! # Range
//!
//! Height from the drain's connection down to the trap's outlet, so that what the suction lifts stays out of the pan;
//! common practice makes the seal below that outlet at least half as deep. Up to 30 in.w.c.; an inch of water column is
//! an inch of water. The maker's own trap and instructions govern, and local codes.
//!
//! # Example
//!
//! Arithmetic: 0.9 in.w.c. of suction and an inch to spare.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::trap_depth::FORMULA;
//! let depth = formula.compute_typed(&["-0.9 in.w.c.", "1 in"])?;
//! assert_eq!(depth.display(formula.result).digits(2).to_string(), "1.9 in");
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Common practice: lower than the suction lifts by an inch.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, not_negative};
use super::group::Group;
use super::unfit::Unfit;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "trap_depth",
    group: Group::Condensate,
    sentence: "How far below the drain the outlet of a trap must lie to keep its water against a suction.",
    equation: "depth = |suction| + margin",
    arguments: &[
        Argument::new(
            "suction",
            Scale::of(Unit::InchWaterColumn),
            "at the drain, blower or inducer at its fastest, with or without its minus sign",
        ),
        Argument::new(
            "margin",
            Scale::of(Unit::Inch),
            "how much lower than the suction lifts",
        )
        .or(1.0, "common practice"),
    ],
    result: Scale::of(Unit::Inch),
    range: "Height from the drain's connection down to the trap's outlet, so that what the suction lifts \
            stays out of the pan; common practice makes the seal below that outlet at least half as deep. \
            Up to 30 in.w.c.; an inch of water column is an inch of water. The maker's own trap and \
            instructions govern, and local codes.",
    warnings: &[],
    example: &["-0.9 in.w.c.", "1 in"],
    references: &["Common practice: lower than the suction lifts by an inch."],
    compute: |numbers| {
        let [suction, margin]: [f64; 2] = each(numbers);
        not_negative(margin, "the margin", "give how much lower the outlet is to be")?;
        let suction = suction.abs();
        if suction > 30.0 {
            return Err(Unfit::new(
                format!("{suction} in.w.c. is no suction of a furnace or an air handler"),
                "check the unit and the decimal point",
            ));
        }
        Ok(suction + margin)
    },
};
