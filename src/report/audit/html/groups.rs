//! By complaint and by condemned part: each rate with its interval, on one scale.

use maud::{Markup, html};

use super::intervals::{self, Interval};
use super::{beside, section, table};
use crate::audit::{Audit, Rate};
use crate::report::audit::figures::{
    Groups, Standing, UNDER, WHAT_UNDER_IS, chance, percent, percents, standings, what_is_settled,
};
use crate::source::{Safe, safe};

/// Both sections.
pub(super) fn sections(audit: &Audit) -> Markup {
    html! {
        (one(audit, Groups::Complaints, "complaints", "By complaint", "Complaint"))
        (one(audit, Groups::Parts, "parts", "By condemned part", "Part"))
    }
}

fn one(audit: &Audit, groups: Groups, id: &str, title: &str, what: &str) -> Markup {
    let standings = standings(audit, groups);
    if standings.each.is_empty() {
        return Markup::default();
    }
    let heads = [
        what,
        "Closed",
        "Settled",
        "Came back",
        "Rate",
        "95 %",
        "In the funnel",
        "Chance",
        "Suspected misdiagnoses",
    ];
    let rows: Vec<Vec<String>> = standings.each.iter().map(row).collect();
    let names: Vec<Safe> = standings.each.iter().map(Standing::called).collect();
    let intervals: Vec<Interval<'_>> = (standings.each.iter().zip(&names))
        .map(|(standing, name)| Interval {
            name,
            rate: Rate::new(standing.count.count, standing.count.of),
            weight: standing.closed.of,
            place: standing.place,
        })
        .collect();
    let title_of_chart = format!("{title}: the share of settled calls that came back on another visit");
    let chart = intervals::chart(id, &title_of_chart, &intervals, standings.all.rate());
    section(
        id,
        title,
        &html! {
            p { (what_is_settled(audit)) " " (WHAT_UNDER_IS) }
            (beside(&chart, &table("Settled calls that came back on another visit", &heads, &rows)))
            p { (safe(&standings.told())) }
        },
    )
}

fn row(standing: &Standing) -> Vec<String> {
    let rate = Rate::new(standing.count.count, standing.count.of);
    vec![
        standing.called().to_string(),
        standing.closed.of.to_string(),
        rate.of.to_string(),
        rate.count.to_string(),
        match rate.too_small {
            true => UNDER.to_owned(),
            false => percent(rate.rate),
        },
        match rate.of {
            0 => "—".to_owned(),
            _ => percents(rate.low, rate.high),
        },
        standing.place.words().to_owned(),
        standing.chance.map_or("—".to_owned(), chance),
        standing.suspected.to_string(),
    ]
}
