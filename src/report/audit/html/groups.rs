//! By complaint and by condemned part: each rate with its interval, on one scale.

use maud::{Markup, html};

use super::intervals::{self, Interval};
use super::{beside, section, table};
use crate::audit::{Audit, Rate};
use crate::report::audit::figures::{all, percent, percents, spoken};
use crate::source::Safe;

/// One group.
struct Group {
    name: Safe,
    rate: Rate,
    suspected: u64,
}

/// Both sections.
pub(super) fn sections(audit: &Audit) -> Markup {
    let trees = audit.by_tree.iter().map(|row| Group {
        name: spoken(&row.tree),
        rate: row.tally.callbacks,
        suspected: row.tally.suspected_misdiagnoses,
    });
    let parts = audit.by_part.iter().map(|row| Group {
        name: spoken(&row.part),
        rate: row.tally.callbacks,
        suspected: row.tally.suspected_misdiagnoses,
    });
    let rate = all(audit).rate().unwrap_or(0.0);
    html! {
        (one("complaints", "By complaint", "Complaint", trees.collect(), rate))
        (one("parts", "By condemned part", "Part", parts.collect(), rate))
    }
}

fn one(id: &str, title: &str, what: &str, groups: Vec<Group>, all: f64) -> Markup {
    let groups: Vec<Group> = groups.into_iter().filter(|group| group.rate.of > 0).collect();
    if groups.is_empty() {
        return Markup::default();
    }
    let heads = [
        what,
        "Calls",
        "Came back",
        "Rate",
        "95 %",
        "Suspected misdiagnoses",
    ];
    let rows: Vec<Vec<String>> = groups.iter().map(row).collect();
    let intervals: Vec<Interval<'_>> = (groups.iter())
        .map(|group| Interval {
            name: &group.name,
            rate: group.rate,
            weight: group.rate.of,
        })
        .collect();
    let title_of_chart = format!("{title}: the share of calls that came back");
    let chart = intervals::chart(id, &title_of_chart, &intervals, Some(all));
    section(
        id,
        title,
        &beside(&chart, &table("Calls that came back", &heads, &rows)),
    )
}

fn row(group: &Group) -> Vec<String> {
    let Rate {
        count,
        of,
        rate,
        low,
        high,
        too_small,
    } = group.rate;
    vec![
        group.name.to_string(),
        of.to_string(),
        count.to_string(),
        match too_small {
            true => "too few".to_owned(),
            false => percent(rate),
        },
        percents(low, high),
        group.suspected.to_string(),
    ]
}
