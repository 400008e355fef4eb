//! A list of rates, a line each.

use super::bar::{COLUMNS, Scale};
use super::page::Page;
use crate::audit::TOO_SMALL;
use crate::audit::statistics::{Count, wilson};
use crate::report::audit::figures::{NOT_DONE, UNDER, percent};
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

    fn is_large(&self) -> bool {
        self.count.of >= TOO_SMALL
    }

    /// Its rate, where that is worth a number: of a few calls, only how many.
    fn rate(&self) -> Option<f64> {
        let is_worth = self.note != UNDER && (self.note != NOT_DONE || self.is_large());
        self.count.rate().filter(|_| is_worth)
    }

    /// Which rates its calls fit; nothing where it has none.
    fn interval(&self) -> Option<(f64, f64)> {
        (self.count.of > 0).then(|| wilson(self.count.count, self.count.of))
    }
}

/// A name that fits its column.
fn cut(name: &Safe, is_ascii: bool) -> Safe {
    if !is_ascii {
        return name.cut(NAME);
    }
    // Spelled before it is cut: ASCII may be longer, and so is its sign that something was left out.
    let name = ascii(name);
    match name.width() > NAME {
        true => ascii(&name.cut(NAME - 2)),
        false => name,
    }
}

/// Writes the lines on one scale, with the rate of all marked where it is given, and the scale below.
pub(super) fn write(page: &mut Page, rows: &[Row], all: Option<f64>) {
    // A group of three calls has an interval as wide as the page, and would flatten all others, where there are some.
    let has_large = rows.iter().any(Row::is_large);
    let large = rows.iter().filter(|row| row.is_large() || !has_large);
    let most = large.filter_map(Row::interval).map(|(_, high)| high);
    let most = most.fold(0.0, f64::max);
    let scale = Scale::up_to(most.max(1.5 * all.unwrap_or(0.0)), all, page.is_ascii());
    let (end, room) = (percent(scale.most), COLUMNS - 1);
    if page.is_narrow() {
        for row in rows {
            below_its_name(page, row, &scale);
        }
        page.row(&safe(&format!("    0{end:>room$}")));
        return told(page, rows, &scale);
    }
    for row in rows {
        let Count { count, of } = row.count;
        let name = cut(&row.name, page.is_ascii());
        let pad = " ".repeat(NAME - name.width().min(NAME));
        let shown = row.rate().map(percent).unwrap_or_default();
        let bar = scale.bar(row.rate(), row.interval());
        page.row(&safe(&format!(
            "  {name}{pad} {count:>6} of {of:<6} {shown:>7} {bar} {}",
            row.note
        )));
    }
    page.row(&safe(&format!("{:43}0{end:>room$}", "")));
    told(page, rows, &scale);
}

/// Says what the sign of a bar means that goes on beyond the scale, where there is one.
fn told(page: &mut Page, rows: &[Row], scale: &Scale) {
    let mut high = rows.iter().filter_map(Row::interval).map(|(_, high)| high);
    if high.any(|high| scale.is_beyond(high)) {
        let sign = Scale::beyond(scale.ascii);
        page.text(&format!(
            "{sign} at the end of a bar: it goes on beyond the scale."
        ));
    }
}

/// Writes a line on a page that has no room for all of it: the bar stands below the name and the numbers.
fn below_its_name(page: &mut Page, row: &Row, scale: &Scale) {
    let Count { count, of } = row.count;
    let note = if row.note.is_empty() { "" } else { ", " };
    page.text(&format!("{}: {count} of {of}{note}{}", row.name, row.note));
    let shown = row.rate().map(percent).unwrap_or_default();
    let bar = scale.bar(row.rate(), row.interval());
    page.row(&safe(&format!("    {bar} {shown:>7}")));
}
