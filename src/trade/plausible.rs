//! What a number in this work can be at all: a slip of the decimal point or the unit is told before it is computed with.

use crate::measure::{Dimension, Quantity, Scale, Unit};

use super::argument::Argument;
use super::unfit::Unfit;

/// The most and the least of each kind that a house, its meters and its tables know, by far (common practice); a kind that is
/// not named here has no bounds.
#[rustfmt::skip] // one kind a line, so that the table reads as a table
const BOUNDS: &[(Dimension, f64, f64, Unit)] = &[
    (Dimension::Voltage, -1_000.0, 1_000.0, Unit::Volt),
    (Dimension::Current, -1_000.0, 1_000.0, Unit::Ampere),
    (Dimension::Resistance, 0.0, 10_000.0, Unit::Megohm),
    (Dimension::Capacitance, 0.0, 100_000.0, Unit::Microfarad),
    (Dimension::Temperature, -459.67, 4_000.0, Unit::DegreeFahrenheit),
    (Dimension::TemperatureDifference, -4_000.0, 4_000.0, Unit::DegreeFahrenheit),
    (Dimension::Pressure, -500.0, 500.0, Unit::PoundPerSquareInch),
    (Dimension::Power, -10e6, 10e6, Unit::BtuPerHour),
    (Dimension::ApparentPower, 0.0, 100_000.0, Unit::VoltAmpere),
    (Dimension::Volume, 0.0, 1e6, Unit::CubicFoot),
    (Dimension::Flow, 0.0, 100_000.0, Unit::CubicFootPerMinute),
    (Dimension::HeatingValue, 50.0, 5_000.0, Unit::BtuPerCubicFoot),
    (Dimension::Time, 0.0, 24.0, Unit::Hour),
    (Dimension::Length, -30_000.0, 30_000.0, Unit::Foot),
    (Dimension::Area, 0.0, 100_000.0, Unit::SquareFoot),
    (Dimension::Frequency, 0.0, 1_000.0, Unit::Hertz),
];

/// Refuses an input that is larger than any in this work, or colder than anything is. What is merely below zero is left to the
/// formula, which knows what that means.
pub(super) fn check(argument: &Argument, input: Quantity) -> Result<(), Unfit> {
    let kind = argument.scale.dimension();
    let Some(&(_, least, most, unit)) = BOUNDS.iter().find(|(dimension, ..)| *dimension == kind) else {
        return Ok(());
    };
    let number = input.number_in(Scale {
        unit,
        ..argument.scale
    });
    let is_below = least != 0.0 && number < least;
    if !is_below && number <= most {
        return Ok(());
    }
    let shown = input.display(argument.scale).digits(4);
    let message = match kind {
        Dimension::Temperature if is_below => {
            format!("{} is {shown}, which is below absolute zero", argument.name)
        }
        _ => format!(
            "{} is {shown}, which nothing in this work comes near",
            argument.name
        ),
    };
    Err(Unfit::new(
        message,
        format!(
            "check {} for a slip of the decimal point or the unit",
            argument.name
        ),
    ))
}
