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

/// How the line face speaks: what is typed is repeated where no terminal shows it, and what is typed ahead is dropped where
/// one does.
pub(super) fn plain_options() -> plain::Options<'static> {
    let typing = io::stdin().is_terminal();
    let usual = plain::Options::default();
    plain::Options {
        width: terminal_width().map_or(usual.width, |width| width.min(usual.width)),
        unicode: of_terminal().unicode,
        echo: !typing,
        early: typing.then_some(&plain::typed_ahead),
    }
}

/// Asked only of a terminal: without one, the question would run another program.
fn terminal_width() -> Option<usize> {
    let terminal = io::stdout().is_terminal();
    let (width, _) = terminal.then(crossterm::terminal::size)?.ok()?;
    (width > 0).then_some(usize::from(width))
}
