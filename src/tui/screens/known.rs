//! What was known of the equipment before this call.

use crate::source::safe;
use crate::tui::page::Page;
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};
use crate::walk::Known;

/// Its sections, one after the other.
pub fn sheet(theme: Theme, known: &[Known], width: usize) -> Sheet {
    let mut page = Page::new(theme, width);
    for (at, section) in known.iter().enumerate() {
        if at > 0 {
            page.blank();
        }
        page.text(&[(section.heading.clone(), Role::Strong)]);
        for line in &section.lines {
            page.item("", false, &safe(" "), &[(line.clone(), Role::Plain)]);
        }
    }
    Sheet {
        text: page.into_lines(),
        ..Sheet::default()
    }
}
