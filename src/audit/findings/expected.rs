//! The share of calls that is to be expected back by a day.

use super::super::auditor::Window;
use super::super::statistics::LEVEL;
use super::super::statistics::survival::{Curve, Wait};
use super::super::summary::FollowUp;

/// The day that is always asked for.
const USUAL: f64 = 30.0;

/// What is to be expected by the days that are asked for.
#[derive(Clone, Copy, Debug)]
pub(super) struct Expectations {
    pub at_30_days: Expectation,
    pub at_window: Expectation,
    /// Days that the longest was followed; none where none was.
    pub followed_days: Option<f64>,
}

/// Kaplan and Meier's estimate of the share that is called back by a day.
#[derive(Clone, Copy, Debug)]
pub(super) struct Expectation {
    /// Of a day up to which nothing was followed, the share by the last that is known.
    pub share: f64,
    /// The low end of its interval; none where nothing was followed for so long.
    pub low: Option<f64>,
    /// The high end of its interval.
    pub high: Option<f64>,
}

impl Expectations {
    /// What these say.
    pub fn of(follow_ups: impl Iterator<Item = FollowUp>, window: Window) -> Self {
        let window = f64::from(window.days);
        let waits = follow_ups.map(|follow_up| Wait {
            time: follow_up.days(),
            came: follow_up.called_back(),
        });
        let curve = Curve::up_to(window.max(USUAL), waits);
        Self {
            at_30_days: Expectation::at(&curve, USUAL),
            at_window: Expectation::at(&curve, window),
            followed_days: curve.last(),
        }
    }
}

impl Expectation {
    fn at(curve: &Curve, day: f64) -> Self {
        let estimate = curve.at(day, LEVEL);
        let is_known = estimate.is_known();
        Self {
            share: 1.0 - estimate.still,
            low: is_known.then_some(1.0 - estimate.high),
            high: is_known.then_some(1.0 - estimate.low),
        }
    }

    /// The share, where it is known.
    pub fn known(&self) -> Option<f64> {
        self.low.map(|_| self.share)
    }
}
