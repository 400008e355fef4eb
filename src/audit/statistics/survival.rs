//! How long after a call the next one comes, where some have not had their time yet: the curve of Kaplan and Meier.
//!
//! A call closed last week has not had its month. To count it as a success would flatter the rate, to leave it out would waste it:
//! it counts for the days it has had.
//!
//! # Equation
//!
//! `S(t) = Π (1 − d/n)` over the times up to `t` at which something came, `d` the number that came and `n` those still waited for
//! just before. What was watched up to a time counts as waited for at that time.
//!
//! Greenwood's variance is `S² Σ d/(n(n − d))`; the interval is taken on the scale of `ln(−ln S)`, so that it stays within 0 and 1:
//! `S^exp(±z √(Σ d/(n(n − d))) / ln S)`.
//!
//! # Range
//!
//! Whether a call is watched to its end must have nothing to do with whether it comes back. Past the last time that anything was
//! watched the curve is not known; [`Estimate::is_watched`] tells. Where nothing has come yet, the interval is Wilson's for
//! those still waited for, since the formula above would claim certainty.
//!
//! # Example
//!
//! Constructed, exact by hand: of twenty calls four came back, but those closed lately were not watched for all thirty days. Not
//! 4/20 but 1097/4256 come back within thirty.
//!
//! ```
//! use proofwalk::audit::statistics::survival::{Curve, Wait};
//!
//! let came = [3.0, 7.0, 12.0, 25.0].map(|time| Wait { time, came: true });
//! let watched = [2.0, 5.0, 5.0, 9.0, 14.0, 18.0, 20.0, 28.0].into_iter().chain([30.0; 8]);
//! let curve = Curve::of(came.into_iter().chain(watched.map(|time| Wait { time, came: false })));
//! let within = 1.0 - curve.at(30.0, 0.95).still;
//! assert!((within - 1097.0 / 4256.0).abs() < 1e-12);
//! ```
//!
//! # References
//!
//! - E. L. Kaplan, P. Meier, *Nonparametric estimation from incomplete observations*, JASA 53 (1958).
//! - J. D. Kalbfleisch, R. L. Prentice, *The Statistical Analysis of Failure Time Data* (1980): the interval.
//! - Checked with lifelines, with the leukaemia data of R's package survival, and with examples of the Boston University School
//!   of Public Health and of real-statistics.com, as kept in the tests of scipy.

use super::{normal, wilson};

/// How long one call was watched, in any unit, and whether what was waited for came at the end of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wait {
    /// From its start, never negative.
    pub time: f64,
    /// Whether it came; otherwise watching ended.
    pub came: bool,
}

/// The curve.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Curve {
    /// The times at which something came, in order.
    pub steps: Vec<Step>,
    /// The times of the waits up to the last that is asked for, in order.
    times: Vec<f64>,
    /// How many lasted longer.
    longer: usize,
    /// The longest time.
    last: Option<f64>,
}

/// One step down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// When.
    pub time: f64,
    /// Those waited for just before.
    pub at_risk: u64,
    /// How many came.
    pub came: u64,
    /// The share for which it had not come after that.
    pub still: f64,
    /// Greenwood's sum so far.
    sum: f64,
}

/// What the curve says of a time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The share for which it had not come by then.
    pub still: f64,
    /// The low end of its interval.
    pub low: f64,
    /// The high end of its interval.
    pub high: f64,
    /// Greenwood's standard error.
    pub standard_error: f64,
    /// Those still waited for at that time.
    pub at_risk: u64,
}

impl Estimate {
    /// Whether anything was watched for so long.
    pub fn is_watched(&self) -> bool {
        self.at_risk > 0
    }

    /// Whether the share is known: something was watched for so long, or it had come for all before.
    pub fn is_known(&self) -> bool {
        self.is_watched() || self.still <= 0.0
    }
}

