//! How much air the blower moves, from the heat that goes into it and how much warmer it gets.
//!
//! # Equation
//!
//! `airflow = output / (60 * 0.24 * density * rise)`, in CFM, BTU/h, lb/ft³ and °F; the density is that of
//! `air_density`.
//!
//! # Arguments
//!
//! - `output`, BTU/h: the heat that goes into the air: the input as clocked, times the efficiency.
//! - `rise`, °F: from the return air to the supply air, at steady state.
//! - `altitude`, ft: above sea level.
//! - `temperature`, °F: of the air where its volume is wanted: the return air, for what the blower moves.
//!
//! # Range
//!
//! A steady fire and air all of one temperature at each probe, both out of sight of the heat exchanger. At 70 °F and
//! sea level the factor is 1.08, the one in common use; it falls with altitude and with heat. Altitude and
//! temperature as for `air_density`.
//!
//! # Warnings
//!
//! - Where the rise is below 20 °F: two thermometers that are each off by a degree move the result by a tenth and
//!   more; check both probes at steady state, and check the input.
//!
//! # Example
//!
//! Arithmetic: 64,000 BTU/h and a rise of 40 °F at 5,000 ft and 70 °F are 1,783 CFM; at sea level they are 1,484.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::airflow_from_rise::FORMULA;
//! let airflow = formula.compute_typed(&["64000 BTU/h", "40 °F", "5000 ft", "70 °F"])?;
//! assert_eq!(airflow.number_in(formula.result).round(), 1_783.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - The heat balance of the air: 0.24 BTU/(lb·°F), the specific heat of dry air, times 60 minutes in the hour.
//! - The density: see `air_density`.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::atmosphere::{SPECIFIC_HEAT, density};
use super::doubts;
use super::formula::{Formula, each, positive};
use super::group::Group;

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "airflow_from_rise",
    group: Group::Air,
    sentence: "How much air the blower moves, from the heat that goes into it and how much warmer it gets.",
    equation: "airflow = output / (60 * 0.24 * density * rise)",
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
        Argument::new("altitude", Scale::of(Unit::Foot), "above sea level"),
        Argument::new(
            "temperature",
            Scale::of(Unit::DegreeFahrenheit),
            "of the air where its volume is wanted: the return air, for what the blower moves",
        ),
    ],
    result: Scale::of(Unit::CubicFootPerMinute),
    range: "A steady fire and air all of one temperature at each probe, both out of sight of the heat \
            exchanger. At 70 °F and sea level the factor is 1.08, the one in common use; it falls with \
            altitude and with heat. Altitude and temperature as for `air_density`.",
    warnings: &[doubts::SMALL_RISE],
    example: &["64000 BTU/h", "40 °F", "5000 ft", "70 °F"],
    references: &[
        "The heat balance of the air: 0.24 BTU/(lb·°F), the specific heat of dry air, times 60 minutes in \
         the hour.",
        "The density: see `air_density`.",
    ],
    compute: |numbers| {
        let [output, rise, altitude, temperature] = each(numbers);
        positive(output, "the output")?;
        positive(rise, "the temperature rise")?;
        Ok(output / (60.0 * SPECIFIC_HEAT * density(altitude, temperature)? * rise))
    },
};
