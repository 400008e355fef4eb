//! Something is to be confirmed before it is done.

use super::counted;
use crate::face::asked_and_answered;
use crate::source::safe;
use crate::tui::page::Page;
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};
use crate::walk::{Command, Standing};

/// What will be done, and with which words.
pub fn sheet(theme: Theme, command: &Command, standing: &Standing, width: usize) -> Sheet {
    let mut page = Page::new(theme, width);
    let (question, words) = match command {
        Command::Back(position) => {
            let entries = standing
                .trail
                .iter()
                .skip_while(|entry| entry.position != *position);
            let back = counted(entries.count(), "answer");
            (safe(&format!("Take back {back}?")), None)
        }
        Command::Stop(words) => (safe("End the walk without a verdict?"), Some(words)),
        Command::Insist(words) => (safe("End the walk on your own verdict?"), Some(words)),
        Command::LeaveOpen(_, words) => (safe("Leave it open?"), Some(words)),
        _ => (safe("Do it?"), None),
    };
    page.entry("sure", Role::Label, &[(question, Role::Strong)]);
    if let Some(words) = words {
        page.entry("because", Role::Label, &[(safe(words), Role::Plain)]);
    }
    if let Command::Back(position) = command {
        let taken = standing
            .trail
            .iter()
            .skip_while(|entry| entry.position != *position);
        for entry in taken {
            page.entry("", Role::Label, &[(asked_and_answered(entry), Role::Quiet)]);
        }
    }
    let mut ways = Page::new(theme, width);
    ways.entry(
        "",
        Role::Label,
        &[
            (safe("y"), Role::Strong),
            (safe(" yes    "), Role::Plain),
            (safe("Esc"), Role::Strong),
            (safe(" back"), Role::Plain),
        ],
    );
    Sheet {
        text: page.into_lines(),
        foot: ways.into_lines(),
        ..Sheet::default()
    }
}
