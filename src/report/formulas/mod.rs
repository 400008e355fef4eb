//! The formulas of the trade, for a person and for another program: the list, the page of one, and what one comes to.

mod json;
mod metric;
mod number;
mod page;
mod worked;

pub use json::{listed_json, page_json, worked_json};
pub use page::{found, list, page};
pub use worked::worked;

use crate::source::{Safe, ascii, safe, wrap};

/// How many columns the text takes.
const COLUMNS: usize = 79;

/// Text, a line at a time.
struct Text {
    lines: String,
    ascii: bool,
}

impl Text {
    fn new(ascii: bool) -> Self {
        Self {
            lines: String::new(),
            ascii,
        }
    }

    /// A line as it is; what it says must be the program's own, or have been read as a number.
    fn line(&mut self, line: &str) {
        let line = self.shown(line);
        self.lines.push_str(line.as_str().trim_end());
        self.lines.push('\n');
    }

    /// A text broken between words, behind a label; what follows the first line stands below the text.
    fn paragraph(&mut self, label: &str, text: &str) {
        // A plain terminal writes some signs in several letters, which take their room.
        let (label, text) = (self.shown(label), self.shown(text));
        let room = COLUMNS.saturating_sub(label.width());
        let indent = " ".repeat(label.width());
        for (at, line) in wrap(&text, room).iter().enumerate() {
            let before = if at == 0 { label.as_str() } else { &indent };
            self.line(&format!("{before}{line}"));
        }
    }

    /// How wide a text is on this terminal.
    fn width(&self, text: &str) -> usize {
        self.shown(text).width()
    }

    fn shown(&self, text: &str) -> Safe {
        let text = safe(text);
        if self.ascii { ascii(&text) } else { text }
    }
}
