//! One of several is asked for.

use super::{answer, head};
use crate::source::safe;
use crate::tui::page::Page;
use crate::tui::sheet::Sheet;
use crate::tui::theme::Theme;
use crate::walk::{Ask, ShownOption};

/// The question and its options.
pub fn sheet(theme: Theme, ask: &Ask, options: &[ShownOption], chosen: Option<usize>, width: usize) -> Sheet {
    let mut sheet = head::sheet(theme, ask, width);
    sheet.ways = head::ways(theme, ask, width);
    let mut page = Page::new(theme, width);
    let rows: Vec<answer::Row> = options
        .iter()
        .map(|option| answer::Row {
            words: &option.text,
            means: option.means.as_ref(),
            finding: option.finding,
        })
        .collect();
    let column = answer::column(theme, &rows, page.room());
    for (number, row) in rows.iter().enumerate() {
        let start = page.len();
        let marked = chosen == Some(number);
        let label = if number == 0 { "choose" } else { "" };
        let tag = safe(&(number + 1).to_string());
        page.item(label, marked, &tag, &row.pieces(theme, marked, column));
        if marked {
            sheet.keep = start..page.len();
        }
    }
    sheet.list = page.into_lines();
    sheet
}
