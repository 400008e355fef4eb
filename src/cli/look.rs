//! What the terminal and the environment allow.

use std::io::{self, IsTerminal};

use crate::plain;
use crate::report::findings;
use crate::tui::Look;

/// How the screen may look.
pub(super) fn of_terminal() -> Look {
    Look::from_env(|name| std::env::var(name).ok())
}

/// Whether the terminal can draw a screen at all.
pub(super) fn can_draw() -> bool {
    std::env::var("TERM").is_ok_and(|term| !term.is_empty() && term != "dumb")
}

/// How a report of findings may look on a stream.
pub(super) fn of_findings(stream: &impl IsTerminal) -> findings::Look {
    let look = of_terminal();
    findings::Look {
        ascii: !look.unicode,
        color: look.colour && stream.is_terminal(),
    }
}

/// How a report of findings may look among messages.
pub(super) fn for_messages() -> findings::Look {
    of_findings(&io::stderr())
}

/// How the line face speaks: what is typed is repeated where no terminal shows it.
pub(super) fn plain_options() -> plain::Options {
    plain::Options {
        echo: !io::stdin().is_terminal(),
        ..plain::Options::default()
    }
}
