//! JSON in which text that turns or hides other text is spelled out.

use std::io::{self, Write};

use crate::source::is_unsafe;

/// Writes JSON on, with each character that is not safe to show as its `\u` escape. Such a character stands in strings only,
/// where an escape says the same; a serializer hands over whole characters.
pub(super) struct SpelledOut<W> {
    out: W,
}

impl<W: Write> SpelledOut<W> {
    pub(super) fn new(out: W) -> Self {
        Self { out }
    }
}

impl<W: Write> Write for SpelledOut<W> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let Ok(text) = str::from_utf8(bytes) else {
            return Err(io::ErrorKind::InvalidData.into());
        };
        let mut written = 0;
        let unsafe_ones = text
            .char_indices()
            .filter(|&(_, one)| is_unsafe(one) && one != '\n');
        for (at, character) in unsafe_ones {
            self.out.write_all(&bytes[written..at])?;
            for unit in character.encode_utf16(&mut [0; 2]) {
                write!(self.out, "\\u{unit:04x}")?;
            }
            written = at + character.len_utf8();
        }
        self.out.write_all(&bytes[written..])?;
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        self.out.flush()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_turns_or_hides_text_is_spelled_out_and_reads_back_the_same() {
        let text = "plain\u{202e}turned \u{e0041}hidden µ\n";
        let mut written = Vec::new();
        serde_json::to_writer(SpelledOut::new(&mut written), text).unwrap();
        assert_eq!(
            String::from_utf8(written.clone()).unwrap(),
            r#""plain\u202eturned \udb40\udc41hidden µ\n""#
        );
        assert_eq!(serde_json::from_slice::<String>(&written).unwrap(), text);
    }
}
