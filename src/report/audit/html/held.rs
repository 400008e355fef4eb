//! Which verdicts held, and how often each fault was met by them.

use maud::{Markup, html};

use super::intervals::{self, Interval};
use super::{beside, section, table};
use crate::audit::{Audit, Learned, Rate};
use crate::report::audit::figures::{Place, UNDER, days, percent, percents, spoken};
use crate::source::Safe;

/// The section; nothing where no fault was proven.
pub(super) fn section_of(audit: &Audit) -> Option<Markup> {
    let learned = &audit.learned;
    if learned.is_empty() {
        return None;
    }
    let all: u64 = learned.iter().map(|row| row.held).sum();
    let names: Vec<Safe> = learned.iter().map(|row| spoken(&row.fault)).collect();
    let intervals: Vec<Interval<'_>> = (learned.iter().zip(&names))
        .map(|(row, name)| Interval {
            name,
            rate: Rate::new(row.held, all),
            weight: row.held,
            place: Place::Within,
        })
        .collect();
    let rows: Vec<Vec<String>> = (learned.iter().zip(&intervals))
        .map(|(row, interval)| cells(row, interval))
        .collect();
    let heads = [
        "Fault",
        "Proven",
        "Held",
        "Came back",
        "Not done",
        "Share of what held",
        "95 %",
    ];
    let body = html! {
        p {
            "A verdict held if it was proven, and nobody called back in the " (days(audit.window_days)) " after it; “not done” has not had "
            "that time yet. What is met often is worth asking for first: " code { "proofwalk audit DIR --format weights" }
            " prints these as weights of a library's faults."
        }
        (beside(
            &intervals::chart("held", "How often each fault was met, by verdicts that held", &intervals, None),
            &table("Proven faults", &heads, &rows),
        ))
    };
    Some(section("held", "Verdicts that held", &body))
}

fn cells(row: &Learned, interval: &Interval<'_>) -> Vec<String> {
    let Rate {
        rate,
        low,
        high,
        too_small,
        ..
    } = interval.rate;
    let not_done = row.proven.saturating_sub(row.held + row.came_back);
    vec![
        interval.name.to_string(),
        row.proven.to_string(),
        row.held.to_string(),
        row.came_back.to_string(),
        not_done.to_string(),
        match too_small {
            true => UNDER.to_owned(),
            false => percent(rate),
        },
        percents(low, high),
    ]
}
