//! Writing into the folder of a library: each file whole or not at all.

use std::fs::{self, File};
use std::io::{self, Read, Write};
use std::path::Path;

use atomic_write_file::AtomicWriteFile;

use super::error::LibraryWriteError;
use super::find::{Found, find};
use crate::store::TREE_FILE_LIMIT;

/// Writes texts into a folder of a library, which is made where it is not there; says which of them were not so already.
///
/// # Errors
///
/// Where the library's folder, or what stands in the place of one of these, is no folder or no regular file, or where the
/// disk refuses. Files before that one have been written.
pub fn write_beside(
    library: &Path,
    folder: &str,
    texts: &[(String, String)],
) -> Result<Vec<String>, LibraryWriteError> {
    let inside = library.join(folder);
    if !library.is_dir() {
        let shown = library.to_string_lossy();
        return Err(LibraryWriteError::new(
            &shown,
            "there is no such folder",
            "name the folder of a library",
        ));
    }
    match fs::symlink_metadata(&inside) {
        Ok(status) if status.is_dir() => {}
        Ok(_) => {
            let help = "move it away, or remove it";
            return Err(LibraryWriteError::new(
                folder,
                "something else than a folder stands here",
                help,
            ));
        }
        Err(error) if error.kind() == io::ErrorKind::NotFound => {
            fs::create_dir(&inside).map_err(|error| LibraryWriteError::unsaved(folder, &error))?;
        }
        Err(error) => return Err(LibraryWriteError::unsaved(folder, &error)),
    }
    let mut changed = Vec::new();
    for (name, text) in texts {
        let shown = format!("{folder}/{name}");
        let path = inside.join(name);
        match fs::symlink_metadata(&path) {
            Ok(status) if !status.is_file() => return Err(no_regular_file(&shown)),
            Ok(_) if fs::read(&path).is_ok_and(|bytes| bytes == text.as_bytes()) => continue,
            _ => {}
        }
        replace(&path, text).map_err(|error| LibraryWriteError::unsaved(&shown, &error))?;
        changed.push(shown);
    }
    Ok(changed)
}

/// Changes the texts of a library's files where `change`, given a file's name and its text as it is on disk, has another
/// one; says which those were.
///
/// # Errors
///
/// Everything that keeps the library from being read whole, and files that are write-protected: then nothing is written.
/// Where the disk refuses, files before that one have been written.
pub fn rewrite_library(
    folder: &Path,
    change: impl Fn(&str, &str) -> Option<String>,
) -> Result<Vec<String>, Vec<LibraryWriteError>> {
    // What reads the library knows everything that is wrong with one, so it looks first.
    let files = super::read_library(folder).map_err(|error| vec![error.into()])?;
    let unread = files
        .iter()
        .filter_map(|file| Some((file.name(), file.why_unread()?)));
    let mut errors: Vec<LibraryWriteError> = unread
        .map(|(name, why)| LibraryWriteError::new(name, why.message.as_str(), why.help.as_str()))
        .collect();
    if !errors.is_empty() {
        return Err(errors);
    }
    let root = fs::canonicalize(folder)
        .map_err(|error| vec![LibraryWriteError::unreadable(&folder.to_string_lossy(), &error)])?;
    let (mut found, _) = find(&root);
    found.sort_by(|a, b| a.name.cmp(&b.name));
    let mut changes = Vec::new();
    for file in &found {
        match changed(file, &change) {
            Ok(text) => changes.extend(text.map(|text| (file, text))),
            Err(error) => errors.push(error),
        }
    }
    if !errors.is_empty() {
        return Err(errors);
    }
    for (file, text) in &changes {
        replace(&file.path, text).map_err(|error| vec![LibraryWriteError::unsaved(&file.name, &error)])?;
    }
    Ok(changes.into_iter().map(|(file, _)| file.name.clone()).collect())
}

fn changed(
    file: &Found,
    change: &impl Fn(&str, &str) -> Option<String>,
) -> Result<Option<String>, LibraryWriteError> {
    let unreadable = |error: io::Error| LibraryWriteError::unreadable(&file.name, &error);
    let mut bytes = Vec::new();
    let opened = File::open(&file.path).map_err(unreadable)?;
    opened
        .take(TREE_FILE_LIMIT)
        .read_to_end(&mut bytes)
        .map_err(unreadable)?;
    // Unlike the reader of libraries, this keeps a byte order mark: what is not changed stays as it is.
    let text = String::from_utf8(bytes)
        .map_err(|_| LibraryWriteError::new(&file.name, "not UTF-8", "save the file as UTF-8"))?;
    let Some(text) = change(&file.name, &text) else {
        return Ok(None);
    };
    let status = fs::symlink_metadata(&file.path).map_err(unreadable)?;
    if !status.is_file() {
        return Err(no_regular_file(&file.name));
    }
    if status.permissions().readonly() {
        let help = "give yourself the right to write it, or leave it as it is";
        return Err(LibraryWriteError::new(
            &file.name,
            "the file is write-protected",
            help,
        ));
    }
    Ok(Some(text))
}

fn replace(path: &Path, text: &str) -> io::Result<()> {
    let mut file = AtomicWriteFile::open(path)?;
    file.write_all(text.as_bytes())?;
    file.commit()
}

fn no_regular_file(name: &str) -> LibraryWriteError {
    let help = "move it away, so that a regular file can be written";
    LibraryWriteError::new(name, "this is no regular file", help)
}
