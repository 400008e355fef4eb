//! The line of a file that a finding is about, made safe and short.

use std::ops::Range;

use crate::source::{Safe, SourceFile, Span, ascii, safe};

/// Columns that the line number and the frame beside a line take.
const FRAME: usize = 10;

/// A line that is safe to show, and which of its bytes are meant.
#[derive(Debug, PartialEq)]
pub(in crate::report) struct Excerpt {
    pub line: String,
    pub marked: Range<usize>,
}

impl Excerpt {
    /// What of a span lies on its first line, with what fits beside it; in ASCII where no more can be shown.
    pub fn of(file: &SourceFile, span: Span, columns: usize, in_ascii: bool) -> Self {
        let plain = if in_ascii { PLAIN } else { RICH };
        let text = file.text();
        let start = floor(text, span.start as usize);
        let from = text[..start].rfind('\n').map_or(0, |at| at + 1);
        let to = text[start..]
            .find(['\n', '\r'])
            .map_or(text.len(), |at| start + at);
        let end = floor(text, (span.end as usize).clamp(start, to));

        let room = columns.saturating_sub(FRAME);
        let marked = head(&text[start..end], room / 2, plain);
        let side = room.saturating_sub(safe(&marked).width());
        let before = tail(&text[from..start], side / 2, plain);
        let after = head(&text[end..to], side - safe(&before).width().min(side), plain);
        let marked_at = before.len()..before.len() + marked.len();
        Self {
            line: before + &marked + &after,
            marked: marked_at,
        }
    }
}

/// The last place where a character begins, at or before an offset.
fn floor(text: &str, offset: usize) -> usize {
    (0..=offset.min(text.len()))
        .rev()
        .find(|&at| text.is_char_boundary(at))
        .unwrap_or_default()
}

/// How a text is shown, and what stands for what was cut.
type Letters = (fn(&str) -> Safe, &'static str);

const RICH: Letters = (safe, "…");
const PLAIN: Letters = (|text| ascii(&safe(text)), "~");

/// What fits of the start of a text.
fn head(text: &str, columns: usize, (shown, cut): Letters) -> String {
    // No more of it than could be shown is looked at: a line may be as long as a file.
    let end = text
        .char_indices()
        .nth(columns + 1)
        .map_or(text.len(), |(at, _)| at);
    let whole = shown(&text[..end]);
    let short = String::from(whole.cut(columns));
    match short.strip_suffix('…') {
        Some(start) if whole.width() > columns => format!("{start}{cut}"),
        _ => short,
    }
}

/// What fits of the end of a text.
fn tail(text: &str, columns: usize, (shown, cut): Letters) -> String {
    let most = text.char_indices().rev().take(columns + 1);
    let starts: Vec<usize> = most.map(|(at, _)| at).collect();
    let fitting = starts.iter().rev().copied().find(|&start| {
        let dots = usize::from(start > 0);
        shown(&text[start..]).width() + dots <= columns
    });
    match fitting {
        Some(0) => shown(text).into(),
        Some(start) => format!("{cut}{}", shown(&text[start..])),
        None if text.is_empty() || columns == 0 => String::new(),
        None => cut.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::FileId;

    #[track_caller]
    fn shows(text: &str, range: Range<u32>, line: &str, marked: &str) {
        let span = Span {
            file: FileId(0),
            start: range.start,
            end: range.end,
        };
        let excerpt = Excerpt::of(&SourceFile::new("a.yaml", text), span, 40, false);
        assert_eq!(
            (excerpt.line.as_str(), &excerpt.line[excerpt.marked.clone()]),
            (line, marked)
        );
    }

    #[test]
    fn the_line_of_the_span_is_shown_whole_where_it_fits() {
        shows("one: 1\n  two: 2\r\nthree: 3\n", 9..12, "  two: 2", "two");
        shows("one: 1\ntwo", 7..10, "two", "two");
        shows("", 0..0, "", "");
    }

    #[test]
    fn a_span_of_several_lines_is_marked_on_its_first() {
        shows("one:\n  two: 2\n", 0..13, "one:", "one:");
    }

    #[test]
    fn a_long_line_is_cut_on_both_sides() {
        let text = format!("{}here{}", "a".repeat(5000), "b".repeat(5000));
        shows(&text, 5000..5004, "…aaaaaaaaaaaaherebbbbbbbbbbbb…", "here");
    }

    #[test]
    fn in_ascii_nothing_else_is_shown() {
        let text = format!("°F: {}here{}", "a".repeat(99), "b".repeat(99));
        let span = |start, end| Span {
            file: FileId(0),
            start,
            end,
        };
        let line = |span| Excerpt::of(&SourceFile::new("a.yaml", &*text), span, 40, true).line;
        assert_eq!(line(span(104, 108)), "~aaaaaaaaaaaaherebbbbbbbbbbbb~");
        assert_eq!(line(span(0, 3)), "degF: aaaaaaaaaaaaaaaaaaaaaaa~");
    }

    #[test]
    fn what_acts_on_a_terminal_is_spelled_out() {
        shows("a\u{1b}[2J: \u{202e}b", 1..2, "a^[[2J: <U+202E>b", "^[");
    }
}
