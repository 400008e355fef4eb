//! A library as it was read last, and what is different when it is read again.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use crate::source::{SourceFile, safe};
use crate::store::{Hash, LibraryReadError, library_hash, read_layers};

/// Most files that are named.
const NAMED: usize = 5;

/// The library as it was read last.
#[derive(Default)]
pub(super) struct Seen {
    /// Each file, when the folders could last be read.
    files: BTreeMap<String, File>,
    /// Why the folders cannot be read now.
    broken: Option<LibraryReadError>,
}

/// A file as it was read last.
#[derive(Clone, PartialEq, Eq)]
struct File {
    shown: String,
    content: Hash,
    unread: bool,
}

impl Seen {
    /// Reads the library again: what is different, each in a few words.
    pub fn look(&mut self, base: Option<&Path>, overlays: &[PathBuf]) -> Vec<String> {
        let (files, broken) = match read_layers(base, overlays) {
            Ok(files) => (files.iter().map(seen).collect(), None),
            Err(error) => (self.files.clone(), Some(error)),
        };
        let mut changes = differences(&self.files, &files);
        match (&self.broken, &broken) {
            (before, Some(error)) if before.as_ref() != Some(error) => {
                changes.push(format!("{} cannot be read", safe(&error.folder)));
            }
            (Some(error), None) => changes.push(format!("{} can be read again", safe(&error.folder))),
            _ => {}
        }
        (self.files, self.broken) = (files, broken);
        changes
    }
}

fn seen(file: &SourceFile) -> (String, File) {
    let seen = File {
        shown: file.shown(),
        content: library_hash(std::slice::from_ref(file)),
        unread: file.why_unread().is_some(),
    };
    (file.key(), seen)
}

fn differences(before: &BTreeMap<String, File>, now: &BTreeMap<String, File>) -> Vec<String> {
    let changed = now.iter().filter_map(|(key, file)| {
        let what = match before.get(key) {
            Some(known) if known == file => return None,
            _ if file.unread => "cannot be read",
            Some(_) => "changed",
            None => "new",
        };
        Some(format!("{} {what}", safe(&file.shown)))
    });
    let gone = before.iter().filter(|(key, _)| !now.contains_key(*key));
    let gone = gone.map(|(_, file)| format!("{} gone", safe(&file.shown)));
    changed.chain(gone).collect()
}

/// Changes in a line.
pub(super) fn words(changes: &[String]) -> String {
    let named = changes[..changes.len().min(NAMED)].join(", ");
    match changes.len().saturating_sub(NAMED) {
        0 => named,
        more => format!("{named} and {more} more"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn look(seen: &mut Seen, folder: &tempfile::TempDir) -> Vec<String> {
        seen.look(Some(folder.path()), &[])
    }

    #[test]
    fn what_is_different_is_named_and_what_was_saved_unchanged_is_not() {
        let folder = tempfile::tempdir().unwrap();
        let write = |name: &str, text: &str| std::fs::write(folder.path().join(name), text).unwrap();
        let mut seen = Seen::default();
        write("a.yaml", "a: 1\n");
        write("b.yaml", "b: 1\n");
        assert_eq!(look(&mut seen, &folder), ["a.yaml new", "b.yaml new"]);
        write("a.yaml", "a: 1\n");
        assert!(look(&mut seen, &folder).is_empty());
        write("a.yaml", "a: 2\n");
        write("c\u{1b}.yaml", "c: 1\n");
        std::fs::remove_file(folder.path().join("b.yaml")).unwrap();
        assert_eq!(
            look(&mut seen, &folder),
            ["a.yaml changed", "c^[.yaml new", "b.yaml gone"]
        );
    }

    #[test]
    fn a_file_that_cannot_be_read_is_named_once_and_again_when_it_is_mended() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("a.yaml");
        let mut seen = Seen::default();
        std::fs::write(&file, "a: 1\n").unwrap();
        look(&mut seen, &folder);
        std::fs::write(&file, b"a: \x9b\n").unwrap();
        assert_eq!(look(&mut seen, &folder), ["a.yaml cannot be read"]);
        assert!(look(&mut seen, &folder).is_empty());
        std::fs::write(&file, "a: 1\n").unwrap();
        assert_eq!(look(&mut seen, &folder), ["a.yaml changed"]);
    }

    #[test]
    fn many_changes_are_counted() {
        let changes: Vec<String> = (1..=8).map(|number| format!("{number}.yaml new")).collect();
        assert!(words(&changes).ends_with("5.yaml new and 3 more"));
        assert_eq!(words(&changes[..1]), "1.yaml new");
    }
}
