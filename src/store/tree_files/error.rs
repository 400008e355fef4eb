//! Why a library's folder cannot be read from disk, or not written to.

use std::fmt;
use std::io;

use super::fault;
use crate::source::{Unread, safe};

/// Why a folder cannot be read as a library, nor as an overlay of one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LibraryReadError {
    /// The folder's path as it was given.
    pub folder: String,
    /// What is wrong, without a full stop.
    pub message: String,
    /// How to mend it.
    pub help: String,
}

impl LibraryReadError {
    pub(super) fn new(folder: &str, message: impl Into<String>, help: impl Into<String>) -> Self {
        Self {
            folder: folder.to_owned(),
            message: message.into(),
            help: help.into(),
        }
    }

    pub(super) fn unreadable(folder: &str, error: &io::Error) -> Self {
        let Unread { message, help } = fault::unreadable(error);
        Self::new(folder, message, help)
    }
}

impl fmt::Display for LibraryReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (folder, message) = (safe(&self.folder), safe(&self.message));
        write!(f, "{folder}: {message}; {}", safe(&self.help))
    }
}

impl std::error::Error for LibraryReadError {}

/// Why something could not be written into a library's folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LibraryWriteError {
    /// The file inside the library, with forward slashes; for a folder, its path as it was given.
    pub file: String,
    /// What is wrong, without a full stop.
    pub message: String,
    /// How to mend it.
    pub help: String,
    /// Everything could be read, and something could not be saved.
    pub unsaved: bool,
}

impl LibraryWriteError {
    pub(super) fn new(file: &str, message: impl Into<String>, help: impl Into<String>) -> Self {
        Self {
            file: file.to_owned(),
            message: message.into(),
            help: help.into(),
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

    pub(super) fn unreadable(file: &str, error: &io::Error) -> Self {
        let Unread { message, help } = fault::unreadable(error);
        Self::new(file, message, help)
    }
}

impl From<LibraryReadError> for LibraryWriteError {
    fn from(error: LibraryReadError) -> Self {
        Self::new(&error.folder, error.message, error.help)
    }
}

impl fmt::Display for LibraryWriteError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (file, message) = (safe(&self.file), safe(&self.message));
        write!(f, "{file}: {message}\n  help: {}", safe(&self.help))
    }
}

impl std::error::Error for LibraryWriteError {}
