//! How far a long run is, on standard error, for a person who waits.

use std::io::{self, IsTerminal, Write};
use std::time::{Duration, Instant};

/// Runs that are over sooner show nothing.
const PATIENCE: Duration = Duration::from_millis(700);

/// Time between two lines.
const BETWEEN: Duration = Duration::from_millis(200);

/// How far a run is.
pub(super) struct Progress {
    all: usize,
    done: usize,
    /// When the next line is due; none where nobody watches.
    due: Option<Instant>,
    shown: bool,
}

impl Progress {
    /// Of so many sessions.
    pub fn new(all: usize) -> Self {
        let due = io::stderr().is_terminal().then(|| Instant::now() + PATIENCE);
        Self {
            all,
            done: 0,
            due,
            shown: false,
        }
    }

    /// So many more are done.
    pub fn moved_on(&mut self, sessions: usize) {
        self.done += sessions;
        let now = Instant::now();
        if self.due.is_some_and(|due| due <= now) {
            self.due = Some(now + BETWEEN);
            self.shown = true;
            self.show(&format!("{} of {} sessions read", self.done, self.all));
        }
    }

    fn show(&self, text: &str) {
        // Where it cannot be shown, nobody misses it. Spaces instead of an escape sequence: every terminal knows them.
        let mut err = io::stderr();
        let _ = write!(err, "\r{text:<60}\r{text}").and_then(|()| err.flush());
    }
}

impl Drop for Progress {
    /// Leaves the line as it was.
    fn drop(&mut self) {
        if self.shown {
            let _ = write!(io::stderr(), "\r{:60}\r", "");
        }
    }
}
