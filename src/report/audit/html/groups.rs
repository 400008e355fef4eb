//! By complaint and by condemned part: each rate with its interval, on one scale.

use maud::{Markup, html};

use super::intervals::{self, Interval};
use super::{beside, section, table};
use crate::audit::{Audit, Rate};
use crate::report::audit::figures::{
    Groups, Standing, Standings, WHAT_UNDER_IS, chance, percent, percents, standings, what_is_settled,
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
        "Settled",
        "Came back",
        "Rate",
        "95 %",
        "Funnel",
        "Chance",
        "Suspected",
    ];
    let rows: Vec<Vec<String>> = (standings.each.iter())
        .map(|standing| row(&standings, standing))
        .collect();
    let names: Vec<Safe> = standings.each.iter().map(Standing::called).collect();
    let intervals: Vec<Interval<'_>> = (standings.each.iter().zip(&names))
        .map(|(standing, name)| Interval {
            name,
            rate: rate(&standings, standing),
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
            p {
                (what_is_settled(audit)) " “Suspected” are suspected misdiagnoses. "
                @if standings.is_settled() { (WHAT_UNDER_IS) }
            }
            (beside(&chart, &table("Settled calls that came back on another visit", &heads, &rows)))
            @if standings.is_settled() { p { (safe(&standings.told())) } }
        },
    )
}

fn rate(standings: &Standings, standing: &Standing) -> Rate {
    let shown = standings.shown(standing);
    Rate::new(shown.count, shown.of)
}

fn row(standings: &Standings, standing: &Standing) -> Vec<String> {
    let rate = rate(standings, standing);
    vec![
        standing.called().to_string(),
        format!("{} of {}", standing.count.of, standing.closed.of),
        rate.count.to_string(),
        match rate.too_small {
            true => "—".to_owned(),
            false => percent(rate.rate),
        },
        match rate.of {
            0 => "—".to_owned(),
            _ => percents(rate.low, rate.high),
        },
        standings.words(standing).to_owned(),
        standing.chance.map_or("—".to_owned(), chance),
        standing.suspected.to_string(),
    ]
}
