//! By complaint and by condemned part: each rate with its interval, on one scale.

use maud::{Markup, html};

use super::intervals::{Interval, Scale};
use super::section;
use super::table::{Cell, cells, table};
use crate::audit::{Audit, Rate};
use crate::report::audit::figures::{
    Groups, LIMITS, Standing, Standings, WHAT_CHANCE_IS, WHAT_UNDER_IS, chance, percent, percents, standings,
    what_is_settled,
};
use crate::source::{Safe, safe};

/// Both sections.
pub(super) fn sections(audit: &Audit) -> Markup {
    html! {
        (one(audit, Groups::Complaints))
        (one(audit, Groups::Parts))
    }
}

fn one(audit: &Audit, groups: Groups) -> Markup {
    let (id, title, what) = match groups {
        Groups::Parts => ("parts", "By condemned part", "Part"),
        Groups::Complaints | Groups::Technicians => ("complaints", "By complaint", "Complaint"),
    };
    let standings = standings(audit, groups);
    if standings.each.is_empty() {
        return Markup::default();
    }
    let names: Vec<Safe> = standings.each.iter().map(Standing::called).collect();
    let intervals: Vec<Interval<'_>> = (standings.each.iter().zip(&names))
        .map(|(standing, name)| Interval {
            name,
            rate: rate(&standings, standing),
            place: standing.place,
        })
        .collect();
    let scale = Scale::of(&intervals, standings.all.rate());
    let mut heads = cells([what, "Settled of closed", "Came back", "Rate"]);
    heads.push(scale.head());
    heads.extend(cells(["95 %", "Funnel", "Chance", "Suspected"]));
    let rows: Vec<Vec<Cell>> = (standings.each.iter().zip(&intervals))
        .map(|(standing, interval)| row(&standings, standing, interval, &scale))
        .collect();
    section(
        id,
        title,
        &html! {
            p {
                @match groups {
                    // Complaints come first, and every call has one.
                    Groups::Parts => "Settled calls that condemned a part, counted and drawn as by complaint.",
                    Groups::Complaints | Groups::Technicians => { (explained(audit, &standings)) }
                }
            }
            @if standings.is_settled() { p { (safe(&standings.told())) } }
            @if groups != Groups::Parts { (scale.legend()) }
            (table(&format!("{title}: settled calls that came back on another visit"), &heads, &rows))
        },
    )
}

fn explained(audit: &Audit, standings: &Standings) -> Markup {
    html! {
        (what_is_settled(audit)) " “Suspected” are suspected misdiagnoses: a part was condemned, and the call that came back ended in "
        "another remedy. "
        @if standings.has_looked() { "“Funnel”: " (LIMITS) " " (WHAT_CHANCE_IS) " " }
        @if standings.is_settled() { (WHAT_UNDER_IS) }
    }
}

fn rate(standings: &Standings, standing: &Standing) -> Rate {
    let shown = standings.shown(standing);
    Rate::new(shown.count, shown.of)
}

fn row(standings: &Standings, standing: &Standing, interval: &Interval<'_>, scale: &Scale) -> Vec<Cell> {
    let rate = interval.rate;
    vec![
        standing.called().to_string().into(),
        format!("{} of {}", standing.count.of, standing.closed.of).into(),
        rate.count.to_string().into(),
        match rate.too_small {
            true => "—".into(),
            false => percent(rate.rate).into(),
        },
        scale.draw(interval),
        match rate.of {
            0 => "—".into(),
            _ => percents(rate.low, rate.high).into(),
        },
        standings.words(standing).into(),
        standing.chance.map_or("—".into(), |share| chance(share).into()),
        standing.suspected.to_string().into(),
    ]
}
