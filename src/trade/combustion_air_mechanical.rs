//! The air that a fan must bring in where it supplies the combustion air.
//!
//! # Equation
//!
//! `airflow = 0.35 * input / 1000`, in CFM and BTU/h.
//!
//! # Arguments
//!
//! - `input`, BTU/h: of all fuel-burning appliances in the space together.
//!
//! # Range
//!
//! Outdoor air, beside what any exhaust fan takes; each appliance is interlocked so that its main burner fires only
//! while the fan runs. The local code and the maker's instructions govern.
//!
//! # Example
//!
//! Arithmetic: 100,000 BTU/h want 35 CFM.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::combustion_air_mechanical::FORMULA;
//! let airflow = formula.compute_typed(&["100000 BTU/h"])?;
//! assert_eq!(airflow.number_in(formula.result).round(), 35.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - International Fuel Gas Code, 304.9, and NFPA 54, National Fuel Gas Code, in the same terms.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "combustion_air_mechanical",
    group: Group::CombustionAir,
    sentence: "The air that a fan must bring in where it supplies the combustion air.",
    equation: "airflow = 0.35 * input / 1000",
    arguments: &[Argument::new(
        "input",
        Scale::of(Unit::BtuPerHour),
        "of all fuel-burning appliances in the space together",
    )],
    result: Scale::of(Unit::CubicFootPerMinute),
    range: "Outdoor air, beside what any exhaust fan takes; each appliance is interlocked so that its main \
            burner fires only while the fan runs. The local code and the maker's instructions govern.",
    warnings: &[],
    example: &["100000 BTU/h"],
    references: &[
        "International Fuel Gas Code, 304.9, and NFPA 54, National Fuel Gas Code, in the same terms.",
    ],
    compute: |numbers| {
        let [input] = each(numbers);
        positive(input, "the input")?;
        Ok(0.35 * input / 1000.0)
    },
};
