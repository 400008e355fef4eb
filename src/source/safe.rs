//! Text that is safe to show.
//!
//! Trees, logs and typed answers are written by others. A terminal acts on control characters, and a reader is misled by
//! characters that reorder or hide text. Every face and every report shows such text only as [`Safe`].

use std::fmt;

use unicode_segmentation::UnicodeSegmentation;
use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

/// How many combining marks may stand on one letter before the rest is cut.
const MARKS: usize = 4;

/// One line of text in which nothing can act on a terminal, reorder, or hide.
///
/// Control characters are shown as `^[`, invisible and direction-changing ones as `<U+202E>`; marks stacked higher than
/// any script needs are cut.
///
/// ```
/// use proofwalk::source::safe;
/// assert_eq!(safe("valve\u{1b}[2J").to_string(), "valve^[[2J");
/// assert_eq!(safe("part\u{202e}x").to_string(), "part<U+202E>x");
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Safe(String);

impl Safe {
    /// The text itself.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// How many terminal columns it takes.
    pub fn width(&self) -> usize {
        self.0.width()
    }

    /// At most `columns` wide; what is cut shows as an ellipsis.
    pub fn cut(&self, columns: usize) -> Self {
        if self.width() <= columns {
            return self.clone();
        }
        let room = columns.saturating_sub(1);
        let mut used = 0;
        let mut kept = String::new();
        for grapheme in self.0.graphemes(true) {
            used += grapheme.width();
            if used > room {
                break;
            }
            kept.push_str(grapheme);
        }
        if columns > 0 {
            kept.push('…');
        }
        Self(kept)
    }
}

impl fmt::Display for Safe {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.0)
    }
}

impl From<Safe> for String {
    fn from(text: Safe) -> Self {
        text.0
    }
}

/// Makes one line of text safe; a line break shows as `^J`.
pub fn safe(text: &str) -> Safe {
    // Most texts are plain, and a check makes every text of a library safe.
    if text.bytes().all(|byte| matches!(byte, b' '..=b'~')) {
        return Safe(text.to_owned());
    }
    let mut shown = String::with_capacity(text.len());
    let mut marks = 0;
    for character in text.chars() {
        if character.is_ascii_control() {
            shown.push('^');
            shown.push(char::from(character as u8 ^ 0x40));
            marks = 0;
        } else if is_unsafe(character) {
            shown.push_str(&format!("<U+{:04X}>", character as u32));
            marks = 0;
        } else if character.width() == Some(0) {
            marks += 1;
            if marks <= MARKS {
                shown.push(character);
            }
        } else {
            marks = 0;
            shown.push(character);
        }
    }
    Safe(shown)
}

/// Makes text of several lines safe, a line each; lines end with `\n` or `\r\n`.
pub fn safe_lines(text: &str) -> Vec<Safe> {
    text.lines().map(safe).collect()
}

/// Whether a text is made of nothing but printable ASCII, tabs and line feeds, so that there is no need to look at each
/// character: most texts are.
pub fn is_plain(text: &str) -> bool {
    // Without a way out in the middle, this takes many bytes at a time.
    let plain = |byte| matches!(byte, b' '..=b'~' | b'\n' | b'\t');
    text.bytes().fold(true, |all, byte| all & plain(byte))
}

/// Whether a character may act on a terminal, change the direction of text, or not be seen at all.
pub fn is_unsafe(character: char) -> bool {
    character.is_control()
        || matches!(character,
            '\u{00ad}' | '\u{034f}' | '\u{061c}' | '\u{115f}'..='\u{1160}' | '\u{17b4}'..='\u{17b5}'
            | '\u{180b}'..='\u{180f}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}'
            | '\u{2800}' | '\u{3164}' | '\u{fe00}'..='\u{fe0f}' | '\u{feff}' | '\u{ffa0}' | '\u{fff0}'..='\u{fffb}'
            | '\u{1bca0}'..='\u{1bca3}' | '\u{1d173}'..='\u{1d17a}' | '\u{e0000}'..='\u{e0fff}')
        || character as u32 & 0xfffe == 0xfffe
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn shows(text: &str, shown: &str) {
        assert_eq!(safe(text).as_str(), shown);
    }

    #[test]
    fn control_characters_are_made_visible() {
        shows("a\u{1b}]0;title\u{7}", "a^[]0;title^G");
        shows("pass\rfail", "pass^Mfail");
        shows("\u{9b}31m", "<U+009B>31m");
        shows("\u{7f}\0", "^?^@");
    }

    #[test]
    fn what_reorders_or_hides_is_spelled_out() {
        shows("\u{2066}x\u{2069}", "<U+2066>x<U+2069>");
        shows("a\u{200b}b", "a<U+200B>b");
        shows("\u{e0041}", "<U+E0041>");
    }

    #[test]
    fn a_plain_text_holds_nothing_unsafe() {
        assert!(is_plain("a: [b] # ~\n\tc"));
        for text in ["a\u{7f}", "\u{1f}", "a\rb", "°F", "\u{202e}"] {
            assert!(!is_plain(text), "{text:?}");
        }
    }

    #[test]
    fn marks_beyond_what_a_script_needs_are_cut() {
        let stacked = format!("e{}", "\u{301}".repeat(200));
        assert_eq!(safe(&stacked).as_str().chars().count(), 1 + MARKS);
        shows("naïve 3.5 µA Ω °F", "naïve 3.5 µA Ω °F");
    }

    #[test]
    fn cutting_counts_columns_not_bytes() {
        assert_eq!(safe("gas valve").cut(5).as_str(), "gas …");
        assert_eq!(safe("日本語").cut(4).as_str(), "日…");
        assert_eq!(safe("abc").cut(3).as_str(), "abc");
        assert_eq!(safe("abc").cut(0).as_str(), "");
    }
}
