//! What stands beside the question.

use ratatui::text::{Line, Span};

use crate::face::{asked_and_answered, not_looked_at_since};
use crate::source::safe;
use crate::tui::page::{Piece, flow};
use crate::tui::sheet::Sheet;
use crate::tui::theme::{Role, Theme};
use crate::walk::{NO_LONGER, Standing};

/// A part of it under its heading.
pub struct Section {
    title: &'static str,
    count: usize,
    /// Its lines.
    pub lines: Vec<Line<'static>>,
    /// Whether it is that of the faults that are still possible.
    pub possible: bool,
}

impl Section {
    /// The heading with its count.
    pub fn heading(&self, theme: Theme) -> Line<'static> {
        Line::from(vec![
            Span::styled(self.title, theme.style(Role::Label)),
            Span::styled(format!("  {}", self.count), theme.style(Role::Strong)),
        ])
    }
}

/// All of it, for a column so wide: what must not be forgotten first.
pub fn sections(theme: Theme, standing: &Standing, width: usize) -> Vec<Section> {
    let open: Vec<_> = standing
        .open
        .iter()
        .map(|text| vec![(text.clone(), Role::Strong)])
        .collect();
    let possible: Vec<_> = standing
        .possible
        .iter()
        .map(|fault| vec![(fault.clone(), Role::Plain)])
        .collect();
    let findings: Vec<_> = standing
        .findings
        .iter()
        .map(|(severity, text)| {
            vec![
                (safe(severity.name()), theme.severity(*severity)),
                (safe(&format!(": {text}")), Role::Plain),
            ]
        })
        .collect();
    let mut sections = vec![section(theme, "to put back", theme.open(), &open, width)];
    if tells_possible(standing) {
        sections.push(Section {
            possible: true,
            ..section(theme, "still possible", " ", &possible, width)
        });
    }
    sections.push(section(theme, "found", " ", &findings, width));
    if !standing.not_looked_at.is_empty() {
        sections.push(not_looked_at(theme, standing, width));
    }
    if tells_possible(standing) {
        sections.push(ruled_out(theme, standing, width));
    }
    sections
}

/// Whether there is anything to say of what is possible. Before the end a call has nothing possible only where no tree asks.
pub fn tells_possible(standing: &Standing) -> bool {
    standing.ended.is_some() || !standing.possible.is_empty()
}

/// What was passed over, under what it was passed over for.
fn not_looked_at(theme: Theme, standing: &Standing, width: usize) -> Section {
    let mut all = section(theme, "not looked at", " ", &[], width);
    for visit in &standing.not_looked_at {
        let since = safe(&not_looked_at_since(visit));
        let flowed = flow(theme, &[(since, Role::Quiet)], width);
        all.lines.extend(flowed.into_iter().map(Line::from));
        for check in &visit.checks {
            all.count += 1;
            all.lines
                .extend(marked(theme, " ", &[(check.clone(), Role::Plain)], width));
        }
    }
    all
}

fn section(
    theme: Theme,
    title: &'static str,
    mark: &'static str,
    items: &[Vec<Piece>],
    width: usize,
) -> Section {
    let mut lines = Vec::new();
    for item in items {
        lines.extend(marked(theme, mark, item, width));
    }
    Section {
        title,
        count: items.len(),
        lines,
        possible: false,
    }
}

fn marked(theme: Theme, mark: &'static str, item: &[Piece], width: usize) -> Vec<Line<'static>> {
    let lines = flow(theme, item, width.saturating_sub(2).max(1));
    let before = |number: usize| {
        if number == 0 {
            format!("{mark} ")
        } else {
            "  ".to_owned()
        }
    };
    let line = |(number, mut spans): (usize, Vec<Span<'static>>)| {
        spans.insert(0, Span::raw(before(number)));
        Line::from(spans)
    };
    lines.into_iter().enumerate().map(line).collect()
}

/// By which answer, the newest first.
fn ruled_out(theme: Theme, standing: &Standing, width: usize) -> Section {
    let mut lines = Vec::new();
    let mut count = 0;
    for entry in standing
        .trail
        .iter()
        .rev()
        .filter(|entry| standing.ended.is_none() && !entry.ruled_out.is_empty())
    {
        let by = safe(&format!("by {}", asked_and_answered(entry)));
        lines.extend(
            flow(theme, &[(by, Role::Quiet)], width)
                .into_iter()
                .map(Line::from),
        );
        for fault in &entry.ruled_out {
            count += 1;
            lines.extend(marked(
                theme,
                theme.cross(),
                &[(fault.clone(), Role::Plain)],
                width,
            ));
        }
    }
    Section {
        title: NO_LONGER,
        count,
        lines,
        possible: false,
    }
}

/// All of it on a screen of its own.
pub fn sheet(theme: Theme, standing: &Standing, width: usize) -> Sheet {
    let mut all = sections(theme, standing, width);
    // What is still possible is a long list; nobody should have to look behind it for what was found.
    if let Some(place) = all.iter().position(|section| section.possible) {
        let possible = all.remove(place);
        all.insert(all.len().saturating_sub(1), possible);
    }
    let mut text = Vec::new();
    for section in all {
        text.push(section.heading(theme));
        text.extend(section.lines);
        text.push(Line::default());
    }
    Sheet {
        text,
        ..Sheet::default()
    }
}

/// As much of it as fits beside the question: every section keeps its heading, and a fair share of the rows.
pub fn side(theme: Theme, standing: &Standing, width: usize, height: usize) -> Vec<Line<'static>> {
    let sections: Vec<Section> = sections(theme, standing, width)
        .into_iter()
        .filter(|section| section.count > 0)
        .collect();
    let mut rows = Vec::new();
    let count = sections.len();
    for (number, section) in sections.into_iter().enumerate() {
        let later = count - number;
        let share = (height.saturating_sub(rows.len()) / later).max(2);
        // The last section takes what is left; the others leave an empty row behind them.
        let room = share.saturating_sub(if later == 1 { 1 } else { 2 });
        let hidden = section.lines.len().saturating_sub(room);
        rows.push(section.heading(theme));
        if hidden == 0 {
            rows.extend(section.lines);
        } else {
            let shown = room.saturating_sub(1);
            rows.extend(section.lines.into_iter().take(shown));
            let more = format!("  {} more lines: Tab", hidden + room - shown);
            rows.push(Line::from(Span::styled(more, theme.style(Role::Quiet))));
        }
        if later > 1 {
            rows.push(Line::default());
        }
    }
    rows.truncate(height);
    rows
}
