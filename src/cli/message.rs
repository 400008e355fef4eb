//! Messages on standard error, and help, broken between words where a terminal is narrower than they are.

use std::io::{self, IsTerminal, Write};

use unicode_width::UnicodeWidthStr;

use super::look;
use crate::source::{safe, wrap};

/// Says something on standard error. Where even that cannot be written, the exit code has to do.
pub(super) fn tell(message: &str) {
    let text = columns().map_or_else(|| message.to_owned(), |columns| broken(message, columns));
    let _ = writeln!(io::stderr(), "{text}");
}

/// Whether a message is wider than the terminal that it goes to.
pub(super) fn is_too_wide(message: &str) -> bool {
    let is_wider = |columns| message.lines().any(|line| line.width() > columns);
    columns().is_some_and(is_wider)
}

/// A page for standard output with its long lines broken; none where all of it fits, or no terminal shows it.
pub(super) fn folded(page: &str) -> Option<String> {
    let columns = look::terminal_width()?;
    let is_wider = page.lines().any(|line| line.width() > columns);
    is_wider.then(|| broken(page, columns) + "\n")
}

fn columns() -> Option<usize> {
    io::stderr().is_terminal().then(look::terminal_width).flatten()
}

/// The message with its long lines broken; what follows stands below the text. Other programs get lines as they are.
fn broken(message: &str, columns: usize) -> String {
    let lines = message.lines().map(|line| {
        // What has colours was laid out by who wrote it.
        if line.width() <= columns || line.contains('\u{1b}') {
            return line.to_owned();
        }
        let text = line.trim_start();
        let text = text.strip_prefix("help: ").unwrap_or(text);
        let before = &line[..line.len() - text.len()];
        let indent = before.len().max(2);
        let parts = wrap(&safe(text), columns.saturating_sub(indent));
        let lines: Vec<String> = (parts.iter().enumerate())
            .map(|(at, part)| match at {
                0 => format!("{before}{part}"),
                _ => format!("{:indent$}{part}", ""),
            })
            .collect();
        lines.join("\n")
    });
    lines.collect::<Vec<_>>().join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_lines_are_broken_between_words_and_stand_below_their_text() {
        let message =
            "proofwalk: there is no drill 81\n  help: give the number stamped on the orifice or the drill";
        let told = "proofwalk: there is no drill 81\n  help: give the number stamped\n        on the orifice or the\n        drill";
        assert_eq!(broken(message, 32), told);
        assert_eq!(broken(message, 80), message);
        assert!(broken(&"x".repeat(500), 40).lines().all(|line| line.len() <= 40));
        let usage = "Usage: proofwalk formula [OPTIONS] [NAME] [ARG=QUANTITY]...";
        assert_eq!(
            broken(usage, 40),
            "Usage: proofwalk formula [OPTIONS]\n  [NAME] [ARG=QUANTITY]..."
        );
        let coloured = format!("\u{1b}[31m{}\u{1b}[0m", "word ".repeat(30));
        assert_eq!(broken(&coloured, 40), coloured);
    }
}
