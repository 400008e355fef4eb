//! The share of calls that is to be expected back within the window.

use super::{counted, curve, percent, percents};
use crate::audit::{Audit, TOO_SMALL};

/// What is known of it.
#[derive(Debug, PartialEq)]
pub(in super::super) enum Expected {
    /// No call could be followed.
    Nothing,
    /// Nobody was followed for so long: the share by the last whole day that is known, where there is one.
    NotKnown(Option<String>),
    /// Its interval, of too few calls for a share.
    Between(String),
    /// The share, and its interval.
    Share(String, String),
}

/// What is to be expected of the calls of an audit.
pub(in super::super) fn expected(audit: &Audit) -> Expected {
    let back = &audit.callbacks;
    if back.rate.of == 0 {
        return Expected::Nothing;
    }
    let known = back.at_window.zip(back.at_window_low.zip(back.at_window_high));
    let Some((share, (low, high))) = known else {
        let last = back.followed_days.map(f64::floor).filter(|day| *day >= 1.0);
        let day = last.and_then(|day| curve(audit)?.at(day));
        return Expected::NotKnown(day.map(|day| format!("{} by day {:.0}", percent(day.back), day.day)));
    };
    let interval = percents(low, high);
    match back.rate.of < TOO_SMALL {
        true => Expected::Between(interval),
        false => Expected::Share(percent(share), interval),
    }
}

impl Expected {
    /// As a sentence goes on after “Within 30 days”.
    pub fn told(&self, calls: u64) -> String {
        let calls = counted(calls, "call", "calls");
        match self {
            Self::Nothing => "no call could be followed".to_owned(),
            Self::NotKnown(None) => "not known yet: nobody was followed so long".to_owned(),
            Self::NotKnown(Some(day)) => format!("not known yet: nobody was followed so long; {day}"),
            Self::Between(interval) => format!("{interval} to be expected: {calls} say no more"),
            Self::Share(share, interval) => {
                format!("{share} to be expected, {interval}, once every call has had its days")
            }
        }
    }
}
