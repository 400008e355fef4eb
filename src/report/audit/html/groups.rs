//! By complaint and by condemned part: each rate with its interval, on one scale.

use maud::{Markup, html};

use super::chart::{WIDTH, fine, rounded_up};
use super::{beside, section, table};
use crate::audit::{Audit, Rate};
use crate::report::audit::figures::{all, percent, percents, spoken};
use crate::source::Safe;

/// Most groups that are drawn; those with the most calls.
const DRAWN: usize = 24;

/// A line's height, and where its interval begins and ends.
const LINE: f64 = 22.0;
const LEFT: f64 = 168.0;
const RIGHT: f64 = WIDTH - 18.0;
const FOOT: f64 = 24.0;

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
    let chart = chart(id, title, &groups, all);
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

fn chart(id: &str, title: &str, groups: &[Group], all: f64) -> Markup {
    let mut sizes: Vec<u64> = groups.iter().map(|group| group.rate.of).collect();
    sizes.sort_unstable_by(|one, other| other.cmp(one));
    let least = sizes[sizes.len().min(DRAWN) - 1];
    let drawn: Vec<&Group> = groups
        .iter()
        .filter(|group| group.rate.of >= least)
        .take(DRAWN)
        .collect();
    let large = drawn
        .iter()
        .filter(|group| !group.rate.too_small)
        .map(|group| group.rate.high);
    let most = rounded_up(large.fold((2.0 * all).max(0.05), f64::max)).min(1.0);
    let x = |share: f64| fine(LEFT + (RIGHT - LEFT) * (share / most).min(1.0));
    let foot = LINE * drawn.len() as f64 + 6.0;
    let (title_id, told_id) = (format!("{id}-title"), format!("{id}-told"));
    html! {
        svg viewBox=(format!("0 0 {WIDTH} {}", foot + FOOT)) role="img" aria-labelledby=(format!("{title_id} {told_id}")) {
            title id=(title_id) { (title) ": the share of calls that came back" }
            desc id=(told_id) { "A line is the 95 % interval, a mark the rate; hollow where too few calls. The broken line is the rate of all, " (percent(all)) "." }
            path.all d=(format!("M{} 2V{foot}", x(all))) {}
            @for (number, group) in drawn.iter().enumerate() {
                @let y = LINE * (number as f64 + 0.5) + 4.0;
                text x=(LEFT - 8.0) y=(fine(y + 4.0)) text-anchor="end" { (group.name.cut(24)) }
                path.line d=(format!("M{} {}H{}", x(group.rate.low), fine(y), x(group.rate.high))) {}
                circle class=(if group.rate.too_small { "hollow" } else { "point" }) cx=(x(group.rate.rate)) cy=(fine(y)) r="4.5" {}
            }
            path.axis d=(format!("M{LEFT} {foot}H{RIGHT}")) {}
            text.soft x=(LEFT) y=(foot + 17.0) text-anchor="middle" { "0 %" }
            text.soft x=(RIGHT) y=(foot + 17.0) text-anchor="end" { (percent(most)) }
        }
    }
}
