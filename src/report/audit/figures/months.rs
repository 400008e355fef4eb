//! The rate from month to month.

use jiff::{SignedDuration, Timestamp, ToSpan, civil::Date, tz::TimeZone};

use super::{all, counted};
use crate::audit::Audit;
use crate::audit::statistics::{Count, p_chart};

/// The months, and the rate they are held against.
#[derive(Debug)]
pub(in super::super) struct Months {
    /// The rate of all settled calls; of all calls so far where none is.
    pub centre: f64,
    /// Some calls are settled, so that each month counts those alone.
    pub is_settled: bool,
    /// In their order.
    pub each: Vec<Month>,
    /// Months before and after the archive: only calls whose clocks are doubted were closed in them.
    pub in_doubt: usize,
}

impl Months {
    /// What to say of those that are left out; nothing where none is.
    pub fn left_out(&self) -> Option<String> {
        let months = counted(self.in_doubt as u64, "month is", "months are");
        (self.in_doubt > 0)
            .then(|| format!("{months} left out: only calls whose clocks are in doubt were closed then."))
    }

    /// What the rate is that they are held against.
    pub fn centre_is(&self) -> &'static str {
        match self.is_settled {
            true => "the rate of all settled calls",
            false => "the rate of all calls so far",
        }
    }
}

/// One of them.
#[derive(Debug)]
pub(in super::super) struct Month {
    /// Which, as `2026-01`.
    pub name: String,
    /// What was counted, with its limits.
    pub point: p_chart::Month,
    /// Every call closed in it could be followed for the whole window.
    pub had_its_time: bool,
}

impl Month {
    /// What to say of it; nothing where it is like the others.
    pub fn words(&self) -> &'static str {
        match self.point.count.rate() {
            _ if !self.had_its_time => NOT_DONE,
            None => "no calls",
            Some(rate) if self.point.is_outside() && rate < self.point.low => "low",
            Some(_) if self.point.is_outside() => "high",
            Some(_) if self.point.is_small() => SMALL,
            Some(_) => "",
        }
    }
}

/// Of calls that have not all had their days.
pub(in super::super) const NOT_DONE: &str = "not done";

/// Of a month of which fewer than five callbacks were to be expected.
pub(in super::super) const SMALL: &str = "small";

/// The months of an audit, from its beginning to its end.
pub(in super::super) fn months(audit: &Audit) -> Months {
    let name = |time: Option<Timestamp>| time.map(|time| time.strftime("%Y-%m").to_string());
    let (from, until) = (name(audit.from), name(audit.until));
    let by_month: Vec<_> = (audit.by_month.iter())
        .filter(|month| from.as_ref().is_none_or(|from| *from <= month.month))
        .filter(|month| until.as_ref().is_none_or(|until| month.month <= *until))
        .collect();
    let is_settled = all(audit).of > 0;
    let counts: Vec<Count> = (by_month.iter())
        .map(|month| match is_settled {
            true => Count::new(month.settled.count, month.settled.of),
            false => Count::new(month.callbacks.count, month.callbacks.of),
        })
        .collect();
    let had_its_time: Vec<bool> = (by_month.iter())
        .map(|month| had_its_time(&month.month, audit.window_days, audit.until))
        .collect();
    let centre = all(audit).rate().or(Count::sum(&counts).rate()).unwrap_or(0.0);
    let chart = p_chart::Chart::about(centre, &counts);
    let each = by_month.iter().zip(chart.months).zip(had_its_time);
    Months {
        centre,
        is_settled,
        in_doubt: audit.by_month.len() - by_month.len(),
        each: each
            .map(|((month, point), had_its_time)| Month {
                name: month.month.clone(),
                point,
                had_its_time,
            })
            .collect(),
    }
}

fn had_its_time(month: &str, window: u32, until: Option<Timestamp>) -> bool {
    let ends = || {
        let first: Date = format!("{month}-01").parse().ok()?;
        let next = first.checked_add(1.month()).ok()?;
        let end = TimeZone::UTC.to_timestamp(next.at(0, 0, 0, 0)).ok()?;
        end.checked_add(SignedDuration::from_hours(24 * i64::from(window)))
            .ok()
    };
    matches!((ends(), until), (Some(ends), Some(until)) if ends <= until)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_month_had_its_time_when_its_last_call_was_followed_for_the_window() {
        let until = |text: &str| Some(text.parse().unwrap());
        assert!(had_its_time("2026-01", 30, until("2026-03-03T00:00:00Z")));
        assert!(!had_its_time("2026-01", 30, until("2026-03-02T23:59:59Z")));
        assert!(!had_its_time("2026-01", 30, None));
        assert!(!had_its_time("2026-01", u32::MAX, until("2026-03-03T00:00:00Z")));
        assert!(!had_its_time("no month", 30, until("2026-03-03T00:00:00Z")));
    }
}
