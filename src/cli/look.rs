//! What the terminal and the environment allow.

use std::io::{self, IsTerminal};

use crate::plain;
use crate::report::findings;
use crate::tui::Look;

/// Columns of the line face.
const WIDTH: usize = 78;

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
        // A terminal that says so of itself draws no lines.
        ascii: !look.unicode || std::env::var("TERM").is_ok_and(|term| term == "dumb"),
        color: look.colour && stream.is_terminal(),
        columns: stream.is_terminal().then(terminal_width).flatten(),
    }
}

/// How a report of findings may look among messages.
pub(super) fn for_messages() -> findings::Look {
    of_findings(&io::stderr())
}

/// How the line face speaks. What is typed is repeated where no terminal shows it, and lines that were typed before a
/// question was shown are not taken for its answer where a person types them.
pub(super) fn plain_options() -> plain::Options<'static> {
    let typed = io::stdin().is_terminal();
    plain::Options {
        width: terminal_width().map_or(WIDTH, |width| width.min(WIDTH)),
        unicode: of_terminal().unicode || !io::stdout().is_terminal(),
        echo: !typed,
        early: typed.then_some(&plain::typed_ahead),
    }
}

/// Asked only of a terminal: without one, the question would run another program.
pub(super) fn terminal_width() -> Option<usize> {
    let terminal = io::stdout().is_terminal();
    terminal.then(columns).flatten()
}

/// Columns of the terminal that a person sits at; none where nobody knows. Asked only where there is one, as above.
pub(super) fn columns() -> Option<usize> {
    let (width, _) = crossterm::terminal::size().ok()?;
    (width > 0).then_some(usize::from(width))
}
