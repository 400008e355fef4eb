//! What a meter shows of a true value: off by as much as its registered accuracy allows, in the digits it has.

use super::dice::Dice;
use crate::library::{FieldKind, Obtained, PlateField, Reading};
use crate::measure::{Accuracy, PlausibleRange, Quantity, Scale};

/// How often a meter stands at the very end of its accuracy: what errs only in the middle finds no wrong bound.
const AT_THE_END: f64 = 0.1;

/// What a technician types for a reading whose true value is `truth`, in the reading's own unit.
///
/// The meter errs evenly within its accuracy, misreading and the last digit that it shows included. Where nothing below or
/// above the plausible range is true, it shows nothing there: a voltmeter on AC shows no -0.2 V.
pub fn typed(reading: &Reading, truth: f64, dice: &mut Dice) -> String {
    let Obtained::Measured(accuracy) = &reading.source_of_value else {
        return number(truth);
    };
    let truth = within(reading.plausible, reading.scale, truth, truth);
    let margin = margin_around(accuracy, reading.scale, truth);
    if margin <= 0.0 {
        return number(truth);
    }
    let digit = last_digit(margin);
    let share = match dice.chance(AT_THE_END) {
        true => dice.one_of([-1.0, 1.0]),
        false => dice.between(-1.0, 1.0),
    };
    let off = truth + share * (margin - digit / 2.0);
    let shown = within(reading.plausible, reading.scale, truth, off);
    number((shown / digit).round() * digit)
}

/// What a technician types of a number on the plate: as it stands there.
pub fn copied(field: &PlateField, truth: f64) -> String {
    match &field.kind {
        FieldKind::Number { .. } => number(truth),
        FieldKind::Choices(_) => String::new(),
    }
}

/// How far from a true value a meter of this accuracy may show, in the scale's unit.
///
/// An accuracy says how far the truth may lie from what is *shown*. A share of a shown value that is too low is a smaller
/// width than the same share of the truth; the width at the lower end is safe on both sides.
fn margin_around(accuracy: &Accuracy, scale: Scale, truth: f64) -> f64 {
    let width = |number: f64| {
        let margin = accuracy.margin(Quantity::new(number, scale), scale);
        Quantity::from_base(margin, scale.of_offsets().dimension()).number_in(scale.of_offsets())
    };
    let lowest = truth.abs() - width(truth);
    width(lowest.max(0.0)).min(width(truth))
}

/// The step of a meter's last digit: at most a fifth of what it may be off.
fn last_digit(margin: f64) -> f64 {
    10f64.powi((margin / 5.0).log10().floor() as i32)
}

fn within(range: Option<PlausibleRange>, scale: Scale, truth: f64, shown: f64) -> f64 {
    let Some(range) = range else { return shown };
    let (low, high) = (range.low.number_in(scale), range.high.number_in(scale));
    let shown = if truth >= low { shown.max(low) } else { shown };
    // Off the scale is entered as the end of the range.
    if truth <= high || truth.is_infinite() {
        shown.min(high)
    } else {
        shown
    }
}

/// A number as it is typed: nine digits at most, and no exponent.
pub(super) fn number(value: f64) -> String {
    let rounded: f64 = format!("{value:.8e}").parse().unwrap_or(value);
    format!("{}", rounded + 0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Unit;

    fn reading(accuracy: &str, low: f64, high: f64, unit: Unit) -> Reading {
        let scale = Scale::of(unit);
        Reading {
            title: String::new(),
            scale,
            source_of_value: Obtained::Measured(Accuracy::parse(accuracy, scale).unwrap()),
            plausible: Some(PlausibleRange {
                low: Quantity::new(low, scale),
                high: Quantity::new(high, scale),
            }),
            taking: Default::default(),
        }
    }

    #[test]
    fn the_truth_lies_within_the_accuracy_of_what_is_shown() {
        let mut dice = Dice::new(5);
        for (accuracy, truth, unit) in [
            ("1 % + 0.3 V", 24.3, Unit::Volt),
            ("2 % + 0.1 V", 120.0, Unit::Volt),
            ("30 % + 1 V", 50.0, Unit::Volt),
            ("2 °F", -10.0, Unit::DegreeFahrenheit),
            ("1 % + 0.005 in.w.c.", 0.5, Unit::InchWaterColumn),
        ] {
            let reading = reading(accuracy, -60.0, 260.0, unit);
            let Obtained::Measured(meter) = &reading.source_of_value else {
                unreachable!()
            };
            let mut farthest: f64 = 0.0;
            for _ in 0..2_000 {
                let shown: f64 = typed(&reading, truth, &mut dice).parse().unwrap();
                let scale = reading.scale;
                let off = (Quantity::new(shown, scale).base() - Quantity::new(truth, scale).base()).abs();
                let margin = meter.margin(Quantity::new(shown, scale), scale);
                assert!(off <= margin * (1.0 + 1e-9), "{shown} for {truth} at {accuracy}");
                farthest = farthest.max(off / margin);
            }
            assert!(
                farthest > 0.7,
                "{accuracy} errs by no more than {farthest} of its margin"
            );
        }
    }

    #[test]
    fn a_meter_shows_nothing_that_is_not_there() {
        let volts = reading("1 % + 0.3 V", 0.0, 260.0, Unit::Volt);
        let ohms = reading("1 % + 0.5 ohm", 0.0, 50e6, Unit::Ohm);
        let mut dice = Dice::new(1);
        for _ in 0..200 {
            assert!(!typed(&volts, 0.0, &mut dice).starts_with('-'));
            let open: f64 = typed(&ohms, f64::INFINITY, &mut dice).parse().unwrap();
            assert!((49e6..=50e6).contains(&open), "{open}");
        }
    }

    #[test]
    fn digits_are_those_of_the_meter() {
        let volts = reading("1 % + 0.3 V", 0.0, 260.0, Unit::Volt);
        let shown = typed(&volts, 24.3, &mut Dice::new(3));
        assert!(
            shown.split('.').nth(1).is_none_or(|digits| digits.len() <= 2),
            "{shown}"
        );
    }
}
