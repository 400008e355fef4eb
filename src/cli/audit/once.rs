//! Folders that are named, each once, however often and in whatever spelling it is named.

use std::fs;
use std::os::unix::fs::MetadataExt;
use std::path::PathBuf;

/// The folders without those that were named before, as they were named first. One that cannot be looked at stays: whoever reads it
/// says what is wrong.
pub(super) fn each_once(folders: &[PathBuf]) -> Vec<PathBuf> {
    let mut known = Vec::new();
    let is_new = |folder: &&PathBuf| {
        // Links are not followed: one is refused where it is read.
        let Ok(status) = fs::symlink_metadata(folder) else {
            return true;
        };
        let identity = (status.dev(), status.ino());
        let is_new = !known.contains(&identity);
        known.push(identity);
        is_new
    };
    folders.iter().filter(is_new).cloned().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_folder_counts_once_however_it_is_spelled() {
        let temp = tempfile::tempdir().unwrap();
        let path = |name: &str| temp.path().join(name);
        let (one, other) = (path("one"), path("other"));
        fs::create_dir(&one).unwrap();
        fs::create_dir(&other).unwrap();
        let named = [
            one.clone(),
            one.clone(),
            path("./one/../one/"),
            path("not-there"),
            other.clone(),
            one.clone(),
        ];
        assert_eq!(each_once(&named), [one, path("not-there"), other]);
    }
}
