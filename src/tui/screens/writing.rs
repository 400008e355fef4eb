//! Something is written: a note, or a reason.

use tui_input::Input;

use super::answer;
use crate::source::{Safe, safe};
use crate::tui::model::Purpose;
use crate::tui::page::Page;
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};
use crate::walk::{Ask, Way};

/// What is written, and what will come of it.
pub fn sheet(theme: Theme, ask: &Ask, purpose: Purpose, input: &Input, width: usize) -> Sheet {
    let (heading, comes) = words(ask, purpose);
    let mut head = Page::new(theme, width);
    head.entry("", Role::Label, &[(safe(heading), Role::Strong)]);
    head.entry("", Role::Label, &[(safe(comes), Role::Plain)]);
    let mut foot = Page::new(theme, width);
    let cursor = answer::field(&mut foot, "write", input, &Safe::default());
    Sheet {
        head: head.into_lines(),
        foot: foot.into_lines(),
        cursor: Some(cursor),
        ..Sheet::default()
    }
}

fn words(ask: &Ask, purpose: Purpose) -> (&'static str, &'static str) {
    match purpose {
        Purpose::Note => (
            "A note",
            "It goes into the record, beside the question that stands.",
        ),
        Purpose::Unable => {
            let comes = match ask.unable {
                Some(Way::GoesOn) => "The walk goes on another way.",
                Some(Way::LeftUntaken) => "It is left untaken, and you choose again.",
                Some(Way::EndsUnproven) => "The walk then ends without a verdict.",
                None => "The tree gives no way on from here without it.",
            };
            ("Why can it not be taken?", comes)
        }
        Purpose::Stop => (
            "Why does the walk end without a verdict?",
            "Nothing is condemned; what is open is put back.",
        ),
        Purpose::Insist => (
            "What is your own verdict, and on what does it rest?",
            "It is recorded as yours, not as proven.",
        ),
        Purpose::LeaveOpen(_) => (
            "Why does it stay open?",
            "It is recorded, and stands on the job report.",
        ),
    }
}
