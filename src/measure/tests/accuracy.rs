//! Meters, and readings too close to a bound.

use super::{difference, quantity, scale};
use crate::measure::{Accuracy, Quantity, Scale, Unit, borderline};

/// The margin of a reading as a number of its own unit.
#[track_caller]
fn margin(accuracy: &str, reading: &str, on: Scale) -> f64 {
    let accuracy = Accuracy::parse(accuracy, on).unwrap();
    accuracy.margin(quantity(reading), on) / Quantity::new(1.0, Scale::difference(on.unit)).base()
}

#[track_caller]
fn near(one: f64, other: f64) {
    assert!((one - other).abs() < 1e-9, "{one} is not {other}");
}

/// All by arithmetic.
#[test]
fn shares_and_amounts_add() {
    near(margin("1 % + 0.3 V", "24 V", scale("V")), 0.54);
    near(margin("1%+300 mV", "24 V", scale("V")), 0.54);
    near(margin("± 3 %", "-10 V", scale("V")), 0.3);
    near(margin("1 % + 1 % + 0.1 V + 0.1 V", "10 V", scale("V")), 0.4);
    near(margin("2e-1 V", "10 V", scale("V")), 0.2);
}

#[test]
fn a_temperature_is_off_by_a_difference() {
    near(margin("0.5 °F", "100 °F", scale("F")), 0.5);
    near(margin("0.5 °C", "100 °F", scale("F")), 0.9);
    // The share is of the number in the reading's own unit, not of kelvins.
    near(margin("1 %", "100 °F", scale("F")), 1.0);
    near(margin("1 %", "212 °F", scale("C")), 1.0);
}

/// An oxygen cell is specified in points, a carbon monoxide cell in ppm and a share (common practice).
#[test]
fn a_reading_in_per_cent_is_off_by_points() {
    near(margin("0.3 %", "8 %", scale("%")), 0.3);
    near(margin("5 % of reading", "8 %", scale("%")), 0.4);
    near(margin("0.1 % + 5 % of reading", "8 %", scale("%")), 0.5);
    near(margin("5 ppm + 3 %", "200 ppm", scale("ppm")), 11.0);
    near(margin("5 ppm + 3 % of reading", "200 ppm", scale("ppm")), 11.0);
}

#[test]
fn what_is_no_accuracy_is_refused() {
    for (text, at, message) in [
        (
            "1 % + 3 ohm",
            "3 ohm",
            "`3 ohm` is a resistance; V measures a voltage",
        ),
        ("-1 %", "-1 %", "`-1 %` is negative"),
        ("0.3", "0.3", "`0.3` has no unit"),
        ("1 % + ", "", "there is no number"),
        ("", "", "there is no number"),
        ("3 V of reading", "3 V", "`3 V` is no share of a reading"),
        ("1 % + 2 bananas", "bananas", "`bananas` is not a unit"),
    ] {
        let misread = Accuracy::parse(text, scale("V")).unwrap_err();
        assert_eq!(
            (&text[misread.range], misread.message.as_str()),
            (at, message),
            "{text}"
        );
    }
}

#[test]
fn a_reading_within_the_margin_of_a_bound_is_borderline() {
    let accuracy = Accuracy::parse("1 % + 0.3 V", scale("V")).unwrap();
    let bound = quantity("20.4 V");
    let is = |reading: &str| {
        let reading = quantity(reading);
        borderline(reading, accuracy.margin(reading, scale("V")), bound)
    };
    // At 20.9 V the margin is 0.509 V; at 20.91 V it is 0.5091 V, and the bound lies 0.51 V away.
    assert!(is("20.4 V") && is("20.9 V") && is("19.95 V"));
    assert!(!is("20.91 V") && !is("19.8 V"));
}

#[test]
fn a_reading_exactly_at_the_margin_counts() {
    let accuracy = Accuracy::parse("0.3 in.w.c.", scale("inwc")).unwrap();
    for (reading, bound) in [
        ("3.5 in.w.c.", "3.2 in.w.c."),
        ("0.7 in.w.c.", "1 in.w.c."),
        ("0.1 in.w.c.", "-0.2 in.w.c."),
    ] {
        let reading = quantity(reading);
        assert!(
            borderline(reading, accuracy.margin(reading, scale("inwc")), quantity(bound)),
            "{bound}"
        );
    }
    let degrees = Accuracy::parse("2 °F", scale("F")).unwrap();
    let reading = quantity("97 °F");
    assert!(borderline(
        reading,
        degrees.margin(reading, scale("F")),
        quantity("95 °F")
    ));
    assert!(!borderline(
        reading,
        degrees.margin(reading, scale("F")),
        quantity("94.9 °F")
    ));
}

#[test]
fn a_count_is_never_borderline() {
    let reading = quantity("3 number");
    let margin = Accuracy::exact().margin(reading, scale("number"));
    assert!(!borderline(reading, margin, reading));
    assert!(!borderline(reading, 1.0, difference("3 °F")));
    assert_eq!(Scale::of(Unit::Number).symbol(), "");
}
