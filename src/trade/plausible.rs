//! What a number in this work can be at all: a slip of the decimal point or the unit is told before it is computed with.

use crate::measure::{Dimension, Quantity, Scale, Unit};

use super::argument::Argument;
use super::formula::Formula;
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

/// Whether nothing of a kind is less than none of it.
pub(super) fn is_never_below_zero(kind: Dimension) -> bool {
    let starts_at_zero =
        |&(dimension, least, ..): &(Dimension, f64, f64, Unit)| dimension == kind && least == 0.0;
    kind == Dimension::Ratio || BOUNDS.iter().any(starts_at_zero)
}

/// Refuses an input that is larger than any in this work, or colder than anything is. What is merely below zero is left to the
/// formula, which knows what that means.
pub(super) fn check(argument: &Argument, input: Quantity) -> Result<(), Unfit> {
    let Some(beyond) = beyond(input, argument.scale) else {
        return Ok(());
    };
    Err(Unfit::new(
        format!("{} is {beyond}", argument.name),
        format!(
            "check {} for a slip of the decimal point or the unit",
            argument.name
        ),
    ))
}

/// Refuses a result that is: inputs that are each possible may not be possible together.
pub(super) fn check_result(formula: &Formula, result: Quantity) -> Result<(), Unfit> {
    let Some(beyond) = beyond(result, formula.result) else {
        return Ok(());
    };
    Err(Unfit::new(
        format!("{} comes out as {beyond}", formula.name),
        "check the inputs for a slip of the decimal point or the unit",
    ))
}

/// What is to be said of a value that cannot be.
fn beyond(value: Quantity, scale: Scale) -> Option<String> {
    let kind = scale.dimension();
    let &(_, least, most, unit) = BOUNDS.iter().find(|(dimension, ..)| *dimension == kind)?;
    let number = value.number_in(Scale { unit, ..scale });
    let is_below = least != 0.0 && number < least;
    if !is_below && number <= most {
        return None;
    }
    let shown = value.display(scale).digits(4);
    Some(match kind {
        Dimension::Temperature if is_below => format!("{shown}, which is below absolute zero"),
        _ => format!("{shown}, which nothing in this work comes near"),
    })
}
