//! What came back: all of it, how soon, month by month, by technician, tree and part.

use super::page::Page;
use super::rows::{self, Row, TOO_FEW};
use super::steps_up;
use crate::audit::{Audit, Rate};
use crate::report::audit::figures::{self, Place, percent, percents, spoken};
use crate::source::safe;

/// Most groups of a list; those with the most calls are shown.
const SHOWN: usize = 30;

/// Most months; the last are shown.
const MONTHS: usize = 24;

/// Writes all that is known of callbacks.
pub(super) fn write(page: &mut Page, audit: &Audit) {
    page.title(&format!(
        "CALLBACKS WITHIN {}",
        figures::days(audit.window_days).to_uppercase()
    ));
    let rate = &audit.callbacks.rate;
    if rate.of == 0 {
        page.text("No closed call names its equipment, so none can be followed.");
        return;
    }
    let all = figures::all(audit).rate();
    page.line("Came back", &safe(&words(rate)));
    let same = audit.callbacks.same_complaint;
    page.line("Same complaint", &safe(&format!("{} of those", same.count)));
    let at_30 = match rate.too_small {
        true => "too few to say what is to be expected".to_owned(),
        false => format!(
            "{} to be expected, once every call has had its 30 days",
            percent(audit.callbacks.at_30_days)
        ),
    };
    page.line("Within 30 days", &safe(&at_30));
    page.text(figures::WHAT_COUNTS);
    if let Some(who) = figures::who_counts(audit) {
        page.text(&who);
    }
    if let Some(curve) = figures::curve(audit) {
        steps_up::write(page, &curve);
    }
    page.title("BY THE MONTH OF CLOSING");
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
    if rows.iter().any(|row| row.note == "not done") {
        page.text("“not done”: its calls have not all had their days yet, so that more may still come back.");
    }
    technicians(page, audit);
    let note = |rate: &Rate| if rate.too_small { TOO_FEW } else { "" };
    let trees = audit.by_tree.iter().map(|row| (&row.tree, &row.tally.callbacks));
    groups(
        page,
        "BY COMPLAINT",
        trees.map(|(name, rate)| Row::new(spoken(name), rate, note(rate))),
        all,
    );
    let parts = audit.by_part.iter().map(|row| (&row.part, &row.tally.callbacks));
    groups(
        page,
        "BY CONDEMNED PART",
        parts.map(|(name, rate)| Row::new(spoken(name), rate, note(rate))),
        all,
    );
}

fn words(rate: &Rate) -> String {
    let Rate { count, of, .. } = rate;
    let of = format!("{count} of {of}");
    match rate.too_small {
        true => format!("{of}: too few to say a rate"),
        false => format!("{of}, {}; {}", percent(rate.rate), percents(rate.low, rate.high)),
    }
}

fn groups(page: &mut Page, title: &str, rows: impl Iterator<Item = Row>, all: Option<f64>) {
    let rows: Vec<Row> = rows.filter(|row| row.count.of > 0).collect();
    if rows.is_empty() {
        return;
    }
    page.title(title);
    let (rows, left_out) = largest(rows);
    rows::write(page, &rows, all);
    if left_out > 0 {
        page.text(&format!("and {left_out} more with fewer calls"));
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

fn technicians(page: &mut Page, audit: &Audit) {
    let standings = figures::standings(audit);
    let row = |standing: &figures::Standing| Row {
        name: match &standing.technician {
            Some(name) => safe(name),
            None => safe("(not named)"),
        },
        count: standing.count,
        note: match standing.place {
            Place::TooFew => TOO_FEW,
            Place::Within => "",
            other => other.words(),
        },
    };
    groups(
        page,
        "BY TECHNICIAN, NOT RANKED",
        standings.each.iter().map(row),
        Some(standings.rate),
    );
    if standings.each.iter().all(|standing| standing.count.of == 0) {
        return;
    }
    if standings.has_looked() {
        page.text(
            "“high” and “low” lie outside what chance gives 95 of 100 groups of that size, “very” outside 998 of 1000.",
        );
    }
    if standings.factor.is_some() {
        page.text("Technicians differ among each other by more than chance, so that these limits are wider.");
    }
    page.text(&standings.told());
}
