//! The files of a library, from folders on disk: its own, and those of its overlays.

mod error;
mod fault;
mod find;
mod root;
mod text;
mod write;

use std::fs::File;
use std::io::{self, Read};
use std::path::{Path, PathBuf};

use rustix::fs::{Mode, OFlags};

pub use error::{LibraryReadError, LibraryWriteError};
pub use write::{rewrite_library, write_beside};

use self::fault::{Fault, unread, unreadable};
use self::find::{Found, find};
use self::root::Root;
use super::open::CAREFUL;
use super::{LIBRARY_LIMIT, TREE_FILE_LIMIT};
use crate::source::{Layer, SourceFile};

/// Reads every `*.yaml` file below a folder, sorted by name.
///
/// Hidden files and folders are passed over, and so are symbolic links to what is read anyway. A byte order mark of UTF-8
/// is dropped, so that lines and columns are those an editor shows.
///
/// What stands where a file of the library should and cannot be read as one is in the list as well, with what is wrong
/// ([`SourceFile::why_unread`]): a file that may not be read, is no regular file, is not UTF-8, has another ending for
/// YAML, or is beyond [`TREE_FILE_LIMIT`]; a link that leads elsewhere; a folder that may not be looked into.
///
/// # Errors
///
/// Where there is no folder to read: it is not there, is none, may not be looked into, holds nothing of a library, or
/// holds more than [`LIBRARY_LIMIT`].
pub fn read_library(folder: &Path) -> Result<Vec<SourceFile>, LibraryReadError> {
    read_layers(Some(folder), &[])
}

/// [`read_library`] for a library and the overlays laid over it, each file in its layer; without a folder, for the
/// overlays alone.
///
/// # Errors
///
/// As [`read_library`], for all layers together; and where one of the folders is, or lies in, another of them.
pub fn read_layers(base: Option<&Path>, overlays: &[PathBuf]) -> Result<Vec<SourceFile>, LibraryReadError> {
    let mut roots: Vec<Root> = Vec::new();
    let overlays = (1..).zip(overlays.iter().map(PathBuf::as_path));
    for (number, folder) in base.map(|folder| (0, folder)).into_iter().chain(overlays) {
        let root = Root::open(number, folder)?;
        root.is_apart_from(&roots)?;
        roots.push(root);
    }
    let mut room = LIBRARY_LIMIT;
    let mut files = Vec::new();
    for root in &roots {
        read_folder(root, &mut room, &mut files)?;
    }
    Ok(files)
}

/// Reads one file that somebody named, as if it were the file `name` of a library. It may be a pipe.
///
/// # Errors
///
/// Where it cannot be read. What is read and is no text is told by [`SourceFile::why_unread`].
pub fn read_alone(path: &Path, name: &str) -> Result<SourceFile, LibraryReadError> {
    let shown = path.to_string_lossy();
    let mut bytes = Vec::new();
    File::open(path)
        .and_then(|file| file.take(TREE_FILE_LIMIT + 1).read_to_end(&mut bytes))
        .map_err(|error| LibraryReadError::unreadable(&shown, &error))?;
    if bytes.len() as u64 > TREE_FILE_LIMIT {
        return Err(LibraryReadError::new(
            &shown,
            format!(
                "larger than the {} MiB that one file may have",
                TREE_FILE_LIMIT >> 20
            ),
            "see whether this is the file that was meant",
        ));
    }
    Ok(match text::decode(bytes) {
        Ok(text) => SourceFile::new(name, text),
        Err(wrong) => wrong.of(name).into_file(),
    })
}

/// Reads one layer, as far as there is room.
fn read_folder(root: &Root, room: &mut u64, files: &mut Vec<SourceFile>) -> Result<(), LibraryReadError> {
    let (mut found, mut faults) = find(&root.path);
    if found.is_empty() && faults.is_empty() {
        return Err(root.holds_nothing());
    }
    if found.iter().map(|file| file.length).fold(0, u64::saturating_add) > *room {
        return Err(library_too_large(&root.shown));
    }
    found.sort_by(|a, b| a.name.cmp(&b.name));
    let mut layer = Vec::with_capacity(found.len());
    for file in &found {
        match read(file, *room) {
            Ok(bytes) if bytes.len() as u64 > *room => return Err(library_too_large(&root.shown)),
            Ok(bytes) => {
                *room -= bytes.len() as u64;
                match text::decode(bytes) {
                    Ok(text) => layer.push(SourceFile::new(file.name.as_str(), text)),
                    Err(wrong) => faults.push(wrong.of(&file.name)),
                }
            }
            Err(fault) => faults.push(fault),
        }
    }
    layer.extend(faults.into_iter().map(Fault::into_file));
    layer.sort_by(|a, b| a.name().cmp(b.name()));
    let in_layer = |file: SourceFile| match root.number {
        0 => file,
        number => file.in_layer(Layer::overlay(number, root.shown.as_str())),
    };
    files.extend(layer.into_iter().map(in_layer));
    Ok(())
}

/// The bytes of a file, but at most one more than may be read, whatever the file does meanwhile.
fn read(file: &Found, room: u64) -> Result<Vec<u8>, Fault> {
    let wrong = |error: io::Error| Fault::new(&file.name, unreadable(&error));
    let too_large = || {
        let most = TREE_FILE_LIMIT >> 20;
        let message = format!("larger than the {most} MiB that one file may have");
        Err(Fault::new(
            &file.name,
            unread(message, "divide it into several files"),
        ))
    };
    let opened = rustix::fs::open(&file.path, OFlags::RDONLY | CAREFUL, Mode::empty())
        .map(File::from)
        .map_err(|error| wrong(error.into()))?;
    let status = opened.metadata().map_err(wrong)?;
    if !status.is_file() {
        return Err(wrong(io::Error::other(
            "it was replaced while the library was read",
        )));
    }
    if status.len() > TREE_FILE_LIMIT {
        return too_large();
    }
    let mut bytes = Vec::new();
    let most = TREE_FILE_LIMIT.min(room);
    opened.take(most + 1).read_to_end(&mut bytes).map_err(wrong)?;
    if bytes.len() as u64 > TREE_FILE_LIMIT {
        return too_large();
    }
    Ok(bytes)
}

fn library_too_large(folder: &str) -> LibraryReadError {
    let message = format!(
        "with the .yaml files in this folder, the library is larger than {} MiB",
        LIBRARY_LIMIT >> 20
    );
    LibraryReadError::new(
        folder,
        message,
        "check whether this is the folder of a library, or divide it into several",
    )
}
