//! The dangers on offer.

use crate::source::{Safe, safe};
use crate::tui::page::Page;
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};

/// The dangers, and what comes first in all of them.
pub fn sheet(theme: Theme, dangers: &[Safe], chosen: Option<usize>, width: usize) -> Sheet {
    let mut head = Page::new(theme, width);
    let words = if dangers.is_empty() {
        "This library names no dangers. Leave the building if you must, and call for help from outside."
    } else {
        "What is the danger? If you must leave, leave: this can wait."
    };
    head.entry("DANGER", Role::Alarm, &[(safe(words), Role::Strong)]);
    let mut page = Page::new(theme, width);
    let mut keep = 0..0;
    for (number, danger) in dangers.iter().enumerate() {
        let start = page.len();
        let marked = chosen == Some(number);
        let role = if marked { Role::Here } else { Role::Plain };
        page.item(
            "",
            marked,
            &safe(&(number + 1).to_string()),
            &[(danger.clone(), role)],
        );
        if marked {
            keep = start..page.len();
        }
    }
    Sheet {
        head: head.into_lines(),
        list: page.into_lines(),
        keep,
        ..Sheet::default()
    }
}
