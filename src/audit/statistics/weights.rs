//! How often each fault is met, learned from verdicts that held, and how surely.
//!
//! A verdict held if no callback followed it. What a library says of its faults' weights is a senior's opinion; the calls are drawn
//! from that towards what they say, the farther the more of them there are.
//!
//! # Equation
//!
//! The author's weights `w` of `m` faults count as half a verdict a fault, `m/2` in all, shared out as they have it: fault `i` begins with
//! `aᵢ = m/2 · wᵢ/Σw` verdicts, the parameters of a Dirichlet distribution. With `kᵢ` of `n` verdicts its share is
//! `(aᵢ + kᵢ)/(m/2 + n)`. A weight is that share times `Σw`, so that it compares with the author's. Where no author gives any, this is
//! Jeffreys' prior, and weights average 1.
//!
//! The interval is of the calls alone: Jeffreys' of `kᵢ` of `n`, times `Σw`; of none from 0 on, of all up to the whole. One that leans on
//! the author as well holds as often as it claims only where the author is right. The weight may lie outside it, where the author says
//! something else than the calls.
//!
//! # Range
//!
//! Two faults and more, that a call ends in one of; weights above nothing. A verdict that no one has called back about held as far as is
//! known, no more. The author's weights must not have been learned from the same calls, or those count twice.
//!
//! # Example
//!
//! Weights of 2, 1 and 1 begin with 0.75, 0.375 and 0.375 verdicts. After 9, 1 and 0 the first has (9 + 0.75) of 11.5:
//!
//! ```
//! use proofwalk::audit::statistics::weights::learned;
//!
//! let weights = learned(&[2.0, 1.0, 1.0], &[9, 1, 0], 0.95);
//! assert!((weights[0].weight - 4.0 * 9.75 / 11.5).abs() < 1e-12);
//! assert!((weights[2].weight - 4.0 * 0.375 / 11.5).abs() < 1e-12);
//! ```
//!
//! # References
//!
//! - H. Jeffreys, *An invariant form for the prior probability in estimation problems*, Proceedings of the Royal Society A 186
//!   (1946), for half a verdict each. That a Dirichlet distribution stays one as verdicts are added is a textbook fact.

use super::jeffreys;

/// How many verdicts an author's weights count as, a fault.
pub const PRIOR: f64 = 0.5;

/// A fault's weight, drawn from its author's towards what the calls say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weight {
    /// How often it is met, relative to others: on the scale of the author's.
    pub weight: f64,
    /// The low end of the interval in which the calls alone have it.
    pub low: f64,
    /// The high end of that.
    pub high: f64,
}

/// The verdicts of each fault that its author's weight counts as.
pub fn prior(author: &[f64]) -> Vec<f64> {
    let scale = PRIOR * author.len() as f64 / author.iter().sum::<f64>();
    author.iter().map(|weight| weight * scale).collect()
}

/// The weights of faults from those of their author and how many verdicts of each held, with intervals of a level.
pub fn learned(author: &[f64], held: &[u64], level: f64) -> Vec<Weight> {
    let scale: f64 = author.iter().sum();
    let verdicts: Vec<f64> = (prior(author).iter().zip(held))
        .map(|(prior, held)| prior + *held as f64)
        .collect();
    let whole: f64 = verdicts.iter().sum();
    let all = held.iter().sum();
    let one = |(verdicts, held): (&f64, &u64)| {
        let (low, high) = match (*held, jeffreys::interval(*held, all, level)) {
            (0, _) if all == 0 => (0.0, 1.0),
            (0, (_, high)) => (0.0, high),
            (held, (low, _)) if held == all => (low, 1.0),
            (_, both) => both,
        };
        Weight {
            weight: scale * verdicts / whole,
            low: scale * low,
            high: scale * high,
        }
    };
    verdicts.iter().zip(held).map(one).collect()
}
