//! The diameter of the hole that a numbered drill makes.
//!
//! # Equation
//!
//! `diameter = that of the drill in the table of number sizes`
//!
//! # Arguments
//!
//! - `drill`: the number stamped on the orifice or the drill.
//!
//! # Range
//!
//! Numbers from 80 (0.0135 in) to 1 (0.2280 in). Where a hole is asked for, letters and fractions of an inch may be
//! given as they are: `diameter='letter F'`, `diameter='7/64 in'`.
//!
//! # Example
//!
//! Table: drill 43 is 0.0890 in.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::drill_diameter::FORMULA;
//! let diameter = formula.compute_typed(&["43"])?;
//! assert_eq!(diameter.number_in(formula.result), 0.089);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - ASME B94.11M, twist drills: the number sizes, as machinists' tables print them.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::drills;
use super::formula::{Formula, each};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "drill_diameter",
    group: Group::Gas,
    sentence: "The diameter of the hole that a numbered drill makes.",
    equation: "diameter = that of the drill in the table of number sizes",
    arguments: &[Argument::new(
        "drill",
        Scale::of(Unit::Number),
        "the number stamped on the orifice or the drill",
    )
    .drilled()],
    result: Scale::of(Unit::Inch),
    range: "Numbers from 80 (0.0135 in) to 1 (0.2280 in). Where a hole is asked for, letters and fractions of \
            an inch may be given as they are: `diameter='letter F'`, `diameter='7/64 in'`.",
    warnings: &[],
    example: &["43"],
    references: &["ASME B94.11M, twist drills: the number sizes, as machinists' tables print them."],
    compute: |numbers| {
        let [drill] = each(numbers);
        drills::diameter(drill)
    },
};
