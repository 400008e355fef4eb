//! What to expect of a small group, given how much groups differ: its rate drawn towards that of all.
//!
//! Two callbacks on eight calls are not a rate of 25 %. How far such a figure is drawn towards the rate of all follows from how much
//! the groups really differ, which the large ones tell: little where they differ much, all the way where they do not.
//!
//! # Equation
//!
//! The rates of the groups are taken to scatter as a beta distribution with a mean `μ` and a size `s`, both those that make what
//! was counted most likely. What is to be expected of `k` in `n` is `(k + s μ)/(n + s)`, and the interval is the middle part of the
//! beta distribution of `k + s μ` and `n − k + s (1 − μ)`.
//!
//! # Range
//!
//! Three groups and more, and something counted in them, but not every time. Where the groups differ no more than chance makes them, `s`
//! is infinite and every group is expected at the rate of all. The interval takes the scatter as known: of a handful of groups it holds
//! some 80 times of a hundred where it claims 95. Where that matters, take [`partial_pooling`](super::partial_pooling).
//!
//! # Example
//!
//! ```
//! use proofwalk::audit::statistics::{Count, shrinkage::Scatter};
//!
//! let groups = [Count::new(2, 8), Count::new(30, 100), Count::new(5, 120), Count::new(9, 90)];
//! let scatter = Scatter::of(&groups).ok_or("too few")?;
//! let expected = scatter.expected(groups[0], 0.95);
//! assert!(expected.rate > 0.15 && expected.rate < 0.25);
//! # Ok::<(), &str>(())
//! ```
//!
//! # References
//!
//! - A. Gelman and others, *Bayesian Data Analysis*, chapter 5: tumours in 71 groups of rats (R. E. Tarone, Biometrics 38,
//!   1982).
//! - Published for the first seventy of them: sizes 2.304768 and 14.079707, in the vignette of the R package BayesGOF.

use statrs::function::gamma::{digamma, ln_gamma};

use super::{Count, beta, wilson};

/// Fewest groups of which something is said.
pub(super) const FEWEST: usize = 3;

/// Logarithms of the least and the greatest size looked at. A group would need millions of calls to tell the greatest from
/// no scatter at all.
const SIZES: (f64, f64) = (-3.0, 14.0);

/// Where the search stops: a hundred-thousandth of the size.
const FINE: f64 = 1e-5;

/// Halvings of the mean.
const HALVINGS: usize = 48;

/// How the rates of groups scatter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scatter {
    /// The middle of the rates.
    pub mean: f64,
    /// Calls that the knowledge of all the groups is worth for one of them; infinite where they do not differ.
    pub size: f64,
    all: Count,
}

/// What is to be expected of a group.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expected {
    /// Its rate.
    pub rate: f64,
    /// The low end of its interval.
    pub low: f64,
    /// The high end of its interval.
    pub high: f64,
}

impl Scatter {
    /// How these groups scatter; nothing where they are too few to tell.
    pub fn of(groups: &[Count]) -> Option<Self> {
        let groups: Vec<Count> = groups.iter().filter(|group| group.of > 0).copied().collect();
        let all = Count::sum(&groups);
        if groups.len() < FEWEST || all.count == 0 || all.count == all.of {
            return None;
        }
        let best = |log: f64| {
            let mean = best_mean(&groups, log.exp());
            (likelihood(&groups, mean, log.exp()), mean)
        };
        let log = greatest(SIZES, |log| best(log).0);
        let endless = log > SIZES.1 - 0.1;
        Some(Self {
            mean: match endless {
                true => all.rate()?,
                false => best(log).1,
            },
            size: if endless { f64::INFINITY } else { log.exp() },
            all,
        })
    }

    /// What is to be expected of one of them, with an interval of a level.
    pub fn expected(&self, group: Count, level: f64) -> Expected {
        if self.size.is_infinite() {
            let (low, high) = wilson::at_level(self.all.count, self.all.of, level);
            return Expected {
                rate: self.mean,
                low,
                high,
            };
        }
        let alpha = group.count as f64 + self.size * self.mean;
        let beta = (group.of - group.count) as f64 + self.size * (1.0 - self.mean);
        let (low, high) = beta::middle(alpha, beta, level);
        Expected {
            rate: alpha / (alpha + beta),
            low,
            high,
        }
    }
}

/// The logarithm of how likely the counts are, less what does not depend on the scatter.
pub(super) fn likelihood(groups: &[Count], mean: f64, size: f64) -> f64 {
    let (alpha, beta) = (size * mean, size * (1.0 - mean));
    let none = ln_gamma(alpha) + ln_gamma(beta) - ln_gamma(size);
    let of = |group: &Count| {
        let (count, calls) = (group.count as f64, group.of as f64);
        ln_gamma(alpha + count) + ln_gamma(beta + calls - count) - ln_gamma(size + calls) - none
    };
    groups.iter().map(of).sum()
}

/// The mean that is most likely for a size: where the slope, which falls all the way, passes zero.
fn best_mean(groups: &[Count], size: f64) -> f64 {
    let slope = |mean: f64| {
        let (alpha, beta) = (size * mean, size * (1.0 - mean));
        let (no_alpha, no_beta) = (digamma(alpha), digamma(beta));
        let of = |group: &Count| {
            let (count, others) = (group.count as f64, (group.of - group.count) as f64);
            digamma(alpha + count) - no_alpha - digamma(beta + others) + no_beta
        };
        groups.iter().map(of).sum::<f64>()
    };
    let (mut low, mut high) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        match slope(middle) > 0.0 {
            true => low = middle,
            false => high = middle,
        }
    }
    0.5 * (low + high)
}

/// Where a function with one hill is greatest, by golden sections.
fn greatest((mut low, mut high): (f64, f64), height: impl Fn(f64) -> f64) -> f64 {
    let golden = 0.5 * (5.0_f64.sqrt() - 1.0);
    let (mut left, mut right) = (high - golden * (high - low), low + golden * (high - low));
    let (mut at_left, mut at_right) = (height(left), height(right));
    while high - low > FINE {
        if at_left > at_right {
            (high, right, at_right) = (right, left, at_left);
            left = high - golden * (high - low);
            at_left = height(left);
        } else {
            (low, left, at_left) = (left, right, at_right);
            right = low + golden * (high - low);
            at_right = height(right);
        }
    }
    0.5 * (low + high)
}
