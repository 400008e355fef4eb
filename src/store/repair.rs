//! A last line that was cut off while it was written.

use std::fs::File;
use std::io::{self, Write};
use std::os::fd::OwnedFd;
use std::os::unix::fs::FileExt;
use std::path::Path;

use rustix::fs::{AtFlags, Mode, OFlags, openat, unlinkat};
use rustix::io::Errno;

use super::error::StoreError;
use super::folder::sync_folder;
use super::id::SessionId;
use super::open::CAREFUL;

/// What was done to a session whose last line was cut off while it was written: it had never been confirmed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Repair {
    /// How many bytes were cut off.
    pub bytes: u64,
    /// The file in the session folder that keeps them.
    pub kept_as: String,
}

/// Keeps what follows the first `whole` bytes of the session in a file of its own, then cuts it off.
///
/// In this order, with a sync between, so that there is no moment at which the torn bytes are nowhere.
pub(super) fn set_aside(
    folder: &OwnedFd,
    session: &File,
    id: &SessionId,
    path: &Path,
    (whole, torn): (u64, u64),
) -> Result<Repair, StoreError> {
    let mut tail = vec![0; usize::try_from(torn).unwrap_or(usize::MAX)];
    session
        .read_exact_at(&mut tail, whole)
        .map_err(|cause| StoreError::unreadable(path, cause))?;
    let kept_as = keep(folder, id, &tail)
        .map_err(|(name, cause)| StoreError::not_saved(&path.with_file_name(name), cause))?;
    let cut = || {
        session.set_len(whole)?;
        session.sync_all()
    };
    cut().map_err(|cause| StoreError::not_saved(path, cause))?;
    Ok(Repair { bytes: torn, kept_as })
}

fn keep(folder: &OwnedFd, id: &SessionId, tail: &[u8]) -> Result<String, (String, io::Error)> {
    let mut number = 1_u32;
    let (name, mut file) = loop {
        let name = format!("{id}.torn-{number}");
        let flags = OFlags::WRONLY | OFlags::CREATE | OFlags::EXCL | CAREFUL;
        match openat(folder, &name, flags, Mode::RUSR | Mode::WUSR) {
            Ok(file) => break (name, File::from(file)),
            Err(Errno::EXIST) if number < u32::MAX => number += 1,
            Err(error) => return Err((name, error.into())),
        }
    };
    let saved = file
        .write_all(tail)
        .and_then(|()| file.sync_all())
        .and_then(|()| sync_folder(folder));
    match saved {
        Ok(()) => Ok(name),
        Err(cause) => {
            let _ = unlinkat(folder, &name, AtFlags::empty());
            Err((name, cause))
        }
    }
}
