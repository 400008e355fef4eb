//! A page of text that is being written.

use crate::source::{Safe, ascii, safe, wrap};

/// Most columns of the page, and fewest: on a narrower terminal lines are broken by that.
const WIDTH: usize = 78;
const NARROWEST: usize = 36;

/// Columns of what one of a list says: a reason may be as long as a record.
const LONGEST: usize = 600;

/// Columns of a label at the left.
const LABEL: usize = 16;

/// A page.
pub(super) struct Page {
    text: String,
    columns: usize,
    ascii: bool,
}

impl Page {
    pub fn new(columns: usize, ascii: bool) -> Self {
        Self {
            text: String::new(),
            columns: columns.clamp(NARROWEST, WIDTH),
            ascii,
        }
    }

    /// How many columns it has.
    pub fn columns(&self) -> usize {
        self.columns
    }

    /// Whether it is narrower than a chart with its names and numbers beside it.
    pub fn is_narrow(&self) -> bool {
        self.columns < WIDTH
    }

    /// Whether only ASCII may be used.
    pub fn is_ascii(&self) -> bool {
        self.ascii
    }

    pub fn finish(self) -> String {
        self.text
    }

    /// A heading, with room above.
    pub fn title(&mut self, title: &str) {
        if !self.text.is_empty() {
            self.text.push('\n');
        }
        self.wrapped(&safe(title), "", "");
    }

    /// A paragraph.
    pub fn text(&mut self, text: &str) {
        self.wrapped(&safe(text), "  ", "  ");
    }

    /// A label and what belongs to it.
    pub fn line(&mut self, label: &str, value: &Safe) {
        // A longer label stays apart from its text.
        let first = format!("  {label:<0$} ", LABEL - 1);
        self.wrapped(value, &first, &" ".repeat(LABEL + 2));
    }

    /// One of a list.
    pub fn item(&mut self, text: &Safe) {
        self.wrapped(&text.cut(LONGEST), "  - ", "    ");
    }

    /// What belongs to the item above.
    pub fn below(&mut self, text: &Safe) {
        self.wrapped(text, "    ", "      ");
    }

    /// One line as it is, without spaces at its end.
    pub fn row(&mut self, line: &Safe) {
        let line = if self.ascii { ascii(line) } else { line.clone() };
        self.text.push_str(line.as_str().trim_end());
        self.text.push('\n');
    }

    fn wrapped(&mut self, text: &Safe, first: &str, rest: &str) {
        // Spelled before it is broken: ASCII may be longer.
        let text = if self.ascii { ascii(text) } else { text.clone() };
        // The id of a session stays whole on forty columns.
        if self.is_narrow() && first.len() + text.width() <= self.columns {
            return self.row(&safe(&format!("{first}{text}")));
        }
        let room = self.columns - first.len().max(rest.len());
        for (number, line) in wrap(&text, room).iter().enumerate() {
            let margin = if number == 0 { first } else { rest };
            self.row(&safe(&format!("{margin}{line}")));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_id_of_a_session_stays_whole_on_forty_columns() {
        let mut page = Page::new(40, false);
        page.below(&safe("019a00d8-ce80-7d91-91df-1f53951d5e99"));
        page.below(&safe("one two three four five six seven eight nine"));
        let lines = [
            "    019a00d8-ce80-7d91-91df-1f53951d5e99",
            "    one two three four five six seven",
            "      eight nine",
            "",
        ];
        assert_eq!(page.finish(), lines.join("\n"));
    }

    #[test]
    fn a_label_of_any_length_stays_apart_from_its_text() {
        let mut page = Page::new(78, false);
        for label in ["Within 999 days", "Within 1000 days", "Within 4294967295 days"] {
            page.line(label, &safe("not known yet"));
        }
        let lines = [
            "  Within 999 days not known yet",
            "  Within 1000 days not known yet",
            "  Within 4294967295 days not known yet",
            "",
        ];
        assert_eq!(page.finish(), lines.join("\n"));
    }
}
