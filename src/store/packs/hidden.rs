//! Files that are being written under a hidden name, and those that a run left behind that was killed.
//!
//! Whoever writes one holds the system's lock on it, which ends with the process, however that ends: one that can be locked is
//! written by nobody any more.

use std::fs::{File, TryLockError};
use std::io;
use std::os::fd::AsFd;

use rustix::fs::{AtFlags, Dir, Mode, OFlags, openat, unlinkat};
use rustix::process::getpid;

use super::PACK_ENDING;
use crate::store::SessionId;
use crate::store::error::StoreError;
use crate::store::folder::SessionFolder;
use crate::store::open::{self, Access, CAREFUL};

/// The hidden name under which a file is written before it takes its place.
pub(super) fn name(of: &str) -> String {
    format!(".{of}.{}", getpid().as_raw_nonzero())
}

impl SessionFolder {
    /// Makes a file under a hidden name, and locks it.
    pub(super) fn make_hidden(&self, name: &str) -> io::Result<File> {
        // One of a process that had our number.
        let _ = unlinkat(&self.fd, name, AtFlags::empty());
        let flags = OFlags::RDWR | OFlags::CREATE | OFlags::EXCL | CAREFUL;
        let file = File::from(openat(&self.fd, name, flags, Mode::RUSR | Mode::WUSR)?);
        match file.try_lock() {
            Err(TryLockError::WouldBlock) => {
                Err(io::Error::other("another run is clearing up in this folder"))
            }
            // Where a file system knows no locks, nobody clears up either.
            Ok(()) | Err(TryLockError::Error(_)) => Ok(file),
        }
    }

    /// Removes what runs of packing and unpacking left behind that were killed; how many files that were.
    ///
    /// No session is lost with them: one is removed only after what takes its place stands under its own name.
    ///
    /// # Errors
    ///
    /// [`StoreError::Unreadable`] where the folder cannot be read.
    pub fn clear_left_behind(&self) -> Result<usize, StoreError> {
        let unreadable = |error: rustix::io::Errno| StoreError::unreadable(&self.path, error.into());
        let mut names = Vec::new();
        for entry in Dir::read_from(&self.fd).map_err(unreadable)? {
            let entry = entry.map_err(unreadable)?;
            names.extend(
                entry
                    .file_name()
                    .to_str()
                    .ok()
                    .filter(|name| is_hidden(name))
                    .map(str::to_owned),
            );
        }
        let is_cleared = |name: &&String| {
            // What is no plain file of this user is not ours to remove.
            let file = open::session(
                self.fd.as_fd(),
                name.as_str().as_ref(),
                &self.path,
                Access::Append,
            );
            file.is_ok_and(|file| file.try_lock().is_ok())
                && unlinkat(&self.fd, name.as_str(), AtFlags::empty()).is_ok()
        };
        Ok(names.iter().filter(is_cleared).count())
    }
}

/// Whether a name is one of [`name`]'s, of a pack or of a session.
fn is_hidden(name: &str) -> bool {
    let Some((of, process)) = name.strip_prefix('.').and_then(|name| name.rsplit_once('.')) else {
        return false;
    };
    let is_session = || {
        of.strip_suffix(".jsonl")
            .is_some_and(|id| SessionId::parse(id).is_ok())
    };
    let is_number = !process.is_empty() && process.bytes().all(|byte| byte.is_ascii_digit());
    is_number && (of.ends_with(PACK_ENDING) || is_session())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_names_that_were_made_here_are_taken_for_left_behind() {
        assert!(is_hidden(&name("2026-01.sessions.zip")) && is_hidden(&name("a-1.jsonl")));
        for other in [
            "2026-01.sessions.zip.12",
            ".2026-01.sessions.zip",
            ".2026-01.sessions.zip.",
            ".2026-01.sessions.zip.1a",
            ".A.jsonl.12",
            ".notes.12",
        ] {
            assert!(!is_hidden(other), "{other}");
        }
    }
}
