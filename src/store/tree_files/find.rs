//! Which files of a folder are those of the library.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use walkdir::{DirEntry, WalkDir};

use super::fault::{self, Fault};

/// A file that belongs to the library.
pub(super) struct Found {
    /// Its name inside the library, with forward slashes.
    pub name: String,
    /// Where it is.
    pub path: PathBuf,
    /// Its length as the folder has it, in bytes.
    pub length: u64,
}

/// Finds the tree files below `root`, which is a canonical path, and everything that stands where one should.
pub(super) fn find(root: &Path) -> (Vec<Found>, Vec<Fault>) {
    let (mut found, mut faults) = (Vec::new(), Vec::new());
    // Links are not followed, so a circle of them ends at its first.
    let entries = WalkDir::new(root).min_depth(1).into_iter();
    for entry in
        entries.filter_entry(|entry| entry.depth() == 0 || !is_hidden(entry.file_name().as_encoded_bytes()))
    {
        let looked_at = match entry {
            Ok(entry) => look_at(root, &entry),
            Err(error) => {
                let name = error.path().map_or_else(String::new, |path| name_in(root, path));
                let cause = error
                    .into_io_error()
                    .unwrap_or_else(|| io::ErrorKind::Other.into());
                Err(Fault::new(&name, fault::unreadable(&cause)))
            }
        };
        match looked_at {
            Ok(file) => found.extend(file),
            Err(fault) => faults.push(fault),
        }
    }
    (found, faults)
}

fn look_at(root: &Path, entry: &DirEntry) -> Result<Option<Found>, Fault> {
    let name = name_in(root, entry.path());
    if entry.path_is_symlink() {
        return pass_over_link(root, &name, entry.path()).map(|()| None);
    }
    if entry.file_type().is_dir() || !is_tree_file(&name)? {
        return Ok(None);
    }
    if !entry.file_type().is_file() {
        let help = "put a regular file there, or give it another ending";
        return Err(Fault::new(&name, fault::unread("this is no regular file", help)));
    }
    if entry.path().to_str().is_none() {
        return Err(Fault::new(
            &name,
            fault::unread("the name is not UTF-8", "rename the file"),
        ));
    }
    match entry.metadata() {
        Ok(status) => Ok(Some(Found {
            name,
            path: entry.path().to_owned(),
            length: status.len(),
        })),
        Err(error) => Err(Fault::new(&name, fault::unreadable(&error.into()))),
    }
}

/// A link to what is read anyway need not be followed; any other would leave out what its author meant to be read, or
/// read what does not belong to the library.
fn pass_over_link(root: &Path, name: &str, link: &Path) -> Result<(), Fault> {
    let refuse = |message| {
        let help = "put the file or folder itself there, or remove the link";
        Err(Fault::new(name, fault::unread(message, help)))
    };
    let target = fs::canonicalize(link);
    let is_folder = target.as_ref().is_ok_and(|target| target.is_dir());
    if !is_folder && !is_tree_file(name)? {
        return Ok(());
    }
    let Ok(target) = target else {
        return refuse("this symbolic link leads nowhere");
    };
    let Ok(inside) = target.strip_prefix(root) else {
        return refuse("this symbolic link leads out of the library");
    };
    let hidden = inside.iter().any(|part| is_hidden(part.as_encoded_bytes()));
    let read = is_folder || matches!(is_tree_file(&name_in(root, &target)), Ok(true));
    if hidden || !read {
        return refuse("this symbolic link leads to what is not read as part of the library");
    }
    Ok(())
}

fn name_in(root: &Path, path: &Path) -> String {
    let inside = path.strip_prefix(root).unwrap_or(path);
    let parts: Vec<_> = inside.iter().map(|part| part.to_string_lossy()).collect();
    parts.join("/")
}

fn is_hidden(name: &[u8]) -> bool {
    name.starts_with(b".")
}

/// Whether a file of this name belongs to the library; an error where its author will think so and be wrong.
fn is_tree_file(name: &str) -> Result<bool, Fault> {
    match name.rsplit_once('.') {
        Some((_, "yaml")) => Ok(true),
        Some((stem, ending))
            if ["yaml", "yml"]
                .iter()
                .any(|other| ending.eq_ignore_ascii_case(other)) =>
        {
            let message = format!("the ending of a tree file is .yaml, not .{ending}");
            let help = format!("rename it to {stem}.yaml");
            Err(Fault::new(name, fault::unread(message, help)))
        }
        _ => Ok(false),
    }
}
