//! The heat input of a burner, clocked at a meter that is not compensated.
//!
//! # Equation
//!
//! `input = 3600 / time * dial * heating_value * correction`, in BTU/h, s, ft³ and BTU/ft³; the correction is that of
//! `gas_volume_correction`.
//!
//! # Arguments
//!
//! - `dial`, ft³: the gas that went through the meter: the dial's size times its turns.
//! - `time`, s: how long that took; what 0.5 s more or less does is told with the result: a steady eye and a stop
//!   watch.
//! - `heating_value`, BTU/ft³: the heat in a standard cubic foot, at 60 °F and 14.73 psia; the gas supplier names it.
//! - `pressure`, in.w.c.: of the gas in the meter, above the air around it.
//! - `temperature`, °F: of the gas in the meter: outdoors, nearly that of the air.
//! - `altitude`, ft: above sea level.
//!
//! # Range
//!
//! Steady fire with every other gas appliance off, pilots included. Where the supplier names the heat of gas as
//! metered at that place, `input_from_meter` is right, and a second correction is wrong. For a meter that compensates
//! for temperature, give 60 °F.
//!
//! # Warnings
//!
//! - Where the time is below 25 s: half a second is more than 2 % of it, and hides what an adjustment would change;
//!   time more turns of the dial.
//! - Where the input is above 400000 BTU/h: no furnace of a house burns so much (common practice); look again at the
//!   size of the dial and its turns, and whether other appliances burned.
//! - Where the input is below 10000 BTU/h: no furnace burns so little (common practice); look again at the size of the
//!   dial and its turns, and whether the burner was lit.
//!
//! # Example
//!
//! Arithmetic: 2 ft³ in 72 s at 1025 BTU/ft³ are 102,500 BTU/h by the dial, and 86,852 BTU/h at 5,000 ft, 7 in.w.c.
//! and 60 °F.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::input_from_uncompensated_meter::FORMULA;
//! let input = formula.compute_typed(&["2 ft3", "72 s", "1025 BTU/ft3", "7 in.w.c.", "60 °F", "5000 ft"])?;
//! assert_eq!((input.number_in(formula.result) / 100.0).round(), 868.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Arithmetic: 3600 seconds are an hour.
//! - The gas law; standard gas of the United States trade: 60 °F and 14.73 psia.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;
use super::metered::{SLIP, SLIP_BECAUSE, TOO_LITTLE, TOO_MUCH, TOO_SHORT, correction};

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "input_from_uncompensated_meter",
    group: Group::Gas,
    sentence: "The heat input of a burner, clocked at a meter that is not compensated.",
    equation: "input = 3600 / time * dial * heating_value * correction",
    arguments: &[
        Argument::new(
            "dial",
            Scale::of(Unit::CubicFoot),
            "the gas that went through the meter: the dial's size times its turns",
        ),
        Argument::new("time", Scale::of(Unit::Second), "how long that took").slips(SLIP, SLIP_BECAUSE),
        Argument::new(
            "heating_value",
            Scale::of(Unit::BtuPerCubicFoot),
            "the heat in a standard cubic foot, at 60 °F and 14.73 psia; the gas supplier names it",
        ),
        Argument::new(
            "pressure",
            Scale::of(Unit::InchWaterColumn),
            "of the gas in the meter, above the air around it",
        ),
        Argument::new(
            "temperature",
            Scale::of(Unit::DegreeFahrenheit),
            "of the gas in the meter: outdoors, nearly that of the air",
        ),
        Argument::new("altitude", Scale::of(Unit::Foot), "above sea level"),
    ],
    result: Scale::of(Unit::BtuPerHour),
    range: "Steady fire with every other gas appliance off, pilots included. Where the supplier names the \
            heat of gas as metered at that place, `input_from_meter` is right, and a second correction is \
            wrong. For a meter that compensates for temperature, give 60 °F.",
    warnings: &[TOO_SHORT, TOO_MUCH, TOO_LITTLE],
    example: &["2 ft3", "72 s", "1025 BTU/ft3", "7 in.w.c.", "60 °F", "5000 ft"],
    references: &[
        "Arithmetic: 3600 seconds are an hour.",
        "The gas law; standard gas of the United States trade: 60 °F and 14.73 psia.",
    ],
    compute: |numbers| {
        let [dial, time, heating_value, pressure, temperature, altitude] = each(numbers);
        positive(dial, "the gas on the dial")?;
        positive(time, "the time")?;
        positive(heating_value, "the heating value")?;
        Ok(3600.0 / time * dial * heating_value * correction(pressure, temperature, altitude)?)
    },
};
