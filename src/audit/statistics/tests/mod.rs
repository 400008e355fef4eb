//! The functions against values from outside, whose sources stand beside them in the file; and how often intervals hold.

mod coverage;
mod published;

use serde_json::Value;

/// Every case names its source.
fn reference() -> Value {
    serde_json::from_str(include_str!("../../../../tests/reference/statistics.json")).unwrap()
}

#[track_caller]
fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("no number: {value}"))
}

#[track_caller]
fn numbers(value: &Value) -> Vec<f64> {
    value.as_array().unwrap().iter().map(number).collect()
}

#[track_caller]
fn whole(value: &Value) -> u64 {
    value
        .as_u64()
        .unwrap_or_else(|| panic!("no whole number: {value}"))
}

#[track_caller]
fn near(found: f64, expected: f64, within: f64) {
    assert!(
        (found - expected).abs() <= within,
        "{found} is not {expected} within {within}"
    );
}

/// Numbers that look like chance and are the same every time: splitmix64, by S. Vigna, in the public domain.
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// Above 0, below 1.
    fn share(&mut self) -> f64 {
        ((self.next() >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    }

    fn count(&mut self, of: u64, chance: f64) -> u64 {
        (0..of).filter(|_| self.share() < chance).count() as u64
    }

    fn waiting(&mut self, mean: f64) -> f64 {
        -mean * self.share().ln()
    }
}
