//! Between which rates the true one lies, and never less surely than claimed: the exact interval of Clopper and Pearson.
//!
//! For where a claim must hold at any price: it is wider than need be, and in small groups much wider.
//!
//! # Equation
//!
//! The low end is the rate at which counting `k` or more of `n` has half the chance that is left (2.5 % for 95 %), the high
//! end the one at which counting `k` or fewer has: quantiles of the beta distributions of `k`, `n − k + 1` and of `k + 1`,
//! `n − k`.
//!
//! # Range
//!
//! Any count of any number. Of no calls nothing is known: 0 to 1.
//!
//! # Example
//!
//! Published: 4 of 20, between 0.0573 and 0.4366, in the output of the R package below.
//!
//! ```
//! let (low, high) = proofwalk::audit::statistics::exact::interval(4, 20, 0.95);
//! assert!((low - 0.05733).abs() < 1e-5 && (high - 0.43661).abs() < 1e-5);
//! ```
//!
//! # References
//!
//! - C. J. Clopper, E. S. Pearson, *The use of confidence or fiducial limits illustrated in the case of the binomial*,
//!   Biometrika 26 (1934).
//! - Checked with output of R's `binom.confint`, as kept in the tests of statsmodels.

use super::beta;

/// Low and high end, as shares, for a level between 0 and 1.
pub fn interval(count: u64, of: u64, level: f64) -> (f64, f64) {
    let count = count.min(of);
    let tail = 0.5 * (1.0 - level);
    let (k, others) = (count as f64, (of - count) as f64);
    let low = match count {
        0 => 0.0,
        _ => beta::quantile(k, others + 1.0, tail),
    };
    let high = match count == of {
        true => 1.0,
        false => beta::quantile(k + 1.0, others, 1.0 - tail),
    };
    (low, high)
}
