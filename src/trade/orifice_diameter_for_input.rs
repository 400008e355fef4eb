//! The diameter of orifice that gives a wanted input.
//!
//! # Equation
//!
//! `diameter = sqrt(4 / pi * flow / (1658.5 * coefficient * sqrt(pressure / specific_gravity))), flow = input /
//! orifices / heating_value`, in inches, ft³/h, BTU/h, BTU/ft³ and in.w.c..
//!
//! # Arguments
//!
//! - `input`, BTU/h: of the whole burner.
//! - `orifices`: how many share it.
//! - `heating_value`, BTU/ft³: of the gas; the gas supplier names it.
//! - `pressure`, in.w.c.: of the gas at the orifice: the manifold pressure.
//! - `specific_gravity`: against air: about 0.60 for natural gas, 1.52 for propane; the gas supplier names it.
//! - `coefficient`: how much of the ideal flow the orifice passes; taken as 0.9 where it is not given: the tables of
//!   the fuel gas codes.
//!
//! # Range
//!
//! Sea level, a pressure of at most 1 psi, a specific gravity from 0.35 to 2.1, and gas at 60 °F. Spuds pass 0.8 to
//! 0.95 of the ideal flow by their shape; worn and dirty ones differ. The clocked input is the proof, this is the
//! guess. For altitude see `input_at_altitude`. Only the maker's parts go into a burner.
//!
//! # Example
//!
//! Arithmetic: 75,000 BTU/h of natural gas through four orifices at 3.5 in.w.c. want 0.0814 in.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::orifice_diameter_for_input::FORMULA;
//! let diameter = formula.compute_typed(&["75000 BTU/h", "4", "1000 BTU/ft3", "3.5 in.w.c.", "0.60", "0.9"])?;
//! assert_eq!((diameter.number_in(formula.result) * 1e4).round(), 814.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - NFPA 54, National Fuel Gas Code, annex E: flow through fixed orifices, with 0.9 for the coefficient.
//! - The factor 1658.5 for ft³/h, in² and in.w.c. (memory); the BCcampus open textbook Plumbing, D-5, appendix 2, is
//!   worked out with it.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each};
use super::group::Group;
use super::orifice::diameter_for_input;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "orifice_diameter_for_input",
    group: Group::Gas,
    sentence: "The diameter of orifice that gives a wanted input.",
    equation: "diameter = sqrt(4 / pi * flow / (1658.5 * coefficient * sqrt(pressure / specific_gravity))), \
               flow = input / orifices / heating_value",
    arguments: &[
        Argument::new("input", Scale::of(Unit::BtuPerHour), "of the whole burner"),
        Argument::new("orifices", Scale::of(Unit::Number), "how many share it"),
        Argument::new(
            "heating_value",
            Scale::of(Unit::BtuPerCubicFoot),
            "of the gas; the gas supplier names it",
        ),
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
    result: Scale::of(Unit::Inch),
    range: "Sea level, a pressure of at most 1 psi, a specific gravity from 0.35 to 2.1, and gas at 60 °F. \
            Spuds pass 0.8 to 0.95 of the ideal flow by their shape; worn and dirty ones differ. The \
            clocked input is the proof, this is the guess. For altitude see `input_at_altitude`. Only the \
            maker's parts go into a burner.",
    warnings: &[],
    example: &["75000 BTU/h", "4", "1000 BTU/ft3", "3.5 in.w.c.", "0.60", "0.9"],
    references: &[
        "NFPA 54, National Fuel Gas Code, annex E: flow through fixed orifices, with 0.9 for the coefficient.",
        "The factor 1658.5 for ft³/h, in² and in.w.c. (memory); the BCcampus open textbook Plumbing, D-5, \
         appendix 2, is worked out with it.",
    ],
    compute: |numbers| {
        let [
            input,
            orifices,
            heating_value,
            pressure,
            specific_gravity,
            coefficient,
        ] = each(numbers);
        diameter_for_input(
            input,
            orifices,
            heating_value,
            pressure,
            specific_gravity,
            coefficient,
        )
    },
};
