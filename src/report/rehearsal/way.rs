//! The walk as it went, a step a line.

use super::Page;
use super::explained::Row;

/// Most steps that are written; of a longer walk, the last.
const MOST: usize = 40;

/// Writes the steps; one whose number is marked is where the walk left the expected way.
pub(super) fn write(page: &mut Page, rows: &[Row], marked: &[usize]) {
    page.line(2, "the walk:");
    let first = rows.len().saturating_sub(MOST);
    if first > 0 {
        page.line(4, &format!("… {first} before"));
    }
    for (at, row) in rows.iter().enumerate().skip(first) {
        let mark = if marked.contains(&at) { ">" } else { " " };
        page.hanging(2, 6, &format!("{mark}{:>3}  {}", at + 1, words(row)));
    }
}

/// The step, what was answered there, and where that led.
pub(super) fn words(row: &Row) -> String {
    let Some(took) = &row.took else {
        return format!("{}  {}", row.step, row.said);
    };
    // A choice says the same as what was answered.
    match row.said.ends_with(&took.answer) {
        true => format!("{}  {} → {}", row.step, row.said, took.go),
        false => format!("{}  {}, {} → {}", row.step, row.said, took.answer, took.go),
    }
}
