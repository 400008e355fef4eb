//! Intervals.

use super::quantity;
use crate::measure::{BandText, End, Interval, Misread, Relation, Scale, Unit};

fn volts(low: f64, high: f64) -> Interval {
    Interval {
        low: End::Closed(low),
        high: End::Closed(high),
    }
}

#[test]
fn an_open_end_leaves_its_value_out() {
    let above = Interval::of(Relation::Above, quantity("5 V"));
    assert!(!above.contains(5.0) && above.contains(5.000_001) && above.contains(f64::MAX));
    let at_most = Interval::of(Relation::AtMost, quantity("5 V"));
    assert!(at_most.contains(5.0) && !at_most.contains(5.000_001) && at_most.contains(f64::MIN));
    assert!(above.intersect(at_most).is_empty());
}

#[test]
fn one_value_is_not_nothing() {
    assert!(!volts(5.0, 5.0).is_empty());
    assert!(volts(6.0, 5.0).is_empty());
    let half_open = Interval {
        low: End::Open(5.0),
        high: End::Closed(5.0),
    };
    assert!(half_open.is_empty());
}

#[test]
fn of_two_ends_at_one_place_the_open_one_stays() {
    let at_least = Interval::of(Relation::AtLeast, quantity("5 V"));
    let above = Interval::of(Relation::Above, quantity("5 V"));
    assert_eq!(at_least.intersect(above), above);
    assert_eq!(above.intersect(at_least), above);
}

#[test]
fn what_lies_within() {
    assert!(volts(2.0, 3.0).is_within(volts(2.0, 5.0)));
    assert!(!volts(2.0, 6.0).is_within(volts(2.0, 5.0)));
    assert!(
        volts(9.0, 8.0).is_within(volts(2.0, 5.0)),
        "nothing is within anything"
    );
    assert!(volts(2.0, 3.0).is_within(Interval::everything()));
}

#[test]
fn an_interval_is_told_in_the_words_of_the_grammar() {
    let volt = Scale::of(Unit::Volt);
    for words in [
        "5 V to 9 V",
        "above 5 V, at most 9 V",
        "at least 5 V, below 9 V",
        "below 9 V",
        "at least 5 V",
    ] {
        let band = BandText::parse(words).unwrap();
        let band = band
            .resolve(volt, |_, range| {
                Err::<((), Scale), _>(Misread::new(range, "", ""))
            })
            .unwrap();
        assert_eq!(band.interval(&|_| None).unwrap().words(volt), words);
    }
    assert_eq!(Interval::everything().words(volt), "");
}
