//! What exports that were interrupted left beside their place.

use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};

use uuid::Uuid;

/// Stands between the name of a place and what tells one export to it from another.
const PART: &str = ".part-";

/// The name of a folder beside a place, which no other export to it has.
pub(super) fn new_name(out: &Path) -> OsString {
    let mut name = out.file_name().unwrap_or_default().to_owned();
    name.push(format!("{PART}{}", Uuid::now_v7()));
    name
}

/// The folders beside a place that exports to it write, sorted: those that were interrupted left theirs, and one that is running
/// has one, too.
pub fn left_behind(out: &Path) -> Vec<PathBuf> {
    let Some(of) = out.file_name().and_then(|name| name.to_str()) else {
        return Vec::new();
    };
    let beside = out.parent().filter(|beside| !beside.as_os_str().is_empty());
    // Of a folder that cannot be read, the export itself says so.
    let entries = fs::read_dir(beside.unwrap_or(Path::new(".")))
        .into_iter()
        .flatten()
        .flatten();
    let is_part = |name: &str| {
        let id = name.strip_prefix(of).and_then(|rest| rest.strip_prefix(PART));
        id.is_some_and(|id| Uuid::try_parse(id).is_ok())
    };
    let mut left: Vec<PathBuf> = entries
        .filter(|entry| entry.file_name().to_str().is_some_and(is_part))
        .map(|entry| out.with_file_name(entry.file_name()))
        .collect();
    left.sort_unstable();
    left
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_exports_to_the_same_place_write_is_told() {
        let temp = tempfile::tempdir().unwrap();
        let out = temp.path().join("tables");
        assert!(left_behind(&out).is_empty());
        let mine = [new_name(&out), new_name(&out)].map(|name| out.with_file_name(name));
        let other = out.with_file_name(new_name(&temp.path().join("tables.2")));
        for folder in mine
            .iter()
            .chain([&other, &out, &temp.path().join("tables.part-2")])
        {
            fs::create_dir(folder).unwrap();
        }
        let mut told = mine.to_vec();
        told.sort();
        assert_eq!(left_behind(&out), told);
        assert_eq!(left_behind(&out.join("")), told);
    }
}
