//! A library as it was read last, and what is different when it is read again.

use std::collections::BTreeMap;
use std::path::Path;

use crate::source::safe;
use crate::store::{Hash, LibraryReadError, library_hash, read_library};

/// Most files that are named.
const NAMED: usize = 5;

/// The library as it was read last.
#[derive(Default)]
pub(super) struct Seen {
    /// Each file's content, when the library could last be read.
    files: BTreeMap<String, Hash>,
    /// Why it cannot be read now.
    broken: Vec<LibraryReadError>,
}

impl Seen {
    /// Reads the library again: what is different, each in a few words.
    pub fn look(&mut self, folder: &Path) -> Vec<String> {
        let (files, broken) = match read_library(folder) {
            Ok(files) => {
                let hash = |file| library_hash(std::slice::from_ref(file));
                let files = files.iter().map(|file| (file.name().to_owned(), hash(file)));
                (files.collect(), Vec::new())
            }
            Err(errors) => (self.files.clone(), errors),
        };
        let mut changes = differences(&self.files, &files);
        let mut say = |error: &LibraryReadError, what| changes.push(format!("{} {what}", safe(&error.file)));
        (broken.iter())
            .filter(|error| !self.broken.contains(error))
            .for_each(|error| say(error, "cannot be read"));
        (self.broken.iter())
            .filter(|error| broken.iter().all(|other| other.file != error.file))
            .for_each(|error| say(error, "is mended or gone"));
        (self.files, self.broken) = (files, broken);
        changes
    }
}

fn differences(before: &BTreeMap<String, Hash>, now: &BTreeMap<String, Hash>) -> Vec<String> {
    let changed = now.iter().filter_map(|(name, hash)| match before.get(name) {
        Some(known) if known == hash => None,
        Some(_) => Some(format!("{} changed", safe(name))),
        None => Some(format!("{} new", safe(name))),
    });
    let gone = (before.keys())
        .filter(|name| !now.contains_key(*name))
        .map(|name| format!("{} gone", safe(name)));
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

    #[test]
    fn what_is_different_is_named_and_what_was_saved_unchanged_is_not() {
        let folder = tempfile::tempdir().unwrap();
        let write = |name: &str, text: &str| std::fs::write(folder.path().join(name), text).unwrap();
        let mut seen = Seen::default();
        write("a.yaml", "a: 1\n");
        write("b.yaml", "b: 1\n");
        assert_eq!(seen.look(folder.path()), ["a.yaml new", "b.yaml new"]);
        write("a.yaml", "a: 1\n");
        assert!(seen.look(folder.path()).is_empty());
        write("a.yaml", "a: 2\n");
        write("c\u{1b}.yaml", "c: 1\n");
        std::fs::remove_file(folder.path().join("b.yaml")).unwrap();
        assert_eq!(
            seen.look(folder.path()),
            ["a.yaml changed", "c^[.yaml new", "b.yaml gone"]
        );
    }

    #[test]
    fn a_file_that_cannot_be_read_is_named_once_and_again_when_it_is_mended() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("a.yaml");
        let mut seen = Seen::default();
        std::fs::write(&file, "a: 1\n").unwrap();
        seen.look(folder.path());
        std::fs::write(&file, b"a: \x9b\n").unwrap();
        assert_eq!(seen.look(folder.path()), ["a.yaml cannot be read"]);
        assert!(seen.look(folder.path()).is_empty());
        std::fs::write(&file, "a: 1\n").unwrap();
        assert_eq!(seen.look(folder.path()), ["a.yaml is mended or gone"]);
    }

    #[test]
    fn many_changes_are_counted() {
        let changes: Vec<String> = (1..=8).map(|number| format!("{number}.yaml new")).collect();
        assert!(words(&changes).ends_with("5.yaml new and 3 more"));
        assert_eq!(words(&changes[..1]), "1.yaml new");
    }
}
