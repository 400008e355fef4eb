//! How often each fault is met, learned from verdicts that held, and how surely.
//!
//! A verdict held if no callback followed it. What a library says of its faults' weights is a senior's opinion; this is what the
//! calls say, with how little a few of them say.
//!
//! # Equation
//!
//! With half a verdict added to each of `m` faults, which is Jeffreys' prior, the share of one with `k` of `n` verdicts is
//! `(k + ½)/(n + m/2)`, and its interval the middle part of the beta distribution of `k + ½` and `n − k + (m − 1)/2`. A weight is that share
//! times `m`, so that the weights average 1, as they do where an author gives none.
//!
//! # Range
//!
//! Two faults and more, that a call ends in one of. A verdict that no one has called back about held as far as is known, no more.
//!
//! # Example
//!
//! ```
//! use proofwalk::audit::statistics::weights::learned;
//!
//! let weights = learned(&[9, 1, 0], 0.95);
//! assert!((weights[0].weight - 3.0 * 9.5 / 11.5).abs() < 1e-12);
//! assert!(weights[2].weight > 0.0 && weights[2].low > 0.0);
//! ```
//!
//! # References
//!
//! - H. Jeffreys, *An invariant form for the prior probability in estimation problems*, Proceedings of the Royal Society A 186
//!   (1946). The shares of a Dirichlet distribution are each beta distributed: a textbook fact.

use super::beta;

/// What is added to each count.
pub const PRIOR: f64 = 0.5;

/// A fault's weight as the calls have it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weight {
    /// How often it is met, relative to the average of 1.
    pub weight: f64,
    /// The low end of its interval.
    pub low: f64,
    /// The high end of its interval.
    pub high: f64,
}

/// The weights of faults from how many verdicts of each held, with intervals of a level.
pub fn learned(held: &[u64], level: f64) -> Vec<Weight> {
    let many = held.len() as f64;
    let whole = held.iter().map(|count| *count as f64 + PRIOR).sum::<f64>();
    let one = |count: &u64| {
        let alpha = *count as f64 + PRIOR;
        let (low, high) = match held.len() {
            1 => (1.0, 1.0),
            _ => beta::middle(alpha, whole - alpha, level),
        };
        Weight {
            weight: many * alpha / whole,
            low: many * low,
            high: many * high,
        }
    };
    held.iter().map(one).collect()
}
