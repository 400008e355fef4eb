//! How much standard air the blower moves, which is how blower tables count it.
//!
//! # Equation
//!
//! `airflow = output / (1.08 * rise)`, in CFM of standard air (0.075 lb/ft³), BTU/h and °F.
//!
//! # Arguments
//!
//! - `output`, BTU/h: the heat that goes into the air: the input as clocked, times the efficiency.
//! - `rise`, °F: from the return air to the supply air, at steady state.
//!
//! # Range
//!
//! A steady fire and air all of one temperature at each probe, both out of sight of the heat exchanger. Standard air
//! is a way to count mass: at 5,000 ft the same mass is a fifth more in volume, see `airflow_from_rise`.
//!
//! # Warnings
//!
//! - Where the rise is below 20 °F: two thermometers that are each off by a degree move the result by a tenth and
//!   more; check both probes at steady state, and check the input.
//!
//! # Example
//!
//! Arithmetic: 80,000 BTU/h and a rise of 50 °F are 1,481 CFM.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::standard_airflow_from_rise::FORMULA;
//! let airflow = formula.compute_typed(&["80000 BTU/h", "50 °F"])?;
//! assert_eq!(airflow.number_in(formula.result).round(), 1_481.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Common practice; 1.08 is 60 min/h times 0.075 lb/ft³ times 0.24 BTU/(lb·°F).

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::doubts;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "standard_airflow_from_rise",
    group: Group::Air,
    sentence: "How much standard air the blower moves, which is how blower tables count it.",
    equation: "airflow = output / (1.08 * rise)",
    arguments: &[
        Argument::new(
            "output",
            Scale::of(Unit::BtuPerHour),
            "the heat that goes into the air: the input as clocked, times the efficiency",
        ),
        Argument::new(
            "rise",
            Scale::difference(Unit::DegreeFahrenheit),
            "from the return air to the supply air, at steady state",
        ),
    ],
    result: Scale::of(Unit::CubicFootPerMinute),
    range: "A steady fire and air all of one temperature at each probe, both out of sight of the heat \
            exchanger. Standard air is a way to count mass: at 5,000 ft the same mass is a fifth more in \
            volume, see `airflow_from_rise`.",
    warnings: &[doubts::SMALL_RISE],
    example: &["80000 BTU/h", "50 °F"],
    references: &["Common practice; 1.08 is 60 min/h times 0.075 lb/ft³ times 0.24 BTU/(lb·°F)."],
    compute: |numbers| {
        let [output, rise] = each(numbers);
        positive(output, "the output")?;
        positive(rise, "the temperature rise")?;
        Ok(output / (1.08 * rise))
    },
};
