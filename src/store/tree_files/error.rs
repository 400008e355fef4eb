//! Why a library cannot be read from disk, or written there.

use std::fmt;
use std::io;

use crate::source::safe;

/// One reason why a library cannot be read or written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LibraryReadError {
    /// The file inside the library, with forward slashes; for the folder itself, its path as it was given.
    pub file: String,
    /// What is wrong, without a full stop.
    pub message: String,
    /// How to mend it.
    pub help: String,
    /// The line, from 1, where one is known.
    pub line: Option<usize>,
    /// The column in characters, from 1, where one is known.
    pub column: Option<usize>,
    /// It could be read, and something could not be written.
    pub(super) unsaved: bool,
}

impl LibraryReadError {
    pub(super) fn new(file: &str, message: impl Into<String>, help: impl Into<String>) -> Self {
        Self {
            file: file.to_owned(),
            message: message.into(),
            help: help.into(),
            line: None,
            column: None,
            unsaved: false,
        }
    }

    pub(super) fn unsaved(file: &str, error: &io::Error) -> Self {
        let help = "see to the disk and to your right to write there, and try again";
        Self {
            unsaved: true,
            ..Self::new(file, format!("could not be saved: {error}"), help)
        }
    }

    /// Whether it is about writing: what there was could be read.
    pub fn is_unsaved(&self) -> bool {
        self.unsaved
    }

    pub(super) fn unreadable(file: &str, error: &io::Error) -> Self {
        let help = match error.kind() {
            io::ErrorKind::NotFound => "check the path",
            io::ErrorKind::PermissionDenied => "ask its owner for the right to read it",
            _ => "see to the disk and try again",
        };
        Self::new(file, format!("cannot be read: {error}"), help)
    }
}

impl fmt::Display for LibraryReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", safe(&self.file))?;
        for number in [self.line, self.column].into_iter().flatten() {
            write!(f, ":{number}")?;
        }
        write!(f, ": {}; {}", safe(&self.message), safe(&self.help))
    }
}

impl std::error::Error for LibraryReadError {}
