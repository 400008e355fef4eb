//! What must hold of every number.

use proptest::prelude::*;

use super::{band_of, scale};
use crate::measure::{Amount, Dimension, Interval, Quantity, Relation, Scale, Unit};

fn units() -> impl Strategy<Value = Unit> {
    prop::sample::select(Unit::all().collect::<Vec<_>>())
}

fn scales() -> impl Strategy<Value = Scale> {
    (units(), any::<bool>()).prop_map(|(unit, difference)| Scale { unit, difference })
}

/// Two scales of one dimension.
fn twin_scales() -> impl Strategy<Value = (Scale, Scale)> {
    let pairs: Vec<(Unit, Unit)> = Unit::all()
        .flat_map(|one| Unit::all().map(move |other| (one, other)))
        .filter(|(one, other)| one.dimension() == other.dimension())
        .collect();
    (prop::sample::select(pairs), any::<bool>()).prop_map(|((one, other), difference)| {
        let scale = |unit| Scale { unit, difference };
        (scale(one), scale(other))
    })
}

/// A number as a meter shows it: up to five digits, a few of them behind the point.
fn shown_numbers() -> impl Strategy<Value = f64> {
    (-99_999..=99_999_i32, 0..=4_u32).prop_map(|(digits, decimals)| decimal(i64::from(digits), decimals))
}

/// The float nearest to `digits` with its point moved.
fn decimal(digits: i64, decimals: u32) -> f64 {
    digits as f64 / 10_f64.powi(decimals as i32)
}

/// Two units of one dimension in which the same short decimals are exact.
fn exact_pairs() -> impl Strategy<Value = (&'static str, &'static str, f64)> {
    prop::sample::select(vec![
        ("V", "mV", 1e3),
        ("uA", "mA", 1e-3),
        ("Mohm", "ohm", 1e6),
        ("kPa", "Pa", 1e3),
        ("mbar", "Pa", 1e2),
        ("CFM", "ft3/h", 60.0),
        ("%", "ppm", 1e4),
        ("ft", "in", 12.0),
        ("m", "cm", 1e2),
        ("ft2", "in2", 144.0),
        ("cm2", "mm2", 1e2),
        ("in", "mm", 25.4),
        ("h", "min", 60.0),
        ("min", "s", 60.0),
        ("kW", "W", 1e3),
    ])
}

/// Units whose numbers are not short in the unit that digits are counted in: see [`Quantity`].
const DEALT_IN_ELSEWHERE: &[Unit] = &[
    Unit::Kilowatt,
    Unit::Watt,
    Unit::Horsepower,
    Unit::CubicMetre,
    Unit::Gallon,
    Unit::Litre,
    Unit::CubicMetrePerHour,
    Unit::LitrePerSecond,
    Unit::LitrePerHour,
    Unit::GallonPerHour,
    Unit::KilogramPerHour,
    Unit::KilogramPerCubicMetre,
    Unit::OhmPerKilometre,
    Unit::MegajoulePerCubicMetre,
];

