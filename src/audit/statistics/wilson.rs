//! Between which rates the true one lies, given a count: Wilson's score interval.
//!
//! The rates that a test of the count would not refuse. It stays within 0 and 1, has a width where the count is 0, and
//! covers the true rate about as often as it claims even in small groups.
//!
//! # Equation
//!
//! `(p + z²/2n ± z √(p(1 − p)/n + z²/4n²)) / (1 + z²/n)`, with `p` the share of `n` calls, and `z` = 1.96 for 95 %.
//!
//! # Range
//!
//! Any count of any number. Of no calls nothing is known: 0 to 1.
//!
//! # Example
//!
//! Published: 4 of 20, between 0.0807 and 0.4160, in the output of the R package below.
//!
//! ```
//! let (low, high) = proofwalk::audit::statistics::wilson(4, 20);
//! assert!((low - 0.08066).abs() < 1e-5 && (high - 0.41602).abs() < 1e-5);
//! ```
//!
//! # References
//!
//! - E. B. Wilson, *Probable inference, the law of succession, and statistical inference*, JASA 22 (1927).
//! - L. D. Brown, T. T. Cai, A. DasGupta, *Interval estimation for a binomial proportion*, Statistical Science 16 (2001).
//! - Checked with output of R's `binom.confint` and `prop.test`, as kept in the tests of statsmodels and scipy.

use super::{LEVEL, normal};

/// Low and high end of the 95 % interval, as shares.
pub fn wilson(count: u64, of: u64) -> (f64, f64) {
    at_level(count, of, LEVEL)
}

/// The same with another level, between 0 and 1.
pub fn at_level(count: u64, of: u64, level: f64) -> (f64, f64) {
    if of == 0 {
        return (0.0, 1.0);
    }
    let count = count.min(of);
    let (n, z) = (of as f64, normal::two_sided(level));
    let p = count as f64 / n;
    let middle = p + z * z / (2.0 * n);
    let half = z * (p * (1.0 - p) / n + z * z / (4.0 * n * n)).sqrt();
    let whole = 1.0 + z * z / n;
    // At the ends the two terms are equal, and what is left of them is only rounding.
    let low = if count == 0 { 0.0 } else { (middle - half) / whole };
    let high = if count == of { 1.0 } else { (middle + half) / whole };
    (low, high)
}
