//! Whether a group differs from all together by more than its size explains: the funnel, with prediction limits.
//!
//! A technician with eight calls may well have two callbacks, or none, and be like everybody. The limits say what a group
//! of that size would show by chance, if its rate were that of all; so nobody is ranked.
//!
//! # Equation
//!
//! The limits of a level are the binomial quantiles of `(1 − level)/2` and `(1 + level)/2`, for `n` calls with the rate of all; a
//! group lies outside with fewer than the one or more than the other. Its chance is twice the smaller tail of the
//! binomial distribution, at most 1.
//!
//! # Range
//!
//! Any size. Counts are whole, so that fewer than the level allows lie outside by chance. Where groups differ among each other for
//! reasons of their own, see [`dispersion`](super::dispersion).
//!
//! # Example
//!
//! Of twenty calls at 8 %, up to four callbacks are nothing to talk about.
//!
//! ```
//! use proofwalk::audit::statistics::funnel;
//!
//! assert_eq!(funnel::limits(20, 0.08, funnel::WARN), (0, 4));
//! assert_eq!(funnel::limits(20, 0.08, funnel::ACT), (0, 6));
//! ```
//!
//! # References
//!
//! - D. J. Spiegelhalter, *Funnel plots for comparing institutional performance*, Statistics in Medicine 24 (2005).
//! - Computed with scipy's binomial distribution.

use super::{Count, binomial};

/// The level of the inner limits.
pub const WARN: f64 = 0.95;

/// The level of the outer limits, about three standard deviations.
pub const ACT: f64 = 0.998;

/// The fewest and the most that a group of a size would count by chance.
pub fn limits(of: u64, rate: f64, level: f64) -> (u64, u64) {
    let tail = 0.5 * (1.0 - level);
    (
        binomial::quantile(tail, of, rate),
        binomial::quantile(1.0 - tail, of, rate),
    )
}

/// How often chance alone would put a group with this rate as far out, on either side.
pub fn chance(group: Count, rate: f64) -> f64 {
    let below = binomial::at_most(group.count, group.of, rate);
    let above = binomial::at_least(group.count, group.of, rate);
    (2.0 * below.min(above)).min(1.0)
}

/// The fewest calls of which none may come back, for one to be this sure that the rate is below another.
///
/// Computed with scipy: of 36 calls without a callback one is 95 % sure that the rate is below 8 %.
///
/// ```
/// assert_eq!(proofwalk::audit::statistics::funnel::calls_without_any(0.08, 0.95), 36);
/// ```
pub fn calls_without_any(rate: f64, level: f64) -> u64 {
    ((1.0 - level).ln() / (1.0 - rate).ln()).ceil() as u64
}
