//! A number and its unit, as a person reads them.

use std::fmt;

use super::scale::Scale;
use super::significant::round_to;
use super::unit::Unit;

/// Digits that are shown after the point, not counting the zeros that lead.
const DECIMALS: i32 = 4;
/// Digits that are shown at all; those before the point are always shown.
const DIGITS: i32 = 6;

/// A number and its unit, as a person reads them: `3.2 in.w.c.`, `0.45 µA`, `80000 BTU/h`.
///
/// The shortest form that says what is meant: six significant digits, of which four after the point, no trailing zeros;
/// digits before the point are never rounded away. What is written so is read back by
/// [`Amount::parse`](super::Amount::parse).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shown {
    number: f64,
    scale: Scale,
    digits: i32,
    plain: bool,
}

impl Shown {
    pub(super) fn new(number: f64, scale: Scale) -> Self {
        Self {
            number,
            scale,
            digits: DIGITS,
            plain: false,
        }
    }

    /// With at most so many significant digits: for what was worked out, and is no finer than what it was made from.
    pub fn digits(self, digits: u8) -> Self {
        Self {
            digits: i32::from(digits),
            ..self
        }
    }

    /// With at most so many significant digits, those before the point counted: a longer whole number ends in zeros.
    pub fn significant(self, digits: u8) -> Self {
        Self {
            number: round_to(self.number, usize::from(digits)),
            ..self.digits(digits)
        }
    }

    /// As what was worked out: with four significant digits, as many as anybody measures; of a percentage with two after the
    /// point, since what is near zero there is the difference of two large numbers.
    pub fn worked_out(self) -> Self {
        let shown = self.significant(4);
        match shown.scale.unit {
            Unit::Percent if shown.number.abs() >= 0.1 => Self {
                number: (shown.number * 100.0).round() / 100.0,
                ..shown
            },
            _ => shown,
        }
    }

    /// With the unit in plain ASCII.
    pub fn ascii(self) -> Self {
        Self { plain: true, ..self }
    }
}

impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = if self.plain {
            self.scale.unit.ascii()
        } else {
            self.scale.unit.symbol()
        };
        let number = digits_of(self.number, self.digits);
        if unit.is_empty() {
            f.pad(&number)
        } else {
            f.pad(&format!("{number} {unit}"))
        }
    }
}

fn digits_of(number: f64, digits: i32) -> String {
    let size = number.abs();
    if size != 0.0 && !(1e-6..1e12).contains(&size) {
        return format!("{:e}", round_to(number, DIGITS as usize));
    }
    // How many digits stand before the point; negative: how many zeros lead behind it.
    let before = if size == 0.0 {
        1
    } else {
        size.log10().floor() as i32 + 1
    };
    let most = if before > 0 { DECIMALS } else { DECIMALS - before };
    let decimals = (digits - before).clamp(0, most) as usize;
    let text = format!("{number:.decimals$}");
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        &text
    };
    match text {
        "-0" => "0".to_owned(),
        _ => text.to_owned(),
    }
}