proptest! {
    #[test]
    fn a_number_comes_back_from_its_own_unit(number in shown_numbers(), scale in scales()) {
        prop_assert_eq!(Quantity::new(number, scale).number_in(scale), number);
    }

    #[test]
    fn a_value_survives_any_other_unit(number in shown_numbers(), (one, other) in twin_scales()) {
        let value = Quantity::new(number, one);
        let again = Quantity::new(value.number_in(other), other);
        // Each number is rounded to twelve digits, so the value may move by as much; a temperature by its size in kelvins.
        let slack = 1e-11 * value.base().abs() + if one.unit.dimension() == Dimension::Temperature { 1e-8 } else { 0.0 };
        prop_assert!((value.base() - again.base()).abs() <= slack, "{value:?} {again:?}");
    }

    #[test]
    fn one_value_in_two_units_is_one_value(digits in -99_999..=99_999_i32, (one, other, factor) in exact_pairs()) {
        let number = decimal(i64::from(digits), 2);
        let twin = f64::from(digits) * factor / 100.0;
        prop_assert_eq!(Quantity::new(number, scale(one)), Quantity::new(twin, scale(other)));
    }

    #[test]
    fn fahrenheit_and_celsius_agree(tenths in -2_000..=20_000_i64) {
        // F = 1.8 C + 32 in whole hundredths, so that only the nearest float is taken of each.
        let celsius = Quantity::new(decimal(tenths, 1), Scale::of(Unit::DegreeCelsius));
        let fahrenheit = Quantity::new(decimal(18 * tenths + 3_200, 2), Scale::of(Unit::DegreeFahrenheit));
        prop_assert_eq!(celsius, fahrenheit);
        prop_assert_eq!(celsius.number_in(Scale::of(Unit::DegreeFahrenheit)), decimal(18 * tenths + 3_200, 2));
    }

    #[test]
    fn the_difference_of_two_temperatures_is_the_one_a_person_would_write(a in -500..=5_000_i64, b in -500..=5_000_i64) {
        for unit in [Unit::DegreeFahrenheit, Unit::DegreeCelsius] {
            let (warm, cold) = (Quantity::new(decimal(a, 1), Scale::of(unit)), Quantity::new(decimal(b, 1), Scale::of(unit)));
            let rise = Quantity::new(decimal(a - b, 1), Scale::difference(unit));
            prop_assert_eq!(warm.minus(cold), Some(rise));
            prop_assert_eq!(cold.plus(rise), Some(warm));
            prop_assert_eq!(warm.minus(rise), Some(cold));
        }
    }

    #[test]
    fn sums_and_shares_are_those_a_person_would_write(a in 0..=99_999_i64, b in 0..=99_999_i64, share in 1..=200_i64, unit in units()) {
        let scale = Scale::difference(unit);
        let (one, two) = (Quantity::new(decimal(a, 2), scale), Quantity::new(decimal(b, 2), scale));
        let sum = Quantity::new(decimal(a + b, 2), scale);
        let part = Quantity::new(decimal(a * share, 4), scale);
        let difference = Quantity::new(decimal(a - b, 2), scale);
        if DEALT_IN_ELSEWHERE.contains(&unit) {
            prop_assert!((one.plus(two).unwrap().base() - sum.base()).abs() <= 1e-11 * sum.base());
            prop_assert!((one.times(decimal(share, 2)).base() - part.base()).abs() <= 1e-11 * part.base());
            return Ok(());
        }
        prop_assert_eq!(one.plus(two), Some(sum));
        prop_assert_eq!(one.times(decimal(share, 2)), part);
        if a == b || 100 * (a - b).abs() >= a.max(b) {
            prop_assert_eq!(one.minus(two), Some(difference));
        }
    }

    #[test]
    fn what_is_shown_is_read_back(digits in -99_999..=99_999_i32, decimals in 0..=4_u32, scale in scales()) {
        let value = Quantity::new(decimal(i64::from(digits), decimals), scale);
        for shown in [value.display(scale), value.display(scale).ascii()] {
            let read = Amount::parse(&shown.to_string()).and_then(|amount| amount.quantity(scale));
            prop_assert_eq!(read, Ok(value));
        }
    }

    #[test]
    fn a_band_lets_through_what_its_words_say(value in -300..=300_i32, low in -200..=200_i32, high in -200..=200_i32, words in any::<(bool, bool)>()) {
        let (lower, upper) = (if words.0 { "at least" } else { "above" }, if words.1 { "at most" } else { "below" });
        let text = format!("{lower} {} V, {upper} {} mV", decimal(low.into(), 2), high * 10);
        let band = band_of(&text, scale("V"), scale("V")).unwrap();
        let naive = (if words.0 { value >= low } else { value > low }) && (if words.1 { value <= high } else { value < high });
        let quantity = Quantity::new(decimal(value.into(), 2), scale("V"));
        prop_assert_eq!(band.contains(quantity, &|_| None), Some(naive), "{}", text);
        prop_assert_eq!(band.interval(&|_| None).map(|interval| interval.contains(quantity.base())), Some(naive));
    }

    #[test]
    fn a_band_is_read_back_from_its_words(a in -999..=999_i32, share in 1..=150_u32, offset in -99..=99_i32, lower in 0..4_usize, upper in 0..4_usize) {
        let (on, fields) = (Scale::difference(Unit::DegreeFahrenheit), Scale::difference(Unit::DegreeCelsius));
        let sign = if offset < 0 { '-' } else { '+' };
        let text = format!(
            "{} {share} % of plate.rise {sign} {} °F, {} {} °F",
            Relation::ALL[lower].words(), decimal(offset.unsigned_abs().into(), 1), Relation::ALL[upper].words(), decimal(a.into(), 1)
        );
        let band = band_of(&text, on, fields).unwrap();
        let shown = band.display(on, |name| format!("plate.{name}")).to_string();
        prop_assert_eq!(band_of(&shown, on, fields), Ok(band), "{}", shown);
    }

    #[test]
    fn an_intersection_holds_what_both_hold(ends in prop::collection::vec((0..4_usize, -5..=5_i32), 0..5), value in -6..=6_i32) {
        let conditions = |ends: &[(usize, i32)]| -> Vec<(Relation, Quantity)> {
            ends.iter().map(|&(relation, at)| (Relation::ALL[relation], Quantity::new(at.into(), scale("V")))).collect()
        };
        let (one, two) = ends.split_at(ends.len() / 2);
        let (one, two) = (Interval::from_conditions(conditions(one)), Interval::from_conditions(conditions(two)));
        let both = one.intersect(two);
        prop_assert_eq!(both.contains(value.into()), one.contains(value.into()) && two.contains(value.into()));
        prop_assert_eq!(both, two.intersect(one));
        prop_assert!(both.is_within(one) && both.is_within(two));
        // Halves stand between the ends, so that an open stretch is seen too.
        let somewhere = (-12..=12).any(|half| both.contains(f64::from(half) / 2.0));
        prop_assert_eq!(somewhere, !both.is_empty());
    }
}
