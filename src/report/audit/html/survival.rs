//! How soon calls come back: the curve with its interval.

use maud::{Markup, html};

use super::chart::{Across, Frame, fine, steps};
use super::table::{Cell, cells, table};
use super::{beside, section};
use crate::audit::Audit;
use crate::report::audit::figures::{Curve, Day, counted, curve, percent, percents};

/// Points of the curve.
const POINTS: usize = 180;

/// The section; nothing where no call could be followed.
pub(super) fn section_of(audit: &Audit) -> Option<Markup> {
    let curve = curve(audit)?;
    let rows: Vec<Vec<Cell>> = (curve.named_days(audit.window_days).iter())
        .map(|day| {
            cells([
                format!("{:.0}", day.day),
                percent(day.back),
                percents(day.low, day.high),
                day.watched.to_string(),
            ])
        })
        .collect();
    let heads = cells(["Days", "Came back by then", "95 %", "Calls still watched"]);
    let body = html! {
        p {
            "The line is the share of all closed calls that has come back by each day, also on the same visit; the field around it is the 95 % interval. A call closed "
            "lately has not had its days yet: it counts for as long as it was watched, so that last week's calls do not pass for "
            "successes (Kaplan and Meier)."
        }
        (beside(&chart(&curve), &table("The share that has come back", &heads, &rows), rows.len()))
    };
    Some(section("how-soon", "How soon calls come back", &body))
}

fn chart(curve: &Curve) -> Markup {
    let days = curve.days(POINTS);
    // Where few are left the interval grows beyond all use; the curve itself must stay readable.
    let highest = days.iter().map(|day| day.back).fold(0.0, f64::max);
    let most = days
        .iter()
        .map(|day| day.high)
        .fold(0.0, f64::max)
        .min(2.5 * highest.max(0.01));
    let frame = Frame::new(curve.until, most);
    let along = |share: fn(&Day) -> f64| {
        days.iter()
            .map(move |day| (day.day, share(day)))
            .collect::<Vec<_>>()
    };
    let place = |(day, share): (f64, f64)| (frame.x(day), frame.y(share));
    let low = along(|day| day.low);
    let edge = steps(along(|day| day.high).into_iter().map(place));
    let back: String = back_along(&low.into_iter().map(place).collect::<Vec<_>>());
    let line = steps(along(|day| day.back).into_iter().map(place));
    let told = match days.last() {
        Some(last) => format!(
            "After {} {} have come back; the table has the figures.",
            counted(last.day.round() as u64, "day", "days"),
            percent(last.back)
        ),
        None => String::new(),
    };
    let drawn = html! {
        path.field d=(format!("{edge}{back}Z")) {}
        path.line d=(line) {}
    };
    let across = Across::numbers("days after closing", curve.until);
    frame.draw(
        "how-soon",
        "The share of calls that has come back, day by day",
        &told,
        &across,
        &drawn,
    )
}

/// The way back along the lower edge of the field, in the steps it came.
fn back_along(points: &[(f64, f64)]) -> String {
    let mut path = String::new();
    for (number, (x, y)) in points.iter().rev().enumerate() {
        match number {
            0 => path.push_str(&format!("L{} {}", fine(*x), fine(*y))),
            _ => path.push_str(&format!("V{}H{}", fine(*y), fine(*x))),
        }
    }
    path
}
