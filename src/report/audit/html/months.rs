//! The rate from month to month: the p-chart.

use maud::{Markup, html};

use super::chart::{self, Across, Frame, steps};
use super::table::{Cell, cells, table};
use super::{beside, section};
use crate::audit::Audit;
use crate::report::audit::figures::{
    Month, Months, NOT_DONE, SMALL, WHAT_COUNTS, counted, days, months, percent, percents, what_is_settled,
    who_counts,
};

/// Most months that are marked by name.
const NAMED: usize = 6;

/// The section.
pub(super) fn section_of(audit: &Audit) -> Option<Markup> {
    let months = months(audit);
    if months.each.is_empty() {
        return None;
    }
    let rows: Vec<Vec<Cell>> = months.each.iter().rev().map(row).collect();
    let settled = if months.is_settled { "Settled" } else { "Closed" };
    let heads = cells(["Month", settled, "Came back", "Rate", "Limits", "Note"]);
    let body = html! {
        p {
            (what_is_settled(audit)) " Months differ by chance. The line is " (percent(months.centre)) ", " (months.centre_is()) ". A month outside the limits, "
            "three standard deviations from that, is worth asking about; one inside is not, however it compares with the month "
            "before; limits end at the top of the chart where they go on beyond it. A hollow mark is of a month whose calls have not all had their " (days(audit.window_days)) " yet; “small” is one "
            "of which fewer than five callbacks were to be expected, so that it could hardly stand out. An arrow head at the top: its rate "
            "lies beyond the chart, and stands in the table."
        }
        @if let Some(left_out) = months.left_out() { p.note { (left_out) } }
        p.note { (WHAT_COUNTS) @if let Some(who) = who_counts(audit) { " " (who) } }
        (beside(&chart_of(&months), &table("Callbacks by the month of closing", &heads, &rows), rows.len()))
    };
    Some(section("months", "Callbacks from month to month", &body))
}

fn row(month: &Month) -> Vec<Cell> {
    let point = &month.point;
    cells([
        month.name.clone(),
        point.count.of.to_string(),
        point.count.count.to_string(),
        point.count.rate().map_or("—".to_owned(), percent),
        match point.count.of {
            0 => "—".to_owned(),
            _ => percents(point.low, point.high),
        },
        month.words().to_owned(),
    ])
}

fn chart_of(months: &Months) -> Markup {
    // Of a month with a call or two, or not done, any rate may be shown: it would flatten the others.
    let whole = || (months.each.iter()).filter(|month| !matches!(month.words(), NOT_DONE | SMALL));
    let limits = whole().map(|month| month.point.high);
    let large = limits.fold(0.02_f64.max(2.0 * months.centre), f64::max);
    let rates = whole().filter_map(|month| month.point.count.rate());
    let many = months.each.len() as f64;
    let frame = Frame::new(many, rates.fold(large.min(3.0 * months.centre), f64::max));
    let edge = |limit: fn(&Month) -> f64| {
        let each = months.each.iter().enumerate();
        let ends =
            each.flat_map(move |(at, month)| [(at as f64, limit(month)), (at as f64 + 1.0, limit(month))]);
        steps(ends.map(|(at, share)| (frame.x(at), frame.y(share))))
    };
    let apart = months.each.len().div_ceil(NAMED);
    let across = Across {
        name: "month of closing",
        marks: (months.each.iter().enumerate().step_by(apart))
            .map(|(at, month)| (at as f64 + 0.5, month.name.clone()))
            .collect(),
    };
    let centre = chart::fine(frame.y(months.centre));
    let (left, right) = (chart::fine(frame.x(0.0)), chart::fine(frame.x(many)));
    let drawn = html! {
        path.limit d=(edge(|month| month.point.low)) {}
        path.limit d=(edge(|month| month.point.high)) {}
        path.all d=(format!("M{left} {centre}H{right}")) {}
        @for (at, month) in months.each.iter().enumerate() { (mark(&frame, at, month)) }
    };
    let out = months
        .each
        .iter()
        .filter(|month| matches!(month.words(), "low" | "high"))
        .count();
    let told = format!(
        "{} about a rate of {}; {out} of them outside the limits.",
        counted(months.each.len() as u64, "month", "months"),
        percent(months.centre)
    );
    frame.draw(
        "months",
        "The share of calls that came back, by the month of closing",
        &told,
        &across,
        &drawn,
    )
}

fn mark(frame: &Frame, at: usize, month: &Month) -> Markup {
    let Some(rate) = month.point.count.rate() else {
        return Markup::default();
    };
    let (x, y) = (frame.x(at as f64 + 0.5), frame.y(rate));
    if frame.is_beyond(rate) {
        return chart::beyond(
            x,
            &format!(
                "{}: {} of {}",
                month.name, month.point.count.count, month.point.count.of
            ),
        );
    }
    let told = format!(
        "{}: {} of {}",
        month.name, month.point.count.count, month.point.count.of
    );
    match month.words() {
        "high" => chart::arrow(true, x, y, &told),
        "low" => chart::arrow(false, x, y, &told),
        NOT_DONE => chart::point("hollow", x, y, &told),
        _ => chart::point("point", x, y, &told),
    }
}
