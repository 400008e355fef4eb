//! Values in two units.

use std::cmp::Ordering;

use super::{difference, quantity, scale};
use crate::measure::{Amount, Dimension, Quantity, Scale, Unit};

/// Each row names its origin; see the file's head.
const REFERENCE: &str = include_str!("../../../tests/reference/units.csv");

#[test]
fn units_are_worth_what_the_reference_says() {
    for row in REFERENCE.lines().filter(|line| !line.starts_with('#')).skip(1) {
        let columns: Vec<&str> = row.splitn(4, ',').collect();
        let (one, other) = (quantity(columns[0]), quantity(columns[1]));
        let within = Amount::parse(columns[2]).unwrap();
        let margin = within.quantity(Scale::difference(within.unit.unwrap())).unwrap();
        assert_eq!(one.dimension(), other.dimension(), "{row}");
        if within.number == 0.0 {
            assert_eq!(one, other, "{row}");
        }
        let off = (one.base() - other.base()).abs();
        assert!(off <= margin.base(), "{row}: off by {off}");
    }
}

#[test]
fn a_reading_at_its_bound_is_at_its_bound() {
    let set = quantity("3.5 in.w.c.").minus(quantity("0.3 in.w.c."));
    assert_eq!(set, Some(quantity("3.2 in.w.c.")));
    assert_eq!(quantity("80000 BTU/h").times(0.9), quantity("72000 BTU/h"));
    assert_eq!(
        quantity("0.1 V").plus(quantity("0.2 V")),
        Some(quantity("300 mV"))
    );
}

#[test]
fn a_temperature_is_not_a_temperature_difference() {
    let (warm, cold) = (quantity("120.1 °F"), quantity("65 °F"));
    let rise = warm.minus(cold).unwrap();
    assert_eq!(rise.dimension(), Dimension::TemperatureDifference);
    assert_eq!(rise, difference("55.1 °F"));
    assert_eq!(rise.compare(warm), None);
    assert_eq!(cold.plus(rise), Some(warm));
    assert_eq!(rise.plus(cold), Some(warm));
    assert_eq!(warm.minus(rise), Some(cold));
    assert_eq!(warm.plus(cold), None);
    assert_eq!(rise.minus(cold), None);
    // 1 °C of difference is 1.8 °F, without the offset.
    assert_eq!(difference("30 °C"), difference("54 °F"));
    // Small differences of large numbers keep no noise.
    assert_eq!(
        quantity("95 °F").minus(quantity("94.99 °F")),
        Some(difference("0.01 °F"))
    );
}

#[test]
fn what_measures_different_things_does_not_compare() {
    let (volts, ohms) = (quantity("24 V"), quantity("24 ohm"));
    assert_eq!(volts.compare(ohms), None);
    assert_ne!(volts, ohms);
    assert_eq!(volts.plus(ohms), None);
    assert_eq!(volts.minus(ohms), None);
    // Watts are not volt-amperes: a motor's power factor lies between.
    assert_eq!(quantity("40 W").compare(quantity("40 VA")), None);
    assert_eq!(volts.compare(quantity("23999 mV")), Some(Ordering::Greater));
}

#[test]
fn what_cancels_leaves_nothing() {
    let sum = quantity("0.3 in.w.c.").plus(quantity("0.2 in.w.c.")).unwrap();
    let rest = sum.minus(quantity("0.5 in.w.c.")).unwrap();
    assert_eq!(rest.base(), 0.0);
    // 0.1 + 0.2 - 0.3 leaves 5.6e-17 in binary fractions.
    let sum = quantity("0.1 V").plus(quantity("0.2 V")).unwrap();
    assert_eq!(sum.minus(quantity("0.3 V")), Some(quantity("0 V")));
    assert_eq!(quantity("-0 V"), quantity("0 V"));
}

#[test]
fn a_number_comes_back_as_it_was_written() {
    assert_eq!(quantity("0 °F").number_in(scale("F")), 0.0);
    assert_eq!(quantity("95 °F").number_in(scale("C")), 35.0);
    assert_eq!(quantity("2.5 uA").number_in(scale("mA")), 0.0025);
    assert_eq!(
        Quantity::from_base(308.15, Dimension::Temperature),
        quantity("95 °F")
    );
    assert_eq!(
        Quantity::from_base(quantity("95 °F").base(), Dimension::Temperature),
        quantity("35 °C")
    );
}

#[test]
fn a_heating_value_a_flow_and_a_power_agree() {
    // 100 ft³/h at 1000 BTU/ft³ is 100,000 BTU/h, in base units too (arithmetic).
    let heat = quantity("100 ft3/h").base() * quantity("1000 BTU/ft3").base();
    assert_eq!(
        Quantity::from_base(heat, Dimension::Power),
        quantity("100000 BTU/h")
    );
}

#[test]
fn only_temperatures_have_differences() {
    assert_eq!(
        Scale::difference(Unit::DegreeCelsius).dimension(),
        Dimension::TemperatureDifference
    );
    assert_eq!(Scale::of(Unit::DegreeCelsius).dimension(), Dimension::Temperature);
    assert_eq!(Scale::difference(Unit::Volt).dimension(), Dimension::Voltage);
    assert_eq!(
        Scale::of(Unit::DegreeFahrenheit).of_offsets(),
        Scale::difference(Unit::DegreeFahrenheit)
    );
}
