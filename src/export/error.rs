//! Why an export failed.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

use crate::source::safe;

/// Why an export failed.
#[derive(Debug)]
pub enum ExportError {
    /// Something is there already.
    Taken(PathBuf),
    /// It cannot be written.
    Io(PathBuf, io::Error),
}

impl ExportError {
    pub(super) fn io(path: &Path) -> impl Fn(io::Error) -> Self + '_ {
        |error| Self::Io(path.to_owned(), error)
    }
}

impl fmt::Display for ExportError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Taken(path) => {
                let path = path.to_string_lossy();
                write!(
                    f,
                    "{} is there already, and nothing is written over it",
                    safe(&path)
                )
            }
            Self::Io(path, error) => {
                let (path, error) = (path.to_string_lossy(), error.to_string());
                write!(f, "{} cannot be written: {}", safe(&path), safe(&error))
            }
        }
    }
}

impl std::error::Error for ExportError {}
