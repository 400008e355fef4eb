//! What came back: all of it, how soon, month by month, by complaint, part and technician.

use super::page::Page;
use super::rows::{self, Row};
use super::steps_up;
use crate::audit::{Audit, Rate};
use crate::report::audit::figures::{
    self, Groups, NOT_DONE, Place, SAME_VISIT, SMALL, UNDER, percent, percents, standings,
};
use crate::source::safe;

/// Most groups of a list; those with the most calls are shown.
const SHOWN: usize = 30;

/// Most months; the last are shown.
const MONTHS: usize = 24;

/// Writes all that is known of callbacks.
pub(super) fn write(page: &mut Page, audit: &Audit) {
    let window = figures::days(audit.window_days);
    page.title(&format!("CALLBACKS WITHIN {}", window.to_uppercase()));
    let back = &audit.callbacks;
    if back.rate.of == 0 {
        page.text("No closed call names its equipment, so none can be followed.");
        return;
    }
    page.line("Came back", &safe(&words(&back.rate)));
    if back.same_visit > 0 {
        page.line(
            "Same visit",
            &safe(&format!("{} of those, {SAME_VISIT}", back.same_visit)),
        );
    }
    page.line(
        "Same complaint",
        &safe(&format!("{} of those", back.same_complaint.count)),
    );
    if let Some(returns) = figures::returns(audit) {
        page.line("Returns", &safe(&returns));
    }
    let mut expected = figures::expected(audit).told(back.rate.of);
    if back.same_visit > 0 {
        expected += "; same visits are in it";
    }
    page.line(&format!("Within {window}"), &safe(&expected));
    if back.settled.of > 0 {
        let settled = format!("{}, on another visit", words(&back.settled));
        page.line("Settled", &safe(&settled));
        page.text(figures::WHY_THREE_RATES);
    }
    page.text(figures::WHAT_COUNTS);
    if let Some(who) = figures::who_counts(audit) {
        page.text(&who);
    }
    if let Some(curve) = figures::curve(audit) {
        steps_up::write(page, &curve);
    }
    months(page, audit);
    groups(page, audit, Groups::Complaints, "BY COMPLAINT");
    groups(page, audit, Groups::Parts, "BY CONDEMNED PART");
    groups(page, audit, Groups::Technicians, "BY TECHNICIAN, NOT RANKED");
    if Groups::ALL
        .iter()
        .any(|kind| standings(audit, *kind).has_looked())
    {
        page.text(figures::LIMITS);
    }
    if back.settled.of > 0 {
        page.text(figures::WHAT_UNDER_IS);
    }
}

fn months(page: &mut Page, audit: &Audit) {
    page.title("BY THE MONTH OF CLOSING");
    page.text(&figures::what_is_settled(audit));
    let months = figures::months(audit);
    let earlier = months.each.len().saturating_sub(MONTHS);
    if earlier > 0 {
        page.text(&format!("after {earlier} earlier ones"));
    }
    let rows: Vec<Row> = (months.each.iter().skip(earlier))
        .map(|month| Row {
            name: safe(&month.name),
            count: month.point.count,
            note: month.words(),
        })
        .collect();
    rows::write(page, &rows, Some(months.centre));
    page.text(&format!(
        "Marked: {}, {}.",
        percent(months.centre),
        months.centre_is()
    ));
    if let Some(left_out) = months.left_out() {
        page.text(&left_out);
    }
    let is_noted = |note: &str| rows.iter().any(|row| row.note == note);
    if is_noted("high") || is_noted("low") {
        page.text("“high”, “low”: more than three standard deviations from that.");
    }
    if is_noted(NOT_DONE) {
        page.text("“not done”: not all of its calls have had their days.");
    }
    if is_noted(SMALL) {
        page.text("“small”: fewer than five callbacks were to be expected in it, so that it could hardly stand out.");
    }
}

fn words(rate: &Rate) -> String {
    let Rate { count, of, .. } = rate;
    let interval = percents(rate.low, rate.high);
    match rate.too_small {
        true => format!("{count} of {of}: {UNDER}, which may be {interval}"),
        false => format!("{count} of {of}, {}; {interval}", percent(rate.rate)),
    }
}

fn groups(page: &mut Page, audit: &Audit, kind: Groups, title: &str) {
    let standings = standings(audit, kind);
    if standings.each.is_empty() {
        return;
    }
    let rows = standings.each.iter().map(|standing| Row {
        name: standing.called(),
        count: standings.shown(standing),
        note: match standing.place {
            Place::Within => "",
            _ => standings.words(standing),
        },
    });
    page.title(title);
    let (rows, left_out) = largest(rows.collect());
    rows::write(page, &rows, standings.all.rate());
    if left_out > 0 {
        page.text(&format!("and {left_out} more with fewer calls"));
    }
    if standings.factor.is_some() {
        page.text("They differ among each other by more than chance, so that their limits are wider.");
    }
    if standings.is_settled() {
        page.text(&standings.told());
    }
}

/// Those with the most calls, in the order they had.
fn largest(mut rows: Vec<Row>) -> (Vec<Row>, usize) {
    let left_out = rows.len().saturating_sub(SHOWN);
    if left_out > 0 {
        let mut sizes: Vec<u64> = rows.iter().map(|row| row.count.of).collect();
        sizes.sort_unstable_by(|one, other| other.cmp(one));
        let least = sizes[SHOWN - 1];
        rows.retain(|row| row.count.of >= least);
        rows.truncate(SHOWN);
    }
    (rows, left_out)
}
