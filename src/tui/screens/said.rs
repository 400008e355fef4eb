//! What is said about the last key.

use ratatui::text::Line;

use crate::face;
use crate::source::{Safe, safe};
use crate::tui::model::Said;
use crate::tui::page::Page;
use crate::tui::theme::{Role, Theme};
use crate::walk::{NotDone, Standing};

/// Adds it to the foot of a sheet.
pub fn add(theme: Theme, said: &Said, width: usize, foot: &mut Vec<Line<'static>>) {
    let mut page = Page::new(theme, width);
    match said {
        Said::Hint(hint) => page.entry("note", Role::Label, &[(safe(hint), Role::Strong)]),
        Said::Not(NotDone::Refused(refusal)) => {
            let words = sentence(&refusal.message, &refusal.help);
            page.entry(
                "",
                Role::Label,
                &[(safe("NOT TAKEN"), Role::Alarm), (words, Role::Plain)],
            );
        }
        Said::Not(NotDone::NotSaved { message, help }) => {
            let words = sentence(message, help);
            page.entry(
                "",
                Role::Label,
                &[(safe("NOT SAVED"), Role::Alarm), (words, Role::Plain)],
            );
        }
    }
    foot.extend(page.into_lines());
}

/// Adds what came out where the last answer was all that something to be worked out still lacked, and what stood already
/// where the walk went on.
pub fn came_out(theme: Theme, standing: &Standing, width: usize, foot: &mut Vec<Line<'static>>) {
    let mut page = Page::new(theme, width);
    if let Some(entry) = standing.trail.last() {
        if standing.last_is_news {
            page.entry(
                "last",
                Role::Label,
                &[(face::asked_and_answered(entry), Role::Strong)],
            );
        }
        for value in &entry.worked_out {
            page.entry("result", Role::Label, &[(face::came_out(value), Role::Strong)]);
        }
        for value in &entry.stood {
            page.entry("stands", Role::Label, &[(face::came_out(value), Role::Plain)]);
        }
    }
    foot.extend(page.into_lines());
}

fn sentence(message: &str, help: &str) -> Safe {
    safe(&format!(" {message}; {help}"))
}
