//! Programs that some of the tests need.

use std::path::PathBuf;

/// Where a program is; none, with a word about it, where it is missing and tests may be skipped for that.
pub fn tool(name: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH").unwrap_or_default();
    let folders = std::env::split_paths(&path).chain([PathBuf::from("/usr/sbin")]);
    let found = folders
        .map(|folder| folder.join(name))
        .find(|file| file.is_file());
    if found.is_none() {
        assert!(
            std::env::var_os("PROOFWALK_NO_SKIP").is_none(),
            "{name} is not installed"
        );
        eprintln!("skipped: {name} is not installed");
    }
    found
}
