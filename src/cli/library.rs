//! Which library a command works on.

use std::path::Path;

use include_dir::{Dir, DirEntry, include_dir};

use super::failure::{FINDINGS, Failure, WRONG_USE};
use crate::check;
use crate::library::{self, Library, Problem};
use crate::report;
use crate::source::{Files, Level, SourceFile, safe};
use crate::store::{self, Hash};
use crate::walk::LibraryMark;

static BUILT_IN: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/trees");

/// A library as read, with what could not be resolved in it.
pub(super) struct Loaded {
    pub library: Library,
    pub problems: Vec<Problem>,
    pub hash: Hash,
}

impl Loaded {
    pub fn mark(&self) -> LibraryMark {
        LibraryMark {
            name: self.library.name.clone(),
            edition: self.library.edition.clone(),
            hash: self.hash.to_string(),
        }
    }
}

/// Reads the library of a folder, or the built-in one.
pub(super) fn load(folder: Option<&Path>) -> Result<Loaded, Failure> {
    files(folder).map(resolved)
}

/// The files of a folder's library, or of the built-in one.
pub(super) fn files(folder: Option<&Path>) -> Result<Files, Failure> {
    let files = match folder {
        Some(folder) => store::read_library(folder).map_err(|errors| {
            let lines = errors.iter().map(|error| {
                let place = match (error.line, error.column) {
                    (Some(line), Some(column)) => format!("{}:{line}:{column}", safe(&error.file)),
                    _ => safe(&error.file).to_string(),
                };
                format!("{place}: {}\n  help: {}", error.message, error.help)
            });
            Failure::new(WRONG_USE, lines.collect::<Vec<_>>().join("\n"))
        })?,
        None => built_in(),
    };
    Ok(Files::new(files))
}

/// Resolves files that were read already, for instance those kept beside a session.
pub(super) fn resolved(files: Files) -> Loaded {
    let hash = store::library_hash(files.as_slice());
    let (library, problems) = library::load(files);
    Loaded {
        library,
        problems,
        hash,
    }
}

/// A library that may be walked: one without an error.
pub(super) fn sound(folder: Option<&Path>) -> Result<Loaded, Failure> {
    let loaded = load(folder)?;
    let findings = check::run(&loaded.library, &loaded.problems);
    let errors: Vec<_> = findings
        .into_iter()
        .filter(|finding| finding.level == Level::Error)
        .collect();
    if errors.is_empty() {
        return Ok(loaded);
    }
    let text = report::findings::text(&loaded.library, &errors, super::look::for_messages());
    let count = errors.len();
    Err(Failure::new(
        FINDINGS,
        format!(
            "the library has {count} error{}, so it is not walked\n{text}",
            plural(count)
        ),
    )
    .help(match folder {
        Some(folder) => format!(
            "mend them and look again with `proofwalk check {}`",
            safe(&folder.to_string_lossy())
        ),
        None => "mend them and look again with `proofwalk check`".to_owned(),
    }))
}

pub(super) fn plural(count: usize) -> &'static str {
    if count == 1 { "" } else { "s" }
}

fn built_in() -> Vec<SourceFile> {
    let mut files = Vec::new();
    let mut waiting = vec![&BUILT_IN];
    while let Some(folder) = waiting.pop() {
        for entry in folder.entries() {
            match entry {
                DirEntry::Dir(folder) => waiting.push(folder),
                DirEntry::File(file) => {
                    let name = file.path().to_string_lossy().replace('\\', "/");
                    if let (true, Some(text)) = (name.ends_with(".yaml"), file.contents_utf8()) {
                        files.push(SourceFile::new(name, text));
                    }
                }
            }
        }
    }
    files
}
