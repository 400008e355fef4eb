//! How much room a text takes, and where it is broken.
//!
//! Nobody knows which font will draw the picture. Widths are those of DejaVu Sans, computed from its `hmtx` table: of the
//! usual sans-serif fonts it is one of the widest, so that text set in another is shorter than the room left for it.

use unicode_segmentation::UnicodeSegmentation;
use unicode_width::UnicodeWidthStr;

use crate::source::{Safe, safe};

/// Widths of the characters from space to tilde, in hundredths of the size.
const WIDTHS: [u8; 95] = [
    32, 41, 46, 84, 64, 96, 78, 28, 40, 40, 50, 84, 32, 37, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64,
    34, 34, 84, 84, 84, 54, 100, 69, 69, 70, 78, 64, 58, 78, 76, 30, 30, 66, 56, 87, 75, 79, 61, 79, 70, 64,
    62, 74, 69, 99, 69, 62, 69, 40, 34, 40, 84, 50, 50, 62, 64, 55, 64, 62, 36, 64, 64, 28, 28, 58, 28, 98,
    64, 62, 64, 64, 42, 53, 40, 64, 60, 82, 60, 60, 53, 64, 34, 64, 84,
];

/// A bold text is wider by this, on the whole of a line.
const BOLD: f64 = 1.16;

/// Longest text, in characters.
const LONGEST: usize = 2000;

/// A size, in units of the drawing, and a weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Letters {
    pub size: f64,
    pub bold: bool,
}

impl Letters {
    pub const fn plain(size: f64) -> Self {
        Self { size, bold: false }
    }

    pub const fn bold(size: f64) -> Self {
        Self { size, bold: true }
    }

    /// The room that a text takes on one line.
    pub fn width(self, text: &str) -> f64 {
        let hundredths: f64 = text.graphemes(true).map(grapheme_width).sum();
        hundredths / 100.0 * self.size * if self.bold { BOLD } else { 1.0 }
    }

    /// From one line to the next.
    pub fn leading(self) -> f64 {
        (self.size * 1.28).round()
    }

    /// Lines that fit in `room`, broken between words; a word that does not fit is broken at its joints, and where it
    /// must be. At most `most` of them, the last with an ellipsis where there would be more.
    pub fn wrap(self, text: &Safe, room: f64, most: usize) -> Vec<Safe> {
        let mut lines = Lines {
            letters: self,
            room,
            done: Vec::new(),
            line: String::new(),
            used: 0.0,
        };
        for word in text.as_str().split(' ').filter(|word| !word.is_empty()) {
            if lines.done.len() > most {
                break;
            }
            lines.word(word);
        }
        lines.finish(most)
    }
}

/// Lines that are being filled.
struct Lines {
    letters: Letters,
    room: f64,
    done: Vec<String>,
    line: String,
    used: f64,
}

impl Lines {
    fn word(&mut self, word: &str) {
        if !self.line.is_empty() {
            let space = self.letters.width(" ");
            if self.used + space + self.letters.width(word) <= self.room {
                self.line.push(' ');
                self.used += space;
            } else {
                self.end();
            }
        }
        if self.letters.width(word) <= self.room {
            return self.add(word);
        }
        for part in word.split_inclusive(['.', '_', '-', '/']) {
            if self.letters.width(part) <= self.room {
                self.add(part);
            } else {
                part.graphemes(true).for_each(|grapheme| self.add(grapheme));
            }
        }
    }

    /// Adds what is not broken any further.
    fn add(&mut self, text: &str) {
        let wide = self.letters.width(text);
        if self.used + wide > self.room && !self.line.is_empty() {
            self.end();
        }
        self.line.push_str(text);
        self.used += wide;
    }

    fn end(&mut self) {
        self.done.push(std::mem::take(&mut self.line));
        self.used = 0.0;
    }

    fn finish(mut self, most: usize) -> Vec<Safe> {
        if !self.line.is_empty() {
            self.end();
        }
        let is_cut = self.done.len() > most;
        self.done.truncate(most);
        if let (true, Some(last)) = (is_cut, self.done.last_mut()) {
            let dots = self.letters.width("…");
            while self.letters.width(last) + dots > self.room && last.pop().is_some() {}
            last.push('…');
        }
        self.done.iter().map(|line| safe(line)).collect()
    }
}

/// The beginning of a text, as much as any box has room for, made safe: what is longer costs time and shows nothing.
pub(super) fn short(text: &str) -> Safe {
    match text.char_indices().nth(LONGEST) {
        Some((end, _)) => safe(&format!("{}…", &text[..end])),
        None => safe(text),
    }
}

/// In hundredths of the size.
fn grapheme_width(grapheme: &str) -> f64 {
    match grapheme.as_bytes() {
        [byte @ b' '..=b'~'] => f64::from(WIDTHS[usize::from(byte - b' ')]),
        _ => match grapheme.width() {
            0 => 0.0,
            1 => 90.0,
            columns => 60.0 * columns as f64,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn wraps(text: &str, room: f64, most: usize, lines: &[&str]) {
        let letters = Letters::plain(10.0);
        let found = letters.wrap(&safe(text), room, most);
        assert_eq!(found.iter().map(Safe::as_str).collect::<Vec<_>>(), lines);
        assert!(
            found.iter().all(|line| letters.width(line.as_str()) <= room),
            "{found:?}"
        );
    }

    #[test]
    fn lines_break_between_words_and_fit() {
        wraps("Gas valve leaks", 60.0, 9, &["Gas valve", "leaks"]);
        wraps("20.4 V to 30 V", 40.0, 9, &["20.4 V", "to 30 V"]);
        wraps("", 60.0, 9, &[]);
    }

    #[test]
    fn a_long_word_is_broken_and_a_long_text_is_cut() {
        wraps("WWWWWWWW", 32.0, 9, &["WWW", "WWW", "WW"]);
        wraps("plate.switch_set_point", 80.0, 9, &["plate.switch_", "set_point"]);
        wraps("one two three four", 25.0, 2, &["one", "tw…"]);
    }

    #[test]
    fn a_wide_letter_takes_more_room_than_a_narrow_one() {
        let letters = Letters::plain(10.0);
        assert!(letters.width("WWW") > 3.0 * letters.width("iii"));
        assert!(Letters::bold(10.0).width("W") > letters.width("W"));
    }
}
