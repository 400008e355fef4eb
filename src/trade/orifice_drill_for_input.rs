//! The numbered drill whose hole comes nearest to a wanted input.
//!
//! # Equation
//!
//! `drill = the number whose diameter lies nearest to orifice_diameter_for_input`, see `orifice_diameter_for_input`.
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
//! Diameters from drill 80 (0.0135 in) to drill 1 (0.2280 in), give or take 2 %. Sea level, a pressure of at most 1
//! psi, a specific gravity from 0.35 to 2.1, and gas at 60 °F. Spuds pass 0.8 to 0.95 of the ideal flow by their
//! shape; worn and dirty ones differ. The clocked input is the proof, this is the guess. For altitude see
//! `input_at_altitude`. Only the maker's parts go into a burner.
//!
//! # Warnings
//!
//! - Where the drill gives an input more than 3 % off: no numbered drill fits; find the size in the maker's list; a
//!   fraction of an inch or a metric size may lie nearer.
//!
//! # Example
//!
//! Arithmetic: 75,000 BTU/h of natural gas through four orifices at 3.5 in.w.c. want 0.0814 in; the nearest is drill
//! 46, with 0.0810 in.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::orifice_drill_for_input::FORMULA;
//! let drill = formula.compute_typed(&["75000 BTU/h", "4", "1000 BTU/ft3", "3.5 in.w.c.", "0.60", "0.9"])?;
//! assert_eq!(drill.number_in(formula.result), 46.0);
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
use super::orifice::{diameter_for_input, flow};
use super::warning::Warning;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "orifice_drill_for_input",
    group: Group::Gas,
    sentence: "The numbered drill whose hole comes nearest to a wanted input.",
    equation: "drill = the number whose diameter lies nearest to orifice_diameter_for_input",
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
    result: Scale::of(Unit::Number),
    range: "Diameters from drill 80 (0.0135 in) to drill 1 (0.2280 in), give or take 2 %. Sea level, a \
            pressure of at most 1 psi, a specific gravity from 0.35 to 2.1, and gas at 60 °F. Spuds pass \
            0.8 to 0.95 of the ideal flow by their shape; worn and dirty ones differ. The clocked input is \
            the proof, this is the guess. For altitude see `input_at_altitude`. Only the maker's parts go \
            into a burner.",
    warnings: &[Warning {
        when: "the drill gives an input more than 3 % off",
        reason: "no numbered drill fits",
        help: "find the size in the maker's list; a fraction of an inch or a metric size may lie nearer",
        applies: |numbers, drill| {
            let [
                input,
                orifices,
                heating_value,
                pressure,
                specific_gravity,
                coefficient,
            ] = each(numbers);
            let given = drills::diameter(drill)
                .and_then(|diameter| flow(diameter, pressure, specific_gravity, coefficient));
            given.is_ok_and(|flow| (flow * orifices * heating_value / input - 1.0).abs() > 0.03)
        },
    }],
    example: &["75000 BTU/h", "4", "1000 BTU/ft3", "3.5 in.w.c.", "0.60", "0.9"],
    references: &[
        "NFPA 54, National Fuel Gas Code, annex E: flow through fixed orifices, with 0.9 for the coefficient.",
        "The factor 1658.5 for ft³/h, in² and in.w.c. (memory); the BCcampus open textbook Plumbing, D-5, \
         appendix 2, is worked out with it.",
        "ASME B94.11M, twist drills: the number sizes, as machinists' tables print them.",
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
        drills::nearest(diameter_for_input(
            input,
            orifices,
            heating_value,
            pressure,
            specific_gravity,
            coefficient,
        )?)
    },
};
