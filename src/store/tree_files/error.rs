//! Why a library's folder cannot be read from disk.

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
