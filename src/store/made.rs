//! Sessions that are made by the thousand, and not recorded: a simulated season, test data.

use std::fs::File;

use rustix::fs::{Mode, OFlags, openat};
use rustix::io::Errno;

use super::SessionId;
use super::error::StoreError;
use super::folder::SessionFolder;
use super::journal::Journal;
use super::open::CAREFUL;

impl SessionFolder {
    /// Starts a session that can be made again at any time: as [`create`](Self::create), but it is not locked, and neither its
    /// file nor its records wait for the disk. Never for a call that somebody walks.
    ///
    /// # Errors
    ///
    /// [`StoreError::Exists`] where there is one of this name, [`StoreError::NotSaved`] where its file cannot be made.
    pub fn create_made(&self, id: &SessionId) -> Result<Journal, StoreError> {
        let (name, path) = self.file(id);
        let flags = OFlags::RDWR | OFlags::APPEND | OFlags::CREATE | OFlags::EXCL | CAREFUL;
        match openat(&self.fd, &name, flags, Mode::RUSR | Mode::WUSR) {
            Ok(file) => Ok(Journal::loose(File::from(file), &path)),
            Err(Errno::EXIST) => Err(StoreError::Exists { path }),
            Err(error) => Err(StoreError::not_saved(&path, error)),
        }
    }
}
