//! The call is about to be left.

use crate::source::safe;
use crate::tui::page::Page;
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};

/// That nothing is lost, and how to come back.
pub fn sheet(theme: Theme, width: usize) -> Sheet {
    let mut page = Page::new(theme, width);
    page.entry(
        "",
        Role::Label,
        &[(safe("Leave the call for later?"), Role::Strong)],
    );
    page.entry(
        "",
        Role::Label,
        &[(
            safe("Every answer is saved, and the call stays open. What is not answered yet is not kept."),
            Role::Plain,
        )],
    );
    page.entry("later", Role::Label, &[(safe("proofwalk resume"), Role::Strong)]);
    Sheet {
        head: page.into_lines(),
        ..Sheet::default()
    }
}
