//! One of several is asked for.

use tui_input::Input;

use super::{answer, head};
use crate::source::{Safe, safe};
use crate::tui::model::{is_long, listed, words_of};
use crate::tui::page::Page;
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};
use crate::walk::Ask;

/// The question and its options; below a long list, what is typed to find one.
pub fn sheet(theme: Theme, ask: &Ask, input: &Input, chosen: Option<usize>, width: usize) -> Sheet {
    let mut sheet = head::sheet(theme, ask, width);
    sheet.ways = head::ways(theme, ask, width);
    let long = is_long(ask);
    let typed = input.value();
    let options = listed(ask, typed);
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
    let words = words_of(typed);
    for (number, row) in rows.iter().enumerate() {
        let start = page.len();
        let marked = chosen == Some(number);
        let label = if number == 0 { "choose" } else { "" };
        page.item(
            label,
            marked,
            &tag(number, !ask.by_words.is_empty(), words),
            &row.pieces(theme, marked, column),
        );
        if marked {
            sheet.keep = start..page.len();
        }
    }
    if rows.is_empty() {
        page.entry("", Role::Label, &[(safe("Nothing is called so."), Role::Plain)]);
    }
    sheet.list = page.into_lines();
    if long {
        let mut foot = Page::new(theme, width);
        let behind = behind(words, typed, rows.len(), chosen);
        sheet.cursor = Some(answer::field(&mut foot, "find", input, &behind));
        sheet.foot = foot.into_lines();
    }
    sheet
}

/// The number that an option is chosen by. What words have found is chosen with the arrows: its place means nothing.
fn tag(number: usize, lined_up: bool, words: Option<&str>) -> Safe {
    safe(&match (lined_up, words) {
        (_, Some(_)) => "-".to_owned(),
        (true, None) => format!("{:>2}", number + 1),
        (false, None) => (number + 1).to_string(),
    })
}

/// What stands behind the line that is typed.
fn behind(words: Option<&str>, typed: &str, found: usize, chosen: Option<usize>) -> Safe {
    safe(&match words {
        Some(_) => format!("{found} found"),
        None if typed.trim().is_empty() => "a number, or words".to_owned(),
        None if chosen.is_none() => "no such number".to_owned(),
        None => String::new(),
    })
}
