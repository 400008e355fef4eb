//! Which verdicts held, and how often each fault was met by them.

use std::cmp::Reverse;

use maud::{Markup, html};

use super::intervals::{Interval, Scale};
use super::section;
use super::table::{Cell, cells, table};
use crate::audit::{Audit, Learned, Rate};
use crate::report::audit::figures::{Place, UNDER, counted, days, percent, percents, spoken};
use crate::source::Safe;

/// Most faults that are shown at once: those whose verdicts held most often.
const SHOWN: usize = 20;

/// The section; nothing where no fault was proven.
pub(super) fn section_of(audit: &Audit) -> Option<Markup> {
    if audit.learned.is_empty() {
        return None;
    }
    let mut learned: Vec<&Learned> = audit.learned.iter().collect();
    learned.sort_by_key(|row| Reverse(row.held));
    let all: u64 = learned.iter().map(|row| row.held).sum();
    let names: Vec<Safe> = learned.iter().map(|row| spoken(&row.fault)).collect();
    let intervals: Vec<Interval<'_>> = (learned.iter().zip(&names))
        .map(|(row, name)| Interval {
            name,
            rate: Rate::new(row.held, all),
            place: Place::Within,
        })
        .collect();
    let scale = Scale::of(&intervals, None);
    let mut heads = cells([
        "Fault",
        "Proven",
        "Held",
        "Came back",
        "Not done",
        "Share of all that held",
    ]);
    heads.push(scale.head());
    heads.push("95 %".into());
    let rows: Vec<Vec<Cell>> = (learned.iter().zip(&intervals))
        .map(|(row, interval)| line(row, interval, &scale))
        .collect();
    let (first, rest) = rows.split_at(rows.len().min(SHOWN));
    let more = counted(rest.len() as u64, "fault more", "faults more");
    let body = html! {
        p {
            "A verdict held if it was proven, and nobody called back in the " (days(audit.window_days)) " after it; “not done” has not had "
            "that time yet. “Share” is that of all " (all) " verdicts that held. What is met often is worth asking for first: "
            code { "proofwalk audit DIR --format weights" } " prints these as weights of a library's faults."
        }
        (scale.legend())
        (table("Proven faults, those first whose verdicts held most often", &heads, first))
        @if !rest.is_empty() {
            details.screen {
                summary { (more) }
                (table("The other proven faults", &heads, rest))
            }
            p.more.paper { "and " (more) ": " code { "proofwalk audit DIR --format json" } " lists them all, under “learned”" }
        }
    };
    Some(section("held", "Verdicts that held", &body))
}

fn line(row: &Learned, interval: &Interval<'_>, scale: &Scale) -> Vec<Cell> {
    let Rate {
        rate,
        low,
        high,
        too_small,
        ..
    } = interval.rate;
    let not_done = row.proven.saturating_sub(row.held + row.came_back);
    vec![
        interval.name.to_string().into(),
        row.proven.to_string().into(),
        row.held.to_string().into(),
        row.came_back.to_string().into(),
        not_done.to_string().into(),
        match too_small {
            true => UNDER.into(),
            false => percent(rate).into(),
        },
        scale.draw(interval),
        percents(low, high).into(),
    ]
}
