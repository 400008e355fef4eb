//! The files of a library, from a folder on disk.

use std::fmt;
use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Path, PathBuf};

use rustix::fs::{Mode, OFlags};
use walkdir::{DirEntry, WalkDir};

use super::open::CAREFUL;
use super::text::decode;
use super::{LIBRARY_LIMIT, TREE_FILE_LIMIT};
use crate::source::{SourceFile, safe};

/// One reason why a library cannot be read.
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
}

impl LibraryReadError {
    fn new(file: &str, message: impl Into<String>, help: impl Into<String>) -> Self {
        Self {
            file: file.to_owned(),
            message: message.into(),
            help: help.into(),
            line: None,
            column: None,
        }
    }

    fn unreadable(file: &str, error: &io::Error) -> Self {
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

/// Reads every `*.yaml` file below a folder, sorted by name.
///
/// Hidden files and folders are passed over, and so are symbolic links to what is read anyway. A byte order mark of UTF-8
/// is dropped, so that lines and columns are those an editor shows.
///
/// # Errors
///
/// Everything that keeps the library from being read whole: files that cannot be read, are no regular files, are not
/// UTF-8, or have another ending for YAML; links that lead elsewhere; a file beyond [`TREE_FILE_LIMIT`] or a library
/// beyond [`LIBRARY_LIMIT`], neither of which is read first; a folder without any such file.
pub fn read_library(folder: &Path) -> Result<Vec<SourceFile>, Vec<LibraryReadError>> {
    let shown = folder.to_string_lossy();
    let root = fs::canonicalize(folder).map_err(|error| {
        let error = match error.kind() {
            io::ErrorKind::NotFound => {
                LibraryReadError::new(&shown, "there is no such folder", "name the folder of a library")
            }
            _ => LibraryReadError::unreadable(&shown, &error),
        };
        vec![error]
    })?;
    if !root.is_dir() {
        let help = "name the folder that holds the library's files";
        return Err(vec![LibraryReadError::new(&shown, "this is no folder", help)]);
    }
    let mut reader = LibraryReader {
        root,
        room: LIBRARY_LIMIT,
        files: Vec::new(),
        errors: Vec::new(),
    };
    reader.read_all();
    if reader.files.is_empty() && reader.errors.is_empty() {
        let help = "name the folder of a library; its files end in .yaml";
        reader.errors.push(LibraryReadError::new(
            &shown,
            "there is no .yaml file in this folder",
            help,
        ));
    }
    reader.errors.sort_by(|a, b| a.file.cmp(&b.file));
    reader.files.sort_by(|a, b| a.name().cmp(b.name()));
    if reader.errors.is_empty() {
        Ok(reader.files)
    } else {
        Err(reader.errors)
    }
}

struct LibraryReader {
    root: PathBuf,
    /// How many bytes may still be read.
    room: u64,
    files: Vec<SourceFile>,
    errors: Vec<LibraryReadError>,
}

impl LibraryReader {
    fn read_all(&mut self) {
        // Links are not followed, so a circle of them ends at its first.
        let entries = WalkDir::new(&self.root)
            .min_depth(1)
            .sort_by_file_name()
            .into_iter();
        for entry in entries
            .filter_entry(|entry| entry.depth() == 0 || !is_hidden(entry.file_name().as_encoded_bytes()))
        {
            let read = match entry {
                Ok(entry) => self.take(&entry),
                Err(error) => {
                    let name = error.path().map_or_else(String::new, |path| self.name(path));
                    let error = error
                        .into_io_error()
                        .unwrap_or_else(|| io::Error::other("a circle of links"));
                    Err(LibraryReadError::unreadable(&name, &error))
                }
            };
            if let Err(error) = read {
                let over = self.room == 0;
                self.errors.push(error);
                if over {
                    break;
                }
            }
        }
    }

    fn take(&mut self, entry: &DirEntry) -> Result<(), LibraryReadError> {
        let name = self.name(entry.path());
        if entry.path_is_symlink() {
            return self.pass_over_link(&name, entry.path());
        }
        if entry.file_type().is_dir() || !is_tree_file(&name)? {
            return Ok(());
        }
        if entry.path().to_str().is_none() {
            return Err(LibraryReadError::new(
                &name,
                "the name is not UTF-8",
                "rename the file",
            ));
        }
        let bytes = self.read(&name, entry.path())?;
        let text = decode(bytes).map_err(|fault| {
            let (line, column) = fault.place.unzip();
            LibraryReadError {
                line,
                column,
                ..LibraryReadError::new(&name, fault.message, "save the file as UTF-8")
            }
        })?;
        self.files.push(SourceFile::new(name, text));
        Ok(())
    }

    fn read(&mut self, name: &str, path: &Path) -> Result<Vec<u8>, LibraryReadError> {
        let unreadable = |error| LibraryReadError::unreadable(name, &error);
        let file = rustix::fs::open(path, OFlags::RDONLY | CAREFUL, Mode::empty())
            .map(File::from)
            .map_err(|error| unreadable(error.into()))?;
        let status = file.metadata().map_err(unreadable)?;
        if !status.is_file() {
            let help = "put a regular file there, or give it another ending";
            return Err(LibraryReadError::new(name, "this is no regular file", help));
        }
        let most = TREE_FILE_LIMIT.min(self.room);
        if status.len() > most {
            return Err(self.too_large(name));
        }
        // One byte more than is allowed, to notice a file that has grown since.
        let mut bytes = Vec::new();
        file.take(most + 1).read_to_end(&mut bytes).map_err(unreadable)?;
        if bytes.len() as u64 > most {
            return Err(self.too_large(name));
        }
        self.room -= bytes.len() as u64;
        Ok(bytes)
    }

    fn too_large(&mut self, name: &str) -> LibraryReadError {
        if self.room >= TREE_FILE_LIMIT {
            let message = format!(
                "larger than the {} MiB that one file may have",
                TREE_FILE_LIMIT >> 20
            );
            return LibraryReadError::new(name, message, "divide it into several files");
        }
        self.room = 0;
        let message = format!(
            "with this file the library is larger than {} MiB",
            LIBRARY_LIMIT >> 20
        );
        LibraryReadError::new(
            name,
            message,
            "check whether this folder is a library, or divide it into several",
        )
    }

    /// A link to what is read anyway need not be followed; any other would leave out what its author meant to be read,
    /// or read what does not belong to the library.
    fn pass_over_link(&self, name: &str, path: &Path) -> Result<(), LibraryReadError> {
        let help = "put the file or folder itself there, or remove the link";
        let Ok(target) = fs::canonicalize(path) else {
            // A link that leads nowhere matters only if it was to be a tree file.
            return match is_tree_file(name) {
                Ok(false) => Ok(()),
                _ => Err(LibraryReadError::new(
                    name,
                    "this symbolic link leads nowhere",
                    help,
                )),
            };
        };
        if !target.is_dir() && !is_tree_file(name)? {
            return Ok(());
        }
        let Ok(inside) = target.strip_prefix(&self.root) else {
            return Err(LibraryReadError::new(
                name,
                "this symbolic link leads out of the library",
                help,
            ));
        };
        let visible = !inside.iter().any(|part| is_hidden(part.as_encoded_bytes()));
        if visible && (target.is_dir() || matches!(is_tree_file(&self.name(&target)), Ok(true))) {
            return Ok(());
        }
        Err(LibraryReadError::new(
            name,
            "this symbolic link leads to what is not read as part of the library",
            help,
        ))
    }

    /// The name inside the library.
    fn name(&self, path: &Path) -> String {
        let inside = path.strip_prefix(&self.root).unwrap_or(path);
        let parts: Vec<_> = inside.iter().map(|part| part.to_string_lossy()).collect();
        parts.join("/")
    }
}

fn is_hidden(name: &[u8]) -> bool {
    name.starts_with(b".")
}

/// Whether a file of this name belongs to the library; an error where its author thinks so and is wrong.
fn is_tree_file(name: &str) -> Result<bool, LibraryReadError> {
    let Some((stem, ending)) = name.rsplit_once('.') else {
        return Ok(false);
    };
    match ending {
        "yaml" => Ok(true),
        _ if ending.eq_ignore_ascii_case("yaml") || ending.eq_ignore_ascii_case("yml") => {
            let message = format!("the ending of a tree file is .yaml, not .{ending}");
            Err(LibraryReadError::new(
                name,
                message,
                format!("rename it to {stem}.yaml"),
            ))
        }
        _ => Ok(false),
    }
}
