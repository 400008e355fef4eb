//! Between which rates the true one lies, as a belief: the interval from Jeffreys' prior.
//!
//! What one may believe of a rate that one knew nothing of before the count: the fault weights are of this kind.
//!
//! # Equation
//!
//! The middle part of the beta distribution of `k + ½` and `n − k + ½`, with as much left above as below.
//!
//! # Range
//!
//! Any count of any number. Its low end is above 0 even for a count of 0; where that matters, take Wilson's.
//!
//! # Example
//!
//! Published: 4 of 20, between 0.0715 and 0.4082, in the output of the R package below.
//!
//! ```
//! let (low, high) = proofwalk::audit::statistics::jeffreys::interval(4, 20, 0.95);
//! assert!((low - 0.07152).abs() < 1e-5 && (high - 0.40823).abs() < 1e-5);
//! ```
//!
//! # References
//!
//! - L. D. Brown, T. T. Cai, A. DasGupta, *Interval estimation for a binomial proportion*, Statistical Science 16 (2001).
//! - Checked with output of R's `binom.confint`, as kept in the tests of statsmodels.

use super::beta;

/// Low and high end, as shares, for a level between 0 and 1.
pub fn interval(count: u64, of: u64, level: f64) -> (f64, f64) {
    let count = count.min(of);
    beta::middle(count as f64 + 0.5, (of - count) as f64 + 0.5, level)
}
