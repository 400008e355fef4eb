//! The gas that an orifice drilled with a numbered drill passes.
//!
//! # Equation
//!
//! `flow = 1658.5 * area * coefficient * sqrt(pressure / specific_gravity)`, in ft³/h, in² (of the drill's diameter)
//! and in.w.c..
//!
//! # Arguments
//!
//! - `drill`: the number of the twist drill, 1 to 80; a larger number is a smaller hole.
//! - `pressure`, in.w.c.: of the gas at the orifice: the manifold pressure.
//! - `specific_gravity`: against air: about 0.60 for natural gas, 1.52 for propane; the gas supplier names it.
//! - `coefficient`: how much of the ideal flow the orifice passes; taken as 0.9 where it is not given: the tables of
//!   the fuel gas codes.
//!
//! # Range
//!
//! Whole numbers from 1 to 80. Sea level, a pressure of at most 1 psi, a specific gravity from 0.35 to 2.1, and gas
//! at 60 °F. Spuds pass 0.8 to 0.95 of the ideal flow by their shape; worn and dirty ones differ. The clocked input
//! is the proof, this is the guess. For altitude see `input_at_altitude`.
//!
//! # Example
//!
//! Published: drill 70 passes 2.220 ft³/h of natural gas at 3.5 in.w.c.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::orifice_flow_by_drill::FORMULA;
//! let flow = formula.compute_typed(&["70", "3.5 in.w.c.", "0.60", "0.9"])?;
//! assert_eq!((flow.number_in(formula.result) * 100.0).round(), 222.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - NFPA 54, National Fuel Gas Code, annex E: flow through fixed orifices, with 0.9 for the coefficient.
//! - The factor 1658.5 for ft³/h, in² and in.w.c. (memory); the BCcampus open textbook Plumbing, D-5, appendix 2, is
//!   worked out with it.
//! - ASME B94.11M, twist drills: the number sizes, as machinists' tables print them.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::drills;
use super::formula::{Formula, each};
use super::group::Group;
use super::orifice::flow;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "orifice_flow_by_drill",
    group: Group::Gas,
    sentence: "The gas that an orifice drilled with a numbered drill passes.",
    equation: "flow = 1658.5 * area * coefficient * sqrt(pressure / specific_gravity)",
    arguments: &[
        Argument::new(
            "drill",
            Scale::of(Unit::Number),
            "the number of the twist drill, 1 to 80; a larger number is a smaller hole",
        )
        .drilled(),
        Argument::new(
            "pressure",
            Scale::of(Unit::InchWaterColumn),
            "of the gas at the orifice: the manifold pressure",
        ),
        Argument::new(
            "specific_gravity",
            Scale::of(Unit::Number),
            "against air: about 0.60 for natural gas, 1.52 for propane; the gas supplier names it",
        ),
        Argument::new(
            "coefficient",
            Scale::of(Unit::Number),
            "how much of the ideal flow the orifice passes",
        )
        .or(0.9, "the tables of the fuel gas codes"),
    ],
    result: Scale::of(Unit::CubicFootPerHour),
    range: "Whole numbers from 1 to 80. Sea level, a pressure of at most 1 psi, a specific gravity from \
            0.35 to 2.1, and gas at 60 °F. Spuds pass 0.8 to 0.95 of the ideal flow by their shape; worn \
            and dirty ones differ. The clocked input is the proof, this is the guess. For altitude see \
            `input_at_altitude`.",
    warnings: &[],
    example: &["70", "3.5 in.w.c.", "0.60", "0.9"],
    references: &[
        "NFPA 54, National Fuel Gas Code, annex E: flow through fixed orifices, with 0.9 for the coefficient.",
        "The factor 1658.5 for ft³/h, in² and in.w.c. (memory); the BCcampus open textbook Plumbing, D-5, \
         appendix 2, is worked out with it.",
        "ASME B94.11M, twist drills: the number sizes, as machinists' tables print them.",
    ],
    compute: |numbers| {
        let [drill, pressure, specific_gravity, coefficient] = each(numbers);
        flow(drills::diameter(drill)?, pressure, specific_gravity, coefficient)
    },
};
