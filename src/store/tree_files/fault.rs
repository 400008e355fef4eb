//! Why one file of a library cannot be read.

use std::io;

use crate::source::{SourceFile, Unread};

/// Something that stands where a file of the library should, and cannot be read as one.
pub(super) struct Fault {
    name: String,
    text: String,
    why: Unread,
}

impl Fault {
    pub fn new(name: &str, why: Unread) -> Self {
        Self {
            name: name.to_owned(),
            text: String::new(),
            why,
        }
    }

    /// With the text in front of what is wrong.
    pub fn after(self, text: String) -> Self {
        Self { text, ..self }
    }

    /// As a file of the library, so that it is reported with all else that is wrong there.
    pub fn into_file(self) -> SourceFile {
        SourceFile::unread(self.name, self.text, self.why)
    }
}

pub(super) fn unread(message: impl Into<String>, help: impl Into<String>) -> Unread {
    Unread {
        message: message.into(),
        help: help.into(),
    }
}

pub(super) fn unreadable(error: &io::Error) -> Unread {
    let help = match error.kind() {
        io::ErrorKind::NotFound => "check the path",
        io::ErrorKind::PermissionDenied => "ask its owner for the right to read it",
        _ => "see to the disk and try again",
    };
    unread(format!("cannot be read: {error}"), help)
}
