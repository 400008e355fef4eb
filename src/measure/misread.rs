//! Text that could not be read as a quantity.

use std::fmt;
use std::ops::Range;

/// How much of a faulty text a message repeats, in characters.
const QUOTED: usize = 40;

/// Why a text could not be read: where, what is wrong, and how to mend it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Misread {
    /// The bytes of the text that are at fault.
    pub range: Range<usize>,
    /// What is wrong, without a full stop. It may repeat the text: make it safe before it is shown.
    pub message: String,
    /// How to mend it.
    pub help: String,
    /// The text can be read, but measures something else than its place does.
    pub(super) mismatch: bool,
}

impl Misread {
    /// What is wrong with a stretch of text, and how to mend it.
    pub(crate) fn new(range: Range<usize>, message: impl Into<String>, help: impl Into<String>) -> Self {
        Self {
            range,
            message: message.into(),
            help: help.into(),
            mismatch: false,
        }
    }

    /// The same, said of a text that measures something else than its place does.
    pub(super) fn mismatched(mut self) -> Self {
        self.mismatch = true;
        self
    }

    /// Whether the text can be read, but measures something else than its place does.
    pub fn is_mismatch(&self) -> bool {
        self.mismatch
    }

    /// The same, where the text that was read starts at byte `start` of a longer one.
    pub fn moved(mut self, start: usize) -> Self {
        self.range = self.range.start + start..self.range.end + start;
        self
    }
}

impl fmt::Display for Misread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}; {}", self.message, self.help)
    }
}

impl std::error::Error for Misread {}

/// A faulty text in a message: in backquotes, and cut where it is long.
pub(super) fn quoted(text: &str) -> String {
    match text.char_indices().nth(QUOTED) {
        Some((end, _)) => format!("`{}…`", &text[..end]),
        None => format!("`{text}`"),
    }
}

/// Where `part`, a slice of `text`, stands in it.
pub(super) fn range_in(text: &str, part: &str) -> Range<usize> {
    let start = (part.as_ptr() as usize).saturating_sub(text.as_ptr() as usize);
    start..start + part.len()
}
