//! Rates below one another, each with its interval, on one scale.

use maud::{Markup, html};

use super::chart::{self, WIDTH, fine, rounded_up};
use crate::audit::Rate;
use crate::report::audit::figures::{Place, percent};
use crate::source::Safe;

/// Most rates that are drawn; those that weigh most.
const DRAWN: usize = 24;

/// A line's height, and where its interval begins and ends.
const LINE: f64 = 22.0;
const LEFT: f64 = 168.0;
const RIGHT: f64 = WIDTH - 18.0;
const FOOT: f64 = 24.0;

/// One rate.
pub(super) struct Interval<'n> {
    pub name: &'n Safe,
    pub rate: Rate,
    /// By which those are chosen that are drawn.
    pub weight: u64,
    /// Where in the funnel, where it is held against others.
    pub place: Place,
}

/// The chart; with the rate of all, that is drawn across.
pub(super) fn chart(id: &str, title: &str, intervals: &[Interval<'_>], all: Option<f64>) -> Markup {
    let mut weights: Vec<u64> = intervals.iter().map(|interval| interval.weight).collect();
    weights.sort_unstable_by(|one, other| other.cmp(one));
    let least = weights.get(DRAWN - 1).copied().unwrap_or(0);
    let drawn: Vec<&Interval<'_>> = (intervals.iter())
        .filter(|interval| interval.weight >= least)
        .take(DRAWN)
        .collect();
    // A group of three calls has an interval as wide as the chart, and would flatten all others, where there are some.
    let has_large = drawn.iter().any(|interval| !interval.rate.too_small);
    let large = drawn
        .iter()
        .filter(|interval| interval.rate.of > 0 && !(has_large && interval.rate.too_small));
    let most = large.map(|interval| interval.rate.high);
    let most = most.fold((2.0 * all.unwrap_or(0.0)).max(0.05), f64::max);
    let most = rounded_up(most).min(1.0);
    let across = |share: f64| LEFT + (RIGHT - LEFT) * (share / most).min(1.0);
    let x = |share: f64| fine(across(share));
    let foot = LINE * drawn.len() as f64 + 6.0;
    let (title_id, told_id) = (format!("{id}-title"), format!("{id}-told"));
    html! {
        svg viewBox=(format!("0 0 {WIDTH} {}", foot + FOOT)) role="img" aria-labelledby=(format!("{title_id} {told_id}")) {
            title id=(title_id) { (title) }
            desc id=(told_id) {
                "A line is the 95 % interval, a mark the rate; hollow where it is of under 20; pointed where more or less was counted "
                "than chance gives a group of that size."
                @if let Some(all) = all { " The broken line is the rate of all, " (percent(all)) "." }
            }
            @if let Some(all) = all { path.all d=(format!("M{} 2V{foot}", x(all))) {} }
            @for (number, interval) in drawn.iter().enumerate() {
                @let y = LINE * (number as f64 + 0.5) + 4.0;
                @let rate = &interval.rate;
                text x=(LEFT - 8.0) y=(fine(y + 4.0)) text-anchor="end" { (interval.name.cut(24)) }
                @if rate.of > 0 {
                    path.line d=(format!("M{} {}H{}", x(rate.low), fine(y), x(rate.high))) {}
                    (mark(interval, across(rate.rate), y))
                }
            }
            path.axis d=(format!("M{LEFT} {foot}H{RIGHT}")) {}
            text.soft x=(LEFT) y=(foot + 17.0) text-anchor="middle" { "0 %" }
            text.soft x=(RIGHT) y=(foot + 17.0) text-anchor="end" { (percent(most)) }
        }
    }
}

fn mark(interval: &Interval<'_>, x: f64, y: f64) -> Markup {
    let Rate { count, of, .. } = interval.rate;
    let told = format!("{}: {count} of {of}", interval.name);
    match interval.place {
        _ if interval.rate.too_small => chart::point("hollow", x, y, &told),
        Place::TooFew | Place::Within => chart::point("point", x, y, &told),
        Place::High | Place::VeryHigh => chart::arrow(true, x, y, &told),
        Place::Low | Place::VeryLow => chart::arrow(false, x, y, &told),
    }
}
