//! How soon calls come back.

use crate::audit::Audit;
use crate::audit::statistics::LEVEL;
use crate::audit::statistics::survival::{self, Wait};

/// Days that the curve looks ahead at least, where it can: a window of none would leave nothing to see.
const LEAST: f64 = 30.0;

/// Windows that the curve looks ahead.
const WINDOWS: f64 = 3.0;

/// The share of calls that has come back, day by day.
#[derive(Debug)]
pub(in super::super) struct Curve {
    curve: survival::Curve,
    /// The last day shown.
    pub until: f64,
}

/// What is known of a day.
#[derive(Clone, Copy, Debug)]
pub(in super::super) struct Day {
    /// Days of 24 h after closing.
    pub day: f64,
    /// The share that has come back by then.
    pub back: f64,
    /// The low end of its interval.
    pub low: f64,
    /// The high end of its interval.
    pub high: f64,
    /// Calls still watched then.
    pub watched: u64,
}

impl Curve {
    /// What is known of a day; nothing where no call was watched for so long.
    pub fn at(&self, day: f64) -> Option<Day> {
        let estimate = self.curve.at(day, LEVEL);
        estimate.is_watched().then_some(Day {
            day,
            back: 1.0 - estimate.still,
            low: 1.0 - estimate.high,
            high: 1.0 - estimate.low,
            watched: estimate.at_risk,
        })
    }

    /// What is known of so many days at equal distances, from the closing on.
    pub fn days(&self, many: usize) -> Vec<Day> {
        let days = (0..=many).map(|number| self.until * number as f64 / many as f64);
        days.map_while(|day| self.at(day)).collect()
    }

    /// Days to write out: the week, two, the window, and twice and three times the window.
    pub fn named_days(&self, window: u32) -> Vec<Day> {
        let window = f64::from(window);
        let mut days = vec![1.0, 7.0, 14.0, window, 2.0 * window, WINDOWS * window];
        days.sort_by(f64::total_cmp);
        days.dedup();
        days.into_iter().filter_map(|day| self.at(day)).collect()
    }
}

/// The curve of an audit; nothing where no call could be followed.
pub(in super::super) fn curve(audit: &Audit) -> Option<Curve> {
    let waits = audit.follow_ups.iter().map(|follow| Wait {
        time: follow.days(),
        came: follow.called_back(),
    });
    let most = (WINDOWS * f64::from(audit.window_days)).max(LEAST);
    let curve = survival::Curve::up_to(most, waits);
    let last = curve.last().filter(|last| *last > 0.0)?;
    let until = most.min(last);
    Some(Curve { curve, until })
}
