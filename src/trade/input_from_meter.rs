//! The heat input of a burner, clocked at the gas meter.
//!
//! # Equation
//!
//! `input = 3600 / time * dial * heating_value`, in BTU/h, s, ft³ and BTU/ft³.
//!
//! # Arguments
//!
//! - `dial`, ft³: the gas that went through the meter: the dial's size times its turns.
//! - `time`, s: how long that took; what 0.5 s more or less does is told with the result: a steady eye and a stop
//!   watch.
//! - `heating_value`, BTU/ft³: the heat in the gas as it is metered; the gas supplier names it.
//!
//! # Range
//!
//! Steady fire with every other gas appliance off, pilots included; metered gas is not corrected for its temperature or
//! for altitude. One second in a half-minute turn is three per cent: time several turns.
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
//! Arithmetic: half a cubic foot in 29 s at 1000 BTU/ft³ is 62,069 BTU/h.
//!
//! ```
//! # fn main() -> Result<(), proofwalk::trade::Unfit> {
//! let formula = &proofwalk::trade::input_from_meter::FORMULA;
//! let input = formula.compute_typed(&["0.5 ft3", "29 s", "1000 BTU/ft3"])?;
//! assert_eq!(input.number_in(formula.result).round(), 62_069.0);
//! # Ok(())
//! # }
//! ```
//!
//! # References
//!
//! - Arithmetic: 3600 seconds are an hour.

use crate::measure::{Scale, Unit};

use super::argument::Argument;
use super::formula::{Formula, each, positive};
use super::group::Group;
use super::metered::{SLIP, SLIP_BECAUSE, TOO_LITTLE, TOO_MUCH, TOO_SHORT};

/// The formula.
pub static FORMULA: Formula = Formula {
    name: "input_from_meter",
    group: Group::Gas,
    sentence: "The heat input of a burner, clocked at the gas meter.",
    equation: "input = 3600 / time * dial * heating_value",
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
            "the heat in the gas as it is metered; the gas supplier names it",
        ),
    ],
    result: Scale::of(Unit::BtuPerHour),
    range: "Steady fire with every other gas appliance off, pilots included; metered gas is not corrected for its \
            temperature or for altitude. One second in a half-minute turn is three per cent: time several turns.",
    warnings: &[TOO_SHORT, TOO_MUCH, TOO_LITTLE],
    example: &["0.5 ft3", "29 s", "1000 BTU/ft3"],
    references: &["Arithmetic: 3600 seconds are an hour."],
    compute: |numbers| {
        let [dial, time, heating_value] = each(numbers);
        positive(dial, "the gas on the dial")?;
        positive(time, "the time")?;
        positive(heating_value, "the heating value")?;
        Ok(3600.0 / time * dial * heating_value)
    },
};
