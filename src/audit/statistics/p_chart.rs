//! Whether a rate changed from month to month: the p-chart.
//!
//! Months differ by chance. A month outside the limits is worth asking about; one inside them is not, however it compares with
//! the month before.
//!
//! # Equation
//!
//! `p̄ ± 3 √(p̄(1 − p̄)/n)`, within 0 and 1, with `p̄` the rate of all months together and `n` the calls of the month.
//!
//! # Range
//!
//! Months in which a few callbacks are expected: `n p̄` of 5 and more. Below that the limits are too narrow above and
//! say nothing below; [`Month::is_small`] tells.
//!
//! # Example
//!
//! Of fifty chips a wafer, twelve, fifteen and four out of place are no news.
//!
//! ```
//! use proofwalk::audit::statistics::{Count, p_chart::Chart};
//!
//! let chart = Chart::of(&[Count::new(12, 50), Count::new(15, 50), Count::new(4, 50)]);
//! assert!((chart.centre - 31.0 / 150.0).abs() < 1e-12);
//! assert!(chart.months.iter().all(|month| !month.is_outside()));
//! ```
//!
//! # References
//!
//! - NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.2, Proportions control charts: thirty samples of fifty.
//! - D. C. Montgomery, *Introduction to Statistical Quality Control*: the limits of the same data, 0.0524 and 0.4102.

use super::Count;

/// Standard deviations from the centre to each limit.
const SIGMAS: f64 = 3.0;

/// Fewest expected for the limits to hold.
const EXPECTED: f64 = 5.0;

/// A rate over a row of months.
#[derive(Clone, Debug, PartialEq)]
pub struct Chart {
    /// The rate of all months together; 0 where there were no calls.
    pub centre: f64,
    /// Each month, in the order given.
    pub months: Vec<Month>,
}

/// One point of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Month {
    /// What was counted.
    pub count: Count,
    /// The lower limit, as a share.
    pub low: f64,
    /// The upper limit, as a share.
    pub high: f64,
    /// What was to be expected of a month with as many calls.
    pub expected: f64,
}

impl Chart {
    /// The chart of these months.
    pub fn of(counts: &[Count]) -> Self {
        Self::about(Count::sum(counts).rate().unwrap_or(0.0), counts)
    }

    /// The same about a rate that is known from elsewhere.
    pub fn about(centre: f64, counts: &[Count]) -> Self {
        let months = counts.iter().map(|count| Month::new(*count, centre)).collect();
        Self { centre, months }
    }
}

impl Month {
    fn new(count: Count, centre: f64) -> Self {
        let calls = count.of as f64;
        let half = match count.of {
            0 => 1.0,
            _ => SIGMAS * (centre * (1.0 - centre) / calls).sqrt(),
        };
        Self {
            count,
            low: (centre - half).max(0.0),
            high: (centre + half).min(1.0),
            expected: calls * centre,
        }
    }

    /// Whether it lies where chance alone would hardly put it.
    pub fn is_outside(&self) -> bool {
        let rate = self.count.rate();
        rate.is_some_and(|rate| rate < self.low || rate > self.high)
    }

    /// Whether too little was to be expected for the limits to mean much.
    pub fn is_small(&self) -> bool {
        self.expected < EXPECTED
    }
}
