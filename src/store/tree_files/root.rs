//! The folder that a layer of a library is read from.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use super::error::LibraryReadError;

/// A folder that can be looked into.
pub(super) struct Root {
    /// Which layer it is; 0 is the library itself.
    pub number: usize,
    /// Its canonical path.
    pub path: PathBuf,
    /// Its path as it was given.
    pub shown: String,
}

impl Root {
    pub fn open(number: usize, folder: &Path) -> Result<Self, LibraryReadError> {
        let shown = folder.to_string_lossy().into_owned();
        let (what, whose) = match number {
            0 => ("a library", "the library's"),
            _ => ("an overlay", "the overlay's"),
        };
        let path = match fs::canonicalize(folder) {
            Ok(path) if path.is_dir() => path,
            Ok(_) => {
                let help = format!("name the folder that holds {whose} files");
                return Err(LibraryReadError::new(&shown, "this is no folder", help));
            }
            Err(error) if error.kind() == io::ErrorKind::NotFound => {
                let help = format!("name the folder of {what}");
                return Err(LibraryReadError::new(&shown, "there is no such folder", help));
            }
            Err(error) => return Err(LibraryReadError::unreadable(&shown, &error)),
        };
        match fs::read_dir(&path) {
            Ok(_) => Ok(Self { number, path, shown }),
            Err(error) => Err(LibraryReadError::unreadable(&shown, &error)),
        }
    }

    /// Nothing is read as part of two layers: it would seem to replace itself.
    pub fn is_apart_from(&self, others: &[Self]) -> Result<(), LibraryReadError> {
        for other in others {
            let how = if self.path == other.path {
                "is"
            } else if self.path.starts_with(&other.path) {
                "lies in"
            } else if other.path.starts_with(&self.path) {
                "holds"
            } else {
                continue;
            };
            let what = match other.number {
                0 => "the library's own folder".to_owned(),
                _ => format!("the folder of the overlay {}", other.shown),
            };
            return Err(LibraryReadError::new(
                &self.shown,
                format!("this overlay {how} {what}"),
                "keep each in a folder beside the others",
            ));
        }
        Ok(())
    }

    pub fn holds_nothing(&self) -> LibraryReadError {
        let help = match self.number {
            0 => {
                "name the folder of a library; its files end in .yaml. To begin a library here, write library.yaml with a \
                 line `library: NAME`"
            }
            _ => "name the folder of an overlay; its files end in .yaml",
        };
        LibraryReadError::new(&self.shown, "there is no .yaml file in this folder", help)
    }
}
