//! What can be answered: rows of bands and options, and the line that is typed.

use tui_input::Input;

use crate::library::Severity;
use crate::source::{Safe, safe};
use crate::tui::field;
use crate::tui::page::{Page, Piece};
use crate::tui::theme::{Role, Theme};

/// The widest first column in which what answers mean is lined up.
const WIDEST: usize = 30;

/// A band or an option.
pub struct Row<'a> {
    /// What it says.
    pub words: &'a Safe,
    /// What it means.
    pub means: Option<&'a Safe>,
    /// What it puts on the report.
    pub finding: Option<Severity>,
}

impl Row<'_> {
    /// The row, with what it means from `column` on.
    pub fn pieces(&self, theme: Theme, marked: bool, column: usize) -> Vec<Piece> {
        let role = if marked { Role::Here } else { Role::Plain };
        let mut pieces = vec![(self.words.clone(), role)];
        let gap = column.saturating_sub(theme.text(self.words).width());
        // Not lined up, a gap alone would be lost where the line breaks.
        let gap = if gap > 0 {
            safe(&" ".repeat(gap))
        } else {
            safe(theme.dot())
        };
        let mut first = true;
        let mut add = |piece: Piece| {
            let before = if first { gap.clone() } else { safe(theme.dot()) };
            pieces.push((before, Role::Plain));
            pieces.push(piece);
            first = false;
        };
        if let Some(means) = self.means {
            add((means.clone(), if marked { Role::Strong } else { Role::Plain }));
        }
        if let Some(severity) = self.finding {
            add((safe(severity.name()), theme.severity(severity)));
        }
        pieces
    }
}

/// From which column on what the rows mean is lined up; 0 where that would push it out.
pub fn column(theme: Theme, rows: &[Row<'_>], room: usize) -> usize {
    let words = rows
        .iter()
        .map(|row| theme.text(row.words).width())
        .max()
        .unwrap_or(0);
    let means = rows
        .iter()
        .filter_map(|row| row.means)
        .map(|means| theme.text(means).width())
        .max();
    let fits = words + 2 + means.unwrap_or(0) + 3 <= room;
    if words <= WIDEST && fits { words + 2 } else { 0 }
}

/// The line that is typed, with what stands behind it; the cursor's column and line come back.
pub fn field(page: &mut Page, label: &'static str, input: &Input, behind: &Safe) -> (usize, usize) {
    let label_before = if page.margin() > 2 { 0 } else { label.len() + 1 };
    let room = page.room().saturating_sub(label_before).max(1);
    let (lines, (column, line)) = field::field(input, room);
    let last = lines.len() - 1;
    let start = page.len();
    for (number, text) in lines.iter().enumerate() {
        let mut pieces = vec![(text.clone(), Role::Strong)];
        if number == last && text.width() + 1 + behind.width() <= room {
            pieces.push((safe(&format!(" {behind}")), Role::Quiet));
        }
        page.entry(if number == 0 { label } else { "" }, Role::Label, &pieces);
    }
    let before = match (page.margin(), line) {
        (2, 0) => label_before,
        (2, _) => 0,
        (margin, _) => margin,
    };
    (before + column, start + line)
}
