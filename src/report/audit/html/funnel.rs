//! Technicians in the funnel: whether any differs by more than the number of their calls explains.

use maud::{Markup, html};

use super::chart::{self, Across, Frame, fine};
use super::section;
use super::table::{Cell, cells, table};
use crate::audit::statistics::funnel::{ACT, WARN};
use crate::audit::statistics::shrinkage::Expected;
use crate::audit::{Audit, TOO_SMALL};
use crate::report::audit::figures::{
    Groups, Place, Standing, Standings, chance, percent, percents, standings, what_is_settled,
};
use crate::source::safe;

const TITLE: &str = "Technicians, not ranked";

/// Points of each limit.
const POINTS: u64 = 160;

/// The section; nothing where nobody's calls could be followed.
pub(super) fn section_of(audit: &Audit) -> Option<Markup> {
    let standings = standings(audit, Groups::Technicians);
    let most = standings.each.iter().map(|standing| standing.count.of).max()?;
    let rows: Vec<Vec<Cell>> = (standings.each.iter().zip(standings.expected()))
        .map(|(standing, expected)| row(&standings, standing, expected))
        .collect();
    let heads = cells([
        "Technician",
        "Settled of closed",
        "Came back",
        "Rate",
        "To expect",
        "95 % of that",
        "Funnel",
        "Chance",
    ]);
    let table = table("Technicians, in the order of their names", &heads, &rows);
    if !standings.is_settled() {
        let body = html! { p { (what_is_settled(audit)) } (table) };
        return Some(section("technicians", TITLE, &body));
    }
    let body = html! {
        p { (what_is_settled(audit)) }
        div.pair {
            figure { (chart_of(&standings, most)) }
            div {
                p {
                    "Each mark is a technician: the farther to the right, the more settled calls; the higher, the larger the share of them "
                    "that came back. The broken line is the rate of all, " (percent(standings.rate())) ". If that were everybody's, chance "
                    "alone would leave 95 of 100 in the inner field and 998 of 1000 in the outer one"
                    @if standings.factor.is_some() { "; both are wider here, since technicians differ among each other by more than chance" }
                    ". A triangle lies outside the inner field. A hollow mark has under " (TOO_SMALL) " settled calls, and is held against nothing."
                }
                p {
                    "In the table, “To expect” is a better guess of a rate than the count alone: it is drawn towards the others', the farther "
                    "the fewer the calls and the less technicians differ. “95 % of that” allows for what nobody knows of how much they differ: "
                    "of a hundred such intervals some five miss the rate itself. Who has under " (TOO_SMALL) " settled calls has neither, since it would say "
                    "little of them. “Chance” is how often chance alone would put anybody as far out, allowing for how many are looked at."
                }
                p { (safe(&standings.told())) }
            }
        }
        (table)
    };
    Some(section("technicians", TITLE, &body))
}

fn row(standings: &Standings, standing: &Standing, expected: Option<Expected>) -> Vec<Cell> {
    let few = standing.place == Place::TooFew;
    let rate = standing.count.rate().filter(|_| !few);
    cells([
        standing.called().to_string(),
        format!("{} of {}", standing.count.of, standing.closed.of),
        standings.shown(standing).count.to_string(),
        rate.map_or_else(nothing, percent),
        expected.map_or_else(nothing, |expected| percent(expected.rate)),
        expected.map_or_else(nothing, |expected| percents(expected.low, expected.high)),
        standings.words(standing).to_owned(),
        standing.chance.map_or_else(nothing, chance),
    ])
}

fn chart_of(standings: &Standings, most: u64) -> Markup {
    let across = most as f64 * 1.08;
    let rates = standings
        .each
        .iter()
        .filter_map(|standing| standing.count.rate().filter(|_| standing.count.of >= TOO_SMALL));
    let (_, small) = standings.limits(TOO_SMALL, ACT);
    let frame = Frame::new(across, rates.fold(small.min(0.5), f64::max));
    let drawn = html! {
        path.outer d=(field(standings, &frame, across, ACT)) {}
        path.field d=(field(standings, &frame, across, WARN)) {}
        path.all d=(format!("M{} {y}H{}", fine(frame.x(0.0)), fine(frame.x(across)), y = fine(frame.y(standings.rate())))) {}
        @for standing in &standings.each { (mark(&frame, standing)) }
    };
    let out = standings
        .each
        .iter()
        .filter(|standing| !matches!(standing.place, Place::TooFew | Place::Within));
    let told = format!(
        "{} technicians about the rate of all, {}; {} of them outside the inner limits. A triangle lies outside, a hollow mark has under 20 settled calls.",
        standings.each.len(),
        percent(standings.rate()),
        out.count()
    );
    let names = Across::numbers("settled calls", across);
    frame.draw(
        "technicians",
        "The share of each technician's settled calls that came back, against their number",
        &told,
        &names,
        &drawn,
    )
}

/// The field between the limits of a level.
fn field(standings: &Standings, frame: &Frame, across: f64, level: f64) -> String {
    let last = across as u64;
    let sizes: Vec<u64> = match last <= POINTS {
        true => (1..=last).collect(),
        false => (0..=POINTS)
            .map(|number| 1 + (last - 1) * number / POINTS)
            .collect(),
    };
    let point = |of: u64, share: f64| format!("{} {}", fine(frame.x(of as f64)), fine(frame.y(share)));
    let above = sizes.iter().map(|of| point(*of, standings.limits(*of, level).1));
    let below = sizes
        .iter()
        .rev()
        .map(|of| point(*of, standings.limits(*of, level).0));
    let points: Vec<String> = above.chain(below).collect();
    format!("M{}Z", points.join("L"))
}

fn mark(frame: &Frame, standing: &Standing) -> Markup {
    let Some(rate) = standing.count.rate() else {
        return Markup::default();
    };
    let (x, y) = (frame.x(standing.count.of as f64), frame.y(rate));
    let told = safe(&format!(
        "{}: {} of {}",
        standing.called(),
        standing.count.count,
        standing.count.of
    ));
    match standing.place {
        Place::TooFew => chart::point("hollow", x, y, told.as_str()),
        Place::Within => chart::point("point", x, y, told.as_str()),
        Place::High | Place::VeryHigh => chart::arrow(true, x, y, told.as_str()),
        Place::Low | Place::VeryLow => chart::arrow(false, x, y, told.as_str()),
    }
}

/// In a cell of which nothing can be said.
fn nothing() -> String {
    "—".to_owned()
}
