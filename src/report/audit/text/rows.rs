//! A list of rates, a line each.

use super::bar::{COLUMNS, Scale};
use super::page::Page;
use crate::audit::Rate;
use crate::audit::statistics::{Count, wilson};
use crate::report::audit::figures::percent;
use crate::source::{Safe, ascii, safe};

/// Columns of a name.
const NAME: usize = 17;

/// One line of a list.
pub(super) struct Row {
    pub name: Safe,
    pub count: Count,
    /// What to say of it, in at most nine columns.
    pub note: &'static str,
}

impl Row {
    /// So many of so many, of which there is nothing more to say.
    pub fn of(name: Safe, count: u64, of: u64) -> Self {
        Self {
            name,
            count: Count::new(count, of),
            note: "",
        }
    }

    pub fn new(name: Safe, rate: &Rate, note: &'static str) -> Self {
        Self {
            name,
            count: Count::new(rate.count, rate.of),
            note,
        }
    }
}

/// Writes the lines on one scale, with the rate of all marked where it is given, and the scale below.
pub(super) fn write(page: &mut Page, rows: &[Row], all: Option<f64>) {
    // A group of three calls has an interval as wide as the page, and would flatten all others.
    let large = rows.iter().filter(|row| row.note != TOO_FEW);
    let most = large
        .map(|row| wilson(row.count.count, row.count.of).1)
        .fold(0.0, f64::max);
    let scale = Scale::up_to(most.max(1.5 * all.unwrap_or(0.0)), all, page.is_ascii());
    let (end, room) = (percent(scale.most), COLUMNS - 1);
    if page.is_narrow() {
        for row in rows {
            below_its_name(page, row, &scale);
        }
        page.row(&safe(&format!("    0{end:>room$}")));
        return;
    }
    for row in rows {
        let Count { count, of } = row.count;
        let (low, high) = wilson(count, of);
        let rate = row.count.rate().filter(|_| row.note != TOO_FEW);
        // Spelled before it is cut: ASCII may be longer.
        let name = if page.is_ascii() {
            ascii(&row.name)
        } else {
            row.name.clone()
        };
        let name = name.cut(NAME);
        let pad = " ".repeat(NAME - name.width().min(NAME));
        let shown = rate.map(percent).unwrap_or_default();
        let bar = scale.bar(rate, low, high);
        page.row(&safe(&format!(
            "  {name}{pad} {count:>6} of {of:<6} {shown:>7} {bar} {}",
            row.note
        )));
    }
    page.row(&safe(&format!("{:43}0{end:>room$}", "")));
}

/// Writes a line on a page that has no room for all of it: the bar stands below the name and the numbers.
fn below_its_name(page: &mut Page, row: &Row, scale: &Scale) {
    let Count { count, of } = row.count;
    let (low, high) = wilson(count, of);
    let rate = row.count.rate().filter(|_| row.note != TOO_FEW);
    let note = if row.note.is_empty() { "" } else { ", " };
    page.text(&format!("{}: {count} of {of}{note}{}", row.name, row.note));
    let shown = rate.map(percent).unwrap_or_default();
    page.row(&safe(&format!("    {} {shown:>7}", scale.bar(rate, low, high))));
}

/// Of what is said nothing, and no rate is shown.
pub(super) const TOO_FEW: &str = "too few";
