//! The end of a call.

use super::{standing, stated};
use crate::source::safe;
use crate::tui::page::Page;
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};
use crate::walk::Standing;

/// How it ended, and what goes on the report.
pub fn sheet(theme: Theme, standing: &Standing, closed: bool, width: usize) -> Sheet {
    let (mut head, mut text) = (Page::new(theme, width), Page::new(theme, width));
    stated::add(theme, standing, width, &mut head, &mut text);
    let words = match (closed, standing.open.len()) {
        (true, _) => "The call is closed.",
        (false, 0) => "Everything is answered.",
        (false, _) => "The danger ended the call. What is listed below stays open.",
    };
    head.entry("", Role::Label, &[(safe(words), Role::Strong)]);
    let then = standing.stated.as_ref().and_then(|stated| stated.then.as_ref());
    if let Some(then) = then {
        head.entry("then", Role::Label, &[(then.clone(), Role::Plain)]);
    }
    let next = if closed {
        "Enter leaves; the record is complete."
    } else {
        "Look at what was found, then close the call with Enter."
    };
    head.entry("next", Role::Label, &[(safe(next), Role::Plain)]);
    for section in standing::sections(theme, standing, width) {
        if section.lines.is_empty() || section.possible {
            continue;
        }
        text.blank();
        text.line(section.heading(theme));
        section.lines.into_iter().for_each(|line| text.line(line));
    }
    Sheet {
        head: head.into_lines(),
        text: text.into_lines(),
        ..Sheet::default()
    }
}
