//! Where the escapes of YAML stand: `"\e"` in a file is a control character in a text.

use std::collections::{BTreeSet, HashMap};

use crate::source::{FileId, Files, Span, is_unsafe};

/// The escapes that stand for unsafe characters, by the file and the character; each is handed out once.
#[derive(Debug, Default)]
pub(super) struct Escapes {
    left: HashMap<(FileId, char), BTreeSet<(u32, u32)>>,
}

impl Escapes {
    /// All of a library's files.
    pub fn of(files: &Files) -> Self {
        let mut escapes = Self::default();
        for (id, file) in files.iter() {
            for (start, end, character) in Reader::new(file.text()) {
                if is_unsafe(character) {
                    let places = escapes.left.entry((id, character)).or_default();
                    places.insert((start as u32, end as u32));
                }
            }
        }
        escapes
    }

    /// The next escape of a character at or after a place; none where the character stands there as it is.
    pub fn take(&mut self, from: Span, character: char) -> Option<Span> {
        let places = self.left.get_mut(&(from.file, character))?;
        let &(start, end) = places.range((from.start, 0)..).next()?;
        places.remove(&(start, end));
        Some(Span {
            file: from.file,
            start,
            end,
        })
    }
}

/// Reads a file for the escapes in double quotes: it knows comments, quotes and blocks of text apart, and no more of YAML.
struct Reader<'a> {
    text: &'a str,
    at: usize,
    quoted: bool,
}

impl<'a> Reader<'a> {
    fn new(text: &'a str) -> Self {
        Self {
            text,
            at: 0,
            quoted: false,
        }
    }

    fn rest(&self) -> &'a str {
        &self.text[self.at..]
    }

    /// Whether something may begin here: quotes and blocks begin nowhere else.
    fn begins(&self) -> bool {
        let before = self.text[..self.at].chars().next_back();
        before.is_none_or(|before| before.is_whitespace() || "[{,:".contains(before))
    }

    fn pass_line(&mut self) {
        self.at += self.rest().find('\n').unwrap_or(self.rest().len());
    }

    /// Passes a text in single quotes, in which a quote is written twice.
    fn pass_single_quotes(&mut self) {
        self.at += 1;
        while let Some(end) = self.rest().find('\'') {
            self.at += end + 1;
            if !self.rest().starts_with('\'') {
                return;
            }
            self.at += 1;
        }
        self.at = self.text.len();
    }

    /// Passes a block of text, if one begins here: all lines that are empty, or further in than the one it begins on.
    fn pass_block(&mut self) -> bool {
        // No more of the line is looked at than may be the block's header: a line may be as long as a file.
        let after = self.rest()[1..].trim_start_matches(|c: char| c == '+' || c == '-' || c.is_ascii_digit());
        let after = after.trim_start_matches([' ', '\t', '\r']);
        if !after.is_empty() && !after.starts_with(['\n', '#']) {
            return false;
        }
        let start = self.text[..self.at].rfind('\n').map_or(0, |end| end + 1);
        let indent = depth(&self.text[start..]);
        self.pass_line();
        while let Some(next) = self.rest().strip_prefix('\n') {
            let line = next.lines().next().unwrap_or_default();
            if !line.trim().is_empty() && depth(line) <= indent {
                break;
            }
            self.at += 1;
            self.pass_line();
        }
        true
    }

    /// Reads the escape that begins here.
    fn escape(&mut self) -> Option<(usize, usize, char)> {
        let start = self.at;
        self.at += 1;
        let letter = self.rest().chars().next()?;
        self.at += letter.len_utf8();
        let digits = match letter {
            'x' => 2,
            'u' => 4,
            'U' => 8,
            _ => 0,
        };
        let code = match letter {
            '0' => 0x00,
            'a' => 0x07,
            'b' => 0x08,
            'v' => 0x0b,
            'f' => 0x0c,
            'r' => 0x0d,
            'e' => 0x1b,
            'N' => 0x85,
            'L' => 0x2028,
            'P' => 0x2029,
            _ if digits > 0 => {
                let code = u32::from_str_radix(self.rest().get(..digits)?, 16).ok()?;
                self.at += digits;
                code
            }
            _ => return None,
        };
        Some((start, self.at, char::from_u32(code)?))
    }
}

impl Iterator for Reader<'_> {
    type Item = (usize, usize, char);

    fn next(&mut self) -> Option<Self::Item> {
        loop {
            let next = self.rest().chars().next()?;
            match next {
                '\\' if self.quoted => {
                    if let Some(found) = self.escape() {
                        return Some(found);
                    }
                    continue;
                }
                '"' if self.quoted || self.begins() => self.quoted = !self.quoted,
                '\'' if !self.quoted && self.begins() => {
                    self.pass_single_quotes();
                    continue;
                }
                '#' if !self.quoted && self.begins() => self.pass_line(),
                '|' | '>' if !self.quoted && self.begins() && self.pass_block() => continue,
                _ => {}
            }
            self.at += self.rest().chars().next().map_or(0, char::len_utf8);
        }
    }
}

/// How far in a line begins.
fn depth(line: &str) -> usize {
    line.len() - line.trim_start_matches(' ').len()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(text: &str) -> Vec<(usize, char)> {
        Reader::new(text)
            .map(|(start, _, character)| (start, character))
            .collect()
    }

    #[test]
    fn escapes_stand_in_double_quotes_alone() {
        assert_eq!(
            found(r#"a: "x\e\u202ey\x07""#),
            [(5, '\u{1b}'), (7, '\u{202e}'), (14, '\u{7}')]
        );
        assert_eq!(found(r#"{a: "\\e \"\e\"", b: ["\U000e0041", "\0"]}"#).len(), 3);
        assert_eq!(found(r"a: x\e # it's '\e'"), []);
        assert_eq!(found(r#"a: 'it''s "\e"' # "\e""#), []);
        assert_eq!(found(r#"a: 3" "#), []);
        assert_eq!(
            found("a: >-\n  say \"\\e\"\n\n  it's\nb: \"\\e\""),
            [(29, '\u{1b}')]
        );
    }

    #[test]
    fn nothing_that_is_cut_off_stops_the_reader() {
        for text in [
            "\"",
            "\"\\",
            "\"\\x",
            "\"\\u20",
            "'",
            "a: |",
            "a: >-\n",
            "\"\\U0011ffff",
            "|°",
            "\"\\°",
        ] {
            assert_eq!(found(text), [], "{text}");
        }
    }
}
