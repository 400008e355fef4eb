//! Lines under construction: words in the margin, text beside them.

use ratatui::text::{Line, Span};

use super::theme::{Role, Theme};
use crate::layout::{LABEL, MARGIN, TAG_GAP, WIDE};
use crate::source::{Safe, wrap_ranges};

/// A stretch of text in one role.
pub type Piece = (Safe, Role);

/// Lines under construction for one width.
pub struct Page {
    theme: Theme,
    width: usize,
    lines: Vec<Line<'static>>,
}

impl Page {
    /// An empty page.
    pub fn new(theme: Theme, width: usize) -> Self {
        Self {
            theme,
            width,
            lines: Vec::new(),
        }
    }

    /// The lines.
    pub fn into_lines(self) -> Vec<Line<'static>> {
        self.lines
    }

    /// How many lines there are.
    pub fn len(&self) -> usize {
        self.lines.len()
    }

    /// Columns for the text of an entry or an item.
    pub fn room(&self) -> usize {
        self.width.saturating_sub(self.margin())
    }

    /// Columns of the margin.
    pub fn margin(&self) -> usize {
        if self.is_narrow() { 2 } else { MARGIN }
    }

    /// Whether the margin has no column of its own, so that lists stand without their word.
    pub fn is_narrow(&self) -> bool {
        self.width < WIDE
    }

    /// An empty line.
    pub fn blank(&mut self) {
        self.lines.push(Line::default());
    }

    /// A line as it is.
    pub fn line(&mut self, line: Line<'static>) {
        self.lines.push(line);
    }

    /// Text over the whole width.
    pub fn text(&mut self, pieces: &[Piece]) {
        let lines = flow(self.theme, pieces, self.width);
        self.lines.extend(lines.into_iter().map(Line::from));
    }

    /// Text beside a word in the margin; on a narrow page the word stands before the text.
    pub fn entry(&mut self, label: &'static str, role: Role, pieces: &[Piece]) {
        if self.margin() < MARGIN {
            let mut all = vec![(self.theme.words(label), role)];
            if !label.is_empty() {
                all.push((self.theme.words(" "), Role::Plain));
            }
            all.extend_from_slice(pieces);
            self.hang(Vec::new(), &all, 0);
            return;
        }
        let mut first = Vec::new();
        let label = self.theme.words(label);
        first.push(Span::raw(" ".repeat(LABEL.saturating_sub(label.width()))));
        first.push(Span::styled(String::from(label), self.theme.style(role)));
        first.push(Span::raw(" ".repeat(MARGIN - LABEL)));
        self.hang(first, pieces, 0);
    }

    /// An item of a list, with the letter or number it is called by; `label` names the list beside its first item.
    pub fn item(&mut self, label: &'static str, marked: bool, tag: &Safe, pieces: &[Piece]) {
        let mark = if marked { self.theme.mark() } else { " " };
        let mut first = Vec::new();
        if self.margin() == MARGIN {
            let label = format!("{label:>LABEL$} ");
            first.push(Span::styled(label, self.theme.style(Role::Label)));
        }
        let role = if marked { Role::Here } else { Role::Plain };
        first.push(Span::styled(format!("{mark} "), self.theme.style(Role::Here)));
        let tag = self.theme.text(tag);
        let indent = tag.width() + TAG_GAP;
        first.push(Span::styled(format!("{tag}  "), self.theme.style(role)));
        self.hang(first, pieces, indent);
    }

    fn hang(&mut self, first: Vec<Span<'static>>, pieces: &[Piece], indent: usize) {
        let fresh = first.is_empty();
        let margin = self.margin();
        let room = self.room().saturating_sub(indent).max(1);
        let mut first = Some(first);
        for (number, spans) in flow(self.theme, pieces, room).into_iter().enumerate() {
            let mut line = match first.take() {
                Some(first) if number == 0 && !fresh => first,
                _ if number == 0 => Vec::new(),
                _ => vec![Span::raw(" ".repeat(margin + indent))],
            };
            line.extend(spans);
            self.lines.push(Line::from(line));
        }
    }
}

/// Breaks pieces of text into lines of at most `columns`.
pub fn flow(theme: Theme, pieces: &[Piece], columns: usize) -> Vec<Vec<Span<'static>>> {
    let mut text = String::new();
    let mut ends = Vec::new();
    for (piece, role) in pieces {
        text.push_str(theme.text(piece).as_str());
        ends.push((text.len(), *role));
    }
    let lines = wrap_ranges(&text, columns);
    let spans = |line: std::ops::Range<usize>| {
        let mut from = line.start;
        let mut spans = Vec::new();
        for &(end, role) in &ends {
            let to = end.min(line.end);
            if to > from {
                spans.push(Span::styled(text[from..to].to_owned(), theme.style(role)));
                from = to;
            }
        }
        spans
    };
    lines.into_iter().map(spans).collect()
}
