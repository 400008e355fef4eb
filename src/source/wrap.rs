//! Lines that fit.

use std::ops::Range;

use unicode_segmentation::UnicodeSegmentation;
use unicode_width::UnicodeWidthStr;

use super::safe::{Safe, safe};

/// Breaks a text into lines of at most `columns`, between words; a word longer than a line is broken where it must be.
///
/// A character wider than the whole line stands on a line of its own all the same: nothing is lost.
pub fn wrap(text: &Safe, columns: usize) -> Vec<Safe> {
    wrap_ranges(text.as_str(), columns)
        .into_iter()
        .map(|range| safe(&text.as_str()[range]))
        .collect()
}

/// As [`wrap`], as byte ranges of the text; the spaces at which it breaks belong to no line. Always at least one line.
pub fn wrap_ranges(text: &str, columns: usize) -> Vec<Range<usize>> {
    let columns = columns.max(1);
    let mut lines = Vec::new();
    // What the line has so far, without the spaces that follow it.
    let mut line: Option<Range<usize>> = None;
    for word in words(text) {
        if let Some(held) = &mut line {
            if text[held.start..word.end].width() <= columns {
                held.end = word.end;
                continue;
            }
            lines.push(held.clone());
        }
        line = Some(break_word(text, word, columns, &mut lines));
    }
    lines.push(line.unwrap_or(0..0));
    lines
}

/// Pushes what of a word fills whole lines; the rest comes back.
fn break_word(text: &str, word: Range<usize>, columns: usize, lines: &mut Vec<Range<usize>>) -> Range<usize> {
    if text[word.clone()].width() <= columns {
        return word;
    }
    let mut start = word.start;
    let mut used = 0;
    for (at, grapheme) in text[word.clone()].grapheme_indices(true) {
        let at = word.start + at;
        let wide = grapheme.width();
        if used + wide > columns && at > start {
            lines.push(start..at);
            start = at;
            used = 0;
        }
        used += wide;
    }
    start..word.end
}

/// The words of a text; spaces at its very start belong to the first, so that an indent is kept.
fn words(text: &str) -> impl Iterator<Item = Range<usize>> {
    let mut from = 0;
    std::iter::from_fn(move || {
        let rest = &text[from..];
        let lead = if from == 0 {
            0
        } else {
            rest.len() - rest.trim_start_matches(' ').len()
        };
        let blank = rest.len() - rest.trim_start_matches(' ').len();
        if blank == rest.len() {
            return None;
        }
        let end = rest[blank..].find(' ').map_or(rest.len(), |at| blank + at);
        let word = from + lead..from + end;
        from += end;
        Some(word)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn wraps(text: &str, columns: usize, lines: &[&str]) {
        let found: Vec<String> = wrap(&safe(text), columns).into_iter().map(String::from).collect();
        assert_eq!(found, lines);
    }

    #[test]
    fn lines_break_between_words() {
        wraps(
            "close the gas cock first",
            10,
            &["close the", "gas cock", "first"],
        );
        wraps("a  b", 10, &["a  b"]);
        wraps("  indent kept", 9, &["  indent", "kept"]);
        wraps("", 10, &[""]);
        wraps("   ", 10, &[""]);
    }

    #[test]
    fn a_word_longer_than_a_line_is_broken_and_nothing_is_lost() {
        wraps("a abcdefgh b", 3, &["a", "abc", "def", "gh", "b"]);
        wraps("日本語", 3, &["日", "本", "語"]);
        wraps("日本", 1, &["日", "本"]);
    }
}
