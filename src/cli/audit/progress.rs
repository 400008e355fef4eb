//! How far a long run is, on standard error, for a person who waits.

use std::io::{self, IsTerminal, Write};
use std::time::{Duration, Instant};

use crate::cli::look;

/// Runs that are over sooner show nothing.
const PATIENCE: Duration = Duration::from_millis(700);

/// Time between two lines.
const BETWEEN: Duration = Duration::from_millis(200);

/// Columns, where nobody knows how many there are.
const USUAL: usize = 80;

/// How far a run is.
pub(super) struct Progress {
    all: usize,
    done: usize,
    /// When the next line is due; none where nobody watches.
    due: Option<Instant>,
    /// Columns of what stands there.
    shown: usize,
}

impl Progress {
    /// Of so many sessions.
    pub fn new(all: usize) -> Self {
        let due = io::stderr().is_terminal().then(|| Instant::now() + PATIENCE);
        Self {
            all,
            done: 0,
            due,
            shown: 0,
        }
    }

    /// So many more are done.
    pub fn moved_on(&mut self, sessions: usize) {
        self.done += sessions;
        let now = Instant::now();
        if self.due.is_some_and(|due| due <= now) {
            self.due = Some(now + BETWEEN);
            let line = self.line(look::columns().unwrap_or(USUAL));
            // Where it cannot be shown, nobody misses it.
            let mut err = io::stderr();
            let _ = write!(err, "{line}").and_then(|()| err.flush());
        }
    }

    /// What is written to show how far it is, in fewer than so many columns: a line that is full may end in the next. Spaces go over what
    /// stood there instead of an escape sequence: every terminal knows them.
    fn line(&mut self, columns: usize) -> String {
        let room = columns.saturating_sub(1);
        let mut text = format!("{} of {} sessions read", self.done, self.all);
        text.truncate(room);
        let before = self.shown.min(room);
        self.shown = text.len();
        format!("\r{:before$}\r{text}", "")
    }
}

impl Drop for Progress {
    /// Leaves the line as it was.
    fn drop(&mut self) {
        if self.shown > 0 {
            let _ = write!(io::stderr(), "\r{:1$}\r", "", self.shown);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_no_wider_than_its_text_and_the_terminal() {
        let mut progress = Progress {
            all: 123_456,
            done: 7,
            due: None,
            shown: 0,
        };
        assert_eq!(progress.line(40), "\r\r7 of 123456 sessions read");
        progress.done = 8;
        assert_eq!(
            progress.line(40),
            format!("\r{:25}\r8 of 123456 sessions read", "")
        );
        assert_eq!(progress.line(20), format!("\r{:19}\r8 of 123456 session", ""));
        assert_eq!(progress.shown, 19);
        // Nothing stands there that dropping it would go over.
        progress.shown = 0;
    }
}