impl Curve {
    /// The curve of these waits; times that are no number are left out.
    pub fn of(waits: impl IntoIterator<Item = Wait>) -> Self {
        Self::up_to(f64::INFINITY, waits)
    }

    /// The same for times up to this one only: of a long archive, most waits last longer, and are counted.
    pub fn up_to(until: f64, waits: impl IntoIterator<Item = Wait>) -> Self {
        let (mut times, mut came) = (Vec::new(), Vec::new());
        let (mut longer, mut last) = (0, None);
        for wait in waits.into_iter().filter(|wait| !wait.time.is_nan()) {
            last = Some(last.map_or(wait.time, |last: f64| last.max(wait.time)));
            if wait.time > until {
                longer += 1;
                continue;
            }
            times.push(wait.time);
            came.extend(wait.came.then_some(wait.time));
        }
        times.sort_unstable_by(f64::total_cmp);
        came.sort_unstable_by(f64::total_cmp);
        let mut steps = Vec::new();
        let (mut still, mut sum) = (1.0, 0.0);
        let mut before = 0;
        for same in came.chunk_by(|one, other| one == other) {
            let time = same[0];
            before += times[before..].partition_point(|known| *known < time);
            let (came, at_risk) = (same.len() as u64, (times.len() - before + longer) as u64);
            let (d, n) = (came as f64, at_risk as f64);
            still *= 1.0 - d / n;
            sum += d / (n * (n - d));
            steps.push(Step {
                time,
                at_risk,
                came,
                still,
                sum,
            });
        }
        Self {
            steps,
            times,
            longer,
            last,
        }
    }

    /// How many were waited for.
    pub fn len(&self) -> usize {
        self.times.len() + self.longer
    }

    /// Whether nothing was waited for.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// The last time that anything was watched.
    pub fn last(&self) -> Option<f64> {
        self.last
    }

    /// What it says of a time, with an interval of a level.
    pub fn at(&self, time: f64, level: f64) -> Estimate {
        let at_risk = (self.len() - self.times.partition_point(|known| *known < time)) as u64;
        let past = self.steps.partition_point(|step| step.time <= time);
        let Some(step) = past.checked_sub(1).map(|at| self.steps[at]) else {
            let (_, most) = wilson::at_level(0, at_risk, level);
            return Estimate {
                still: 1.0,
                low: 1.0 - most,
                high: 1.0,
                standard_error: 0.0,
                at_risk,
            };
        };
        let (low, high) = match step.still > 0.0 {
            true => step.interval(level),
            // Nobody is left to learn from: the last interval that could be given still bounds it.
            false => {
                let before = past.checked_sub(2).map(|at| self.steps[at].interval(level));
                (0.0, before.map_or(1.0, |(_, high)| high))
            }
        };
        let standard_error = match step.still > 0.0 {
            true => step.still * step.sum.sqrt(),
            false => 0.0,
        };
        Estimate {
            still: step.still,
            low,
            high,
            standard_error,
            at_risk,
        }
    }
}

impl Step {
    fn interval(&self, level: f64) -> (f64, f64) {
        let off = normal::two_sided(level) * self.sum.sqrt() / self.still.ln().abs();
        (self.still.powf(off.exp()), self.still.powf((-off).exp()))
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::{Curve, Wait};

    proptest! {
        #[test]
        fn a_curve_up_to_a_time_says_the_same_up_to_there(
            waits in prop::collection::vec((0_u8..60, any::<bool>()), 0..60),
            until in 0_u8..60,
        ) {
            let waits = waits.into_iter().map(|(time, came)| Wait { time: time.into(), came });
            let (whole, cut) = (Curve::of(waits.clone()), Curve::up_to(until.into(), waits));
            for time in (0..=until).map(f64::from) {
                prop_assert_eq!(whole.at(time, 0.95), cut.at(time, 0.95));
            }
            prop_assert_eq!((whole.len(), whole.last()), (cut.len(), cut.last()));
        }
    }
}
