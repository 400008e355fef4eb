//! Something is open that must be put back.

use super::{counted, head, stated};
use crate::source::safe;
use crate::tui::page::Page;
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};
use crate::walk::{Ask, Standing};

/// How the walk has ended, what to put back, and how much is still to come.
pub fn sheet(theme: Theme, ask: &Ask, standing: &Standing, left: usize, width: usize) -> Sheet {
    let mut sheet = head::sheet(theme, ask, width);
    let (mut first, mut rest) = (Page::new(theme, width), Page::new(theme, width));
    stated::add(theme, standing, width, &mut first, &mut rest);
    sheet.head.splice(0..0, first.into_lines());
    sheet.text.splice(0..0, rest.into_lines());
    let mut page = Page::new(theme, width);
    let after = match left {
        0 => safe("It is the last thing to put back."),
        more => safe(&format!("After it, {} to put back.", counted(more, "more thing"))),
    };
    page.entry("", Role::Label, &[(after, Role::Quiet)]);
    page.entry(
        "or",
        Role::Label,
        &[
            (safe("Ctrl-L"), Role::Strong),
            (safe("  it stays open: say why, in writing"), Role::Plain),
        ],
    );
    sheet.ways = page.into_lines();
    sheet
}
