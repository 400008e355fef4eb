//! The lines and columns of a class's page.

use crate::report::findings::Look;
use crate::source::{Safe, ascii, safe, wrap};

/// Widest column of names.
const WIDEST: usize = 17;

/// What stands where nothing is known.
const NOT_NAMED: &str = "not named";

/// Who practised, as far as a column holds it.
pub(super) fn name(apprentice: Option<&str>) -> String {
    safe(apprentice.unwrap_or(NOT_NAMED))
        .cut(WIDEST)
        .as_str()
        .to_owned()
}

/// A count in a column: nothing is a dash, so that what is there is seen.
pub(super) fn count(count: usize) -> String {
    match count {
        0 => "-".to_owned(),
        count => count.to_string(),
    }
}

/// Lines that fit, safe to show.
pub(super) struct Page {
    pub look: Look,
    pub text: String,
}

/// Columns of a row: the name, what was found, then numbers.
const ROW: [usize; 7] = [WIDEST + 1, 16, 10, 13, 9, 6, 8];

impl Page {
    fn shown(&self, text: &str) -> Safe {
        let text = safe(text);
        if self.look.ascii { ascii(&text) } else { text }
    }

    pub fn line(&mut self, indent: usize, text: &str) {
        let lines = wrap(&self.shown(text), self.look.columns() - indent);
        if lines.is_empty() {
            self.text.push('\n');
        }
        for line in lines {
            self.text.push_str(format!("{:indent$}{line}\n", "").as_str());
        }
    }

    /// What the columns of the rows are called; each row says it itself where they do not fit.
    pub fn head(&mut self, heads: &[&str; 7]) {
        if self.holds_rows() {
            self.row(heads, heads);
        }
    }

    /// A row, whose columns are called by their heads.
    pub fn row(&mut self, heads: &[&str; 7], cells: &[&str; 7]) {
        if !self.holds_rows() {
            let named = heads.iter().zip(cells).skip(1).filter(|(_, cell)| **cell != "-");
            let named: Vec<String> = named.map(|(head, cell)| format!("{head}: {cell}")).collect();
            self.line(2, cells[0]);
            return self.line(4, &named.join("; "));
        }
        let mut row = String::new();
        for (at, (cell, wide)) in cells.iter().zip(ROW).enumerate() {
            let cell = self.shown(cell);
            let gap = " ".repeat(wide.saturating_sub(cell.width()));
            match at {
                0 | 1 => row.push_str(&format!("{cell}{gap}")),
                _ => row.push_str(&format!("{gap}{cell}")),
            }
        }
        self.text.push_str(row.trim_end());
        self.text.push('\n');
    }

    fn holds_rows(&self) -> bool {
        ROW.iter().sum::<usize>() <= self.look.columns()
    }
}
