//! How far a meter may be off.

use super::amount::Amount;
use super::misread::{Misread, quoted, range_in};
use super::quantity::Quantity;
use super::scale::Scale;
use super::significant::round;
use super::unit::Unit;

/// How far a meter may be off: a share of the reading and a fixed amount, added.
///
/// `1 % + 0.3 V`, `0.5 °F`, `3 %`. The share is of the number in the reading's own unit: 1 % of 100 °F is 1 °F. A reading
/// in per cent is the exception: there a plain `0.3 %` is points of that scale, as an oxygen cell is specified, and
/// `2 % of reading` is the share. A reading in ppm is specified as `5 ppm + 3 %`, where 3 % is of the reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Accuracy {
    /// A share of the reading's number: 0.01 is one per cent.
    relative: f64,
    /// A fixed amount, in the base unit.
    absolute: f64,
}

impl Accuracy {
    /// That of a count: no reading is ever borderline.
    pub fn exact() -> Self {
        Self {
            relative: 0.0,
            absolute: 0.0,
        }
    }

    /// Reads shares and amounts joined by `+`, for a reading on a scale.
    ///
    /// # Errors
    ///
    /// Where a term is neither a share nor an amount of the scale's dimension, or is negative.
    pub fn parse(text: &str, scale: Scale) -> Result<Self, Misread> {
        let mut sum = Self::exact();
        for term in text.split('+') {
            let at = range_in(text, term).start;
            let term = Self::term(term, scale).map_err(|misread| misread.moved(at))?;
            sum.relative = round(sum.relative + term.relative);
            sum.absolute = round(sum.absolute + term.absolute);
        }
        Ok(sum)
    }

    /// In words, for a reading on `scale`: `± 1 % of the reading + 0.3 V`; nothing for one that is exact.
    pub fn words(&self, scale: Scale) -> String {
        let share =
            (self.relative != 0.0).then(|| format!("{} % of the reading", round(self.relative * 100.0)));
        let absolute = (self.absolute != 0.0).then(|| {
            let offsets = scale.of_offsets();
            Quantity::from_base(self.absolute, offsets.dimension())
                .display(offsets)
                .to_string()
        });
        match share.into_iter().chain(absolute).collect::<Vec<_>>() {
            terms if terms.is_empty() => String::new(),
            terms => format!("± {}", terms.join(" + ")),
        }
    }

    /// How far the true value may lie from a reading on a scale, in the base unit, to either side.
    pub fn margin(&self, reading: Quantity, scale: Scale) -> f64 {
        let share = self.relative * reading.number_in(scale).abs();
        round(scale.of_offsets().to_base(share) + self.absolute)
    }

    fn term(text: &str, scale: Scale) -> Result<Self, Misread> {
        let bare = text.trim().trim_start_matches('±').trim();
        let (amount_text, of_reading) = match bare.strip_suffix("of reading") {
            Some(rest) => (rest.trim_end(), true),
            None => (bare, false),
        };
        let start = range_in(text, amount_text).start;
        let fault =
            |message: String, help: &str| Misread::new(start..start + amount_text.len(), message, help);
        let amount = Amount::parse(amount_text).map_err(|misread| misread.moved(start))?;
        if amount.number < 0.0 {
            let message = format!("{} is negative", quoted(amount_text));
            return Err(fault(message, "write how far a meter may be off to either side"));
        }
        let is_percent = amount.unit == Some(Unit::Percent);
        if of_reading && !is_percent {
            let message = format!("{} is no share of a reading", quoted(amount_text));
            return Err(fault(message, "a share is written `2 % of reading`"));
        }
        if is_percent && (of_reading || scale.unit != Unit::Percent) {
            return Ok(Self {
                relative: round(amount.number / 100.0),
                absolute: 0.0,
            });
        }
        let absolute = amount
            .quantity(scale.of_offsets())
            .map_err(|misread| misread.moved(start))?;
        Ok(Self {
            relative: 0.0,
            absolute: absolute.base(),
        })
    }
}

/// Whether a reading lies so close to a bound that its meter cannot tell on which side: within `margin`, in the base unit.
///
/// A reading exactly at the margin counts, to one part in 10¹² of what is compared. With no margin nothing is borderline.
pub fn borderline(reading: Quantity, margin: f64, bound: Quantity) -> bool {
    if reading.dimension() != bound.dimension() || margin <= 0.0 {
        return false;
    }
    let size = reading.base().abs().max(bound.base().abs()).max(margin);
    (reading.base() - bound.base()).abs() <= margin + 1e-12 * size
}
