//! The files of a library, from a folder on disk.

mod error;
mod find;
mod text;
mod write;

use std::fs::{self, File};
use std::io::{self, Read};
use std::path::Path;

use rustix::fs::{Mode, OFlags};

pub use error::LibraryReadError;
pub use write::{rewrite_library, write_beside};

use self::find::{Found, find};
use super::open::CAREFUL;
use super::{LIBRARY_LIMIT, TREE_FILE_LIMIT};
use crate::source::SourceFile;

/// Reads every `*.yaml` file below a folder, sorted by name.
///
/// Hidden files and folders are passed over, and so are symbolic links to what is read anyway. A byte order mark of UTF-8
/// is dropped, so that lines and columns are those an editor shows.
///
/// # Errors
///
/// Everything that keeps the library from being read whole: files that cannot be read, are no regular files, are not
/// UTF-8, or have another ending for YAML; links that lead elsewhere; a file beyond [`TREE_FILE_LIMIT`] or a library
/// beyond [`LIBRARY_LIMIT`], of which nothing is read; a folder without any such file.
pub fn read_library(folder: &Path) -> Result<Vec<SourceFile>, Vec<LibraryReadError>> {
    let shown = folder.to_string_lossy();
    let one = |message: &str, help: &str| Err(vec![LibraryReadError::new(&shown, message, help)]);
    let root = match fs::canonicalize(folder) {
        Ok(root) if root.is_dir() => root,
        Ok(_) => {
            return one(
                "this is no folder",
                "name the folder that holds the library's files",
            );
        }
        Err(error) if error.kind() == io::ErrorKind::NotFound => {
            return one("there is no such folder", "name the folder of a library");
        }
        Err(error) => return Err(vec![LibraryReadError::unreadable(&shown, &error)]),
    };
    let (mut found, mut errors) = find(&root);
    if found.is_empty() && errors.is_empty() {
        let help = "name the folder of a library; its files end in .yaml";
        return one("there is no .yaml file in this folder", help);
    }
    let whole = found.iter().map(|file| file.length).fold(0, u64::saturating_add);
    if whole > LIBRARY_LIMIT {
        return Err(vec![library_too_large(&shown)]);
    }
    found.sort_by(|a, b| a.name.cmp(&b.name));
    let mut room = LIBRARY_LIMIT;
    let mut files = Vec::with_capacity(found.len());
    for file in &found {
        match read(file, room) {
            Ok(bytes) if bytes.len() as u64 > room => return Err(vec![library_too_large(&shown)]),
            Ok(bytes) => {
                room -= bytes.len() as u64;
                match text::decode(bytes) {
                    Ok(text) => files.push(SourceFile::new(file.name.as_str(), text)),
                    Err(fault) => errors.push(fault.of(&file.name)),
                }
            }
            Err(error) => errors.push(error),
        }
    }
    if errors.is_empty() {
        return Ok(files);
    }
    errors.sort_by(|a, b| a.file.cmp(&b.file));
    Err(errors)
}

/// The bytes of a file, but at most one more than may be read, whatever the file does meanwhile.
fn read(file: &Found, room: u64) -> Result<Vec<u8>, LibraryReadError> {
    let unreadable = |error: io::Error| LibraryReadError::unreadable(&file.name, &error);
    let too_large = || {
        let message = format!(
            "larger than the {} MiB that one file may have",
            TREE_FILE_LIMIT >> 20
        );
        Err(LibraryReadError::new(
            &file.name,
            message,
            "divide it into several files",
        ))
    };
    let opened = rustix::fs::open(&file.path, OFlags::RDONLY | CAREFUL, Mode::empty())
        .map(File::from)
        .map_err(|error| unreadable(error.into()))?;
    let status = opened.metadata().map_err(unreadable)?;
    if !status.is_file() {
        return Err(unreadable(io::Error::other(
            "it was replaced while the library was read",
        )));
    }
    if status.len() > TREE_FILE_LIMIT {
        return too_large();
    }
    let mut bytes = Vec::new();
    let most = TREE_FILE_LIMIT.min(room);
    opened
        .take(most + 1)
        .read_to_end(&mut bytes)
        .map_err(unreadable)?;
    if bytes.len() as u64 > TREE_FILE_LIMIT {
        return too_large();
    }
    Ok(bytes)
}

fn library_too_large(folder: &str) -> LibraryReadError {
    let message = format!(
        "the .yaml files in this folder are larger than {} MiB together",
        LIBRARY_LIMIT >> 20
    );
    LibraryReadError::new(
        folder,
        message,
        "check whether this is the folder of a library, or divide it into several",
    )
}
