//! Which library a command works on.

use std::path::{Path, PathBuf};

use include_dir::{Dir, DirEntry, include_dir};

use super::failure::{FINDINGS, Failure};
use crate::check;
use crate::library::{self, Library, Problem};
use crate::report;
use crate::source::{Files, Level, Safe, SourceFile, safe};
use crate::store::{self, Hash};
use crate::walk::{LibraryMark, OverlayMark};

static BUILT_IN: Dir<'_> = include_dir!("$OUT_DIR/trees");

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
            overlays: (self.library.overlays.iter())
                .map(|overlay| OverlayMark {
                    name: overlay.name.clone(),
                    edition: overlay.edition.clone(),
                })
                .collect(),
            hash: self.hash.to_string(),
        }
    }

    /// Whether it is the built-in library and nothing else.
    pub fn is_built_in(&self) -> bool {
        self.hash == store::library_hash(Files::new(built_in()).as_slice())
    }
}

/// Reads the library of a folder, or the built-in one, with the overlays laid over it.
pub(super) fn load(folder: Option<&Path>, overlays: &[PathBuf]) -> Result<Loaded, Failure> {
    files(folder, overlays).map(resolved)
}

/// What a library is called where its check or its rehearsal is summed up.
pub(super) fn called(library: &Library, folder: Option<&Path>) -> Safe {
    let built_in = || format!("{} {}, built in", library.name, library.edition);
    safe(&folder.map_or_else(built_in, |folder| folder.to_string_lossy().into_owned()))
}

/// Says so where the built-in library is worked on in a folder that holds another.
pub(super) fn say_which(folder: Option<&Path>, command: &str) {
    if folder.is_none() && Path::new("library.yaml").is_file() {
        super::tell(&format!(
            "This is the built-in library. For the one in this folder: `proofwalk {command} .`"
        ));
    }
}

/// The files of a folder's library, or of the built-in one, and those of its overlays.
pub(super) fn files(folder: Option<&Path>, overlays: &[PathBuf]) -> Result<Files, Failure> {
    let mut files = store::read_layers(folder, overlays)?;
    if folder.is_none() {
        files.extend(built_in());
    }
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

/// The built-in library, where it has this hash: then it is what was walked, to the byte.
pub(super) fn built_in_as(hash: &Hash) -> Option<Loaded> {
    let files = Files::new(built_in());
    (store::library_hash(files.as_slice()) == *hash).then(|| resolved(files))
}

/// A library that may be walked: one without an error.
pub(super) fn sound(folder: Option<&Path>, overlays: &[PathBuf]) -> Result<Loaded, Failure> {
    let loaded = load(folder, overlays)?;
    let findings = check::run(&loaded.library, &loaded.problems);
    let errors: Vec<_> = findings
        .into_iter()
        .filter(|finding| finding.level == Level::Error)
        .collect();
    if errors.is_empty() {
        return Ok(loaded);
    }
    let text = report::findings::text(&loaded.library, &errors, None, super::look::for_messages());
    let count = errors.len();
    Err(Failure::new(
        FINDINGS,
        format!(
            "the library has {count} error{}, so it is not walked\n{text}",
            plural(count)
        ),
    )
    .help(format!(
        "mend them and look again with `{}`",
        check_command(folder, overlays)
    )))
}

/// The command that checks a library with its overlays.
pub(super) fn check_command(folder: Option<&Path>, overlays: &[PathBuf]) -> String {
    let shown = |path: &Path| safe(&path.to_string_lossy()).to_string();
    let folder = folder.map(|folder| format!(" {}", shown(folder)));
    let overlays = overlays
        .iter()
        .map(|folder| format!(" --overlay {}", shown(folder)));
    let arguments: String = folder.into_iter().chain(overlays).collect();
    format!("proofwalk check{arguments}")
}

/// A path as a shell takes it in one piece.
pub(super) fn as_typed(path: &str) -> String {
    let plain = |character: char| character.is_alphanumeric() || "/._-".contains(character);
    match path.chars().all(plain) {
        true => safe(path).to_string(),
        false => format!("'{}'", safe(path).as_str().replace('\'', "'\\''")),
    }
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
