//! Thermistors by the Steinhart–Hart equation, which follows a thermistor over its whole span: the inverse of its temperature
//! in kelvin is a + b ln R + c (ln R)³, R in Ω.

use super::thermistor::{Row, beta, in_order, in_range, kelvin};
use super::unfit::Unfit;

/// How near each other three rows may stand, in °F: nearer, the last digits of the table would decide how the curve bends.
const APART: f64 = 9.0;
/// How much the betas of a thermistor's cold and warm part may differ, in shares: over 300 °F they differ by a tenth.
const BENT: f64 = 0.15;
/// More than the search for a resistance takes.
const STEPS: usize = 40;

/// One thermistor.
pub(super) struct Curve {
    a: f64,
    b: f64,
    c: f64,
    /// Where the search for a resistance starts, as its logarithm.
    middle: f64,
}

/// Whether three rows, the coldest first, bend more than a thermistor does: one of them is probably misread.
pub(super) fn is_bent([cold, middle, warm]: [Row; 3]) -> bool {
    let ratio = beta(middle, warm) / beta(cold, middle);
    !(1.0 / (1.0 + BENT)..=1.0 + BENT).contains(&ratio)
}

impl Curve {
    /// The curve through three rows of a maker's table, the coldest first.
    pub(super) fn through(rows: [Row; 3]) -> Result<Self, Unfit> {
        in_order(&rows, APART)?;
        let [l1, l2, l3] = rows.map(|row| row.resistance.ln());
        let [y1, y2, y3] = rows.map(|row| 1.0 / kelvin(row.temperature));
        let (from_first, across) = ((y2 - y1) / (l2 - l1), (y3 - y1) / (l3 - l1));
        let c = (across - from_first) / (l3 - l2) / (l1 + l2 + l3);
        let b = from_first - c * (l1 * l1 + l1 * l2 + l2 * l2);
        let a = y1 - (b + l1 * l1 * c) * l1;
        let curve = Self { a, b, c, middle: l2 };
        for log in [l1, l2, l3] {
            curve.falls_at(log)?;
        }
        Ok(curve)
    }

    /// The temperature in °F at which it has a resistance.
    pub(super) fn temperature(&self, resistance: f64) -> Result<f64, Unfit> {
        let log = resistance.ln();
        self.falls_at(log)?;
        let temperature = 1.8 / self.inverse(log) - 459.67;
        in_range(temperature)?;
        Ok(temperature)
    }

    /// Its resistance at a temperature in °F.
    pub(super) fn resistance(&self, temperature: f64) -> Result<f64, Unfit> {
        in_range(temperature)?;
        let wanted = 1.0 / kelvin(temperature);
        // The curve is nearly straight and bends one way, so Newton's steps soon stand still; else there is no such place.
        let mut log = self.middle;
        for _ in 0..STEPS {
            log -= (self.inverse(log) - wanted) / self.slope(log);
        }
        self.falls_at(log)?;
        Ok(log.exp())
    }

    fn inverse(&self, log: f64) -> f64 {
        self.a + log * (self.b + self.c * log * log)
    }

    fn slope(&self, log: f64) -> f64 {
        self.b + 3.0 * self.c * log * log
    }

    fn falls_at(&self, log: f64) -> Result<(), Unfit> {
        if self.slope(log) > 0.0 && self.inverse(log) > 0.0 {
            return Ok(());
        }
        Err(Unfit::new(
            "a curve through the three points does not fall as it warms",
            "take the points from the maker's table again",
        ))
    }
}
