//! What can be answered: rows of bands and options, and the line that is typed.

use tui_input::Input;

use crate::layout::{self, Part};
use crate::library::Severity;
use crate::source::{Safe, safe};
use crate::tui::field;
use crate::tui::page::{Page, Piece};
use crate::tui::theme::{Role, Theme};

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
        let columns = theme.text(self.words).width();
        let finding = self.finding.map(Severity::name);
        let pieces = layout::answer(self.words, columns, self.means, finding, (column, theme.dot()));
        let role = |part: Part| match part {
            Part::Words if marked => Role::Here,
            Part::Means if marked => Role::Strong,
            Part::Finding => self
                .finding
                .map_or(Role::Plain, |severity| theme.severity(severity)),
            _ => Role::Plain,
        };
        pieces
            .into_iter()
            .map(|(text, part)| (text, role(part)))
            .collect()
    }
}

/// From which column on what the rows mean is lined up; 0 where that would push it out.
pub fn column(theme: Theme, rows: &[Row<'_>], room: usize) -> usize {
    let width = |text: &Safe| theme.text(text).width();
    let rows = rows.iter().map(|row| (width(row.words), row.means.map(width)));
    layout::column(rows, room)
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
