//! Opening a session file, and nothing else that stands in its place.

use std::fs::File;
use std::io;
use std::os::fd::BorrowedFd;
use std::path::Path;

use rustix::fs::{AtFlags, FileType, Mode, OFlags, Stat, fstat, openat, statat};
use rustix::process::geteuid;

use super::error::StoreError;
use super::fault::FileFault;

/// Never follows a link, never waits for the other end of a pipe, never leaks into a child.
pub(super) const CAREFUL: OFlags = OFlags::NOFOLLOW.union(OFlags::NONBLOCK).union(OFlags::CLOEXEC);

/// What a file is opened for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Access {
    /// Reading, whoever it belongs to.
    Read,
    /// Reading, and appending to a file of our own.
    Append,
}

/// Opens the session file `name` in `folder`; `path` is what errors call it.
///
/// The checks are made on what has been opened, so there is no moment between check and use.
pub(super) fn session(
    folder: BorrowedFd<'_>,
    name: &Path,
    path: &Path,
    access: Access,
) -> Result<File, StoreError> {
    with_status(folder, name, path, access).map(|(file, _)| file)
}

/// The same, with what the system says of it.
pub(super) fn with_status(
    folder: BorrowedFd<'_>,
    name: &Path,
    path: &Path,
    access: Access,
) -> Result<(File, Stat), StoreError> {
    let flags = match access {
        Access::Read => OFlags::RDONLY,
        Access::Append => OFlags::RDWR | OFlags::APPEND,
    };
    let file = match openat(folder, name, flags | CAREFUL, Mode::empty()) {
        Ok(file) => File::from(file),
        Err(error) => return Err(why_not(folder, name, path, access, error.into())),
    };
    let status = fstat(&file).map_err(|error| StoreError::unreadable(path, error.into()))?;
    match fault(&status, access) {
        Some(fault) => Err(StoreError::WrongFile {
            path: path.to_owned(),
            fault,
        }),
        None => Ok((file, status)),
    }
}

fn fault(status: &Stat, access: Access) -> Option<FileFault> {
    let what = match FileType::from_raw_mode(status.st_mode) {
        FileType::RegularFile if status.st_nlink > 1 => FileFault::HardLink,
        FileType::RegularFile if access == Access::Append && status.st_uid != geteuid().as_raw() => {
            FileFault::OtherOwner
        }
        FileType::RegularFile => return None,
        FileType::Symlink => FileFault::Symlink,
        FileType::Directory => FileFault::Folder,
        FileType::Fifo => FileFault::Pipe,
        FileType::Socket => FileFault::Socket,
        _ => FileFault::Device,
    };
    Some(what)
}

/// Why it could not be opened: what the name stands for tells more than the system's error number.
fn why_not(folder: BorrowedFd<'_>, name: &Path, path: &Path, access: Access, cause: io::Error) -> StoreError {
    let found = statat(folder, name, AtFlags::SYMLINK_NOFOLLOW);
    if let Some(fault) = found.ok().and_then(|status| fault(&status, access)) {
        return StoreError::WrongFile {
            path: path.to_owned(),
            fault,
        };
    }
    match (cause.kind(), access) {
        (io::ErrorKind::NotFound, _) => StoreError::NoSession {
            path: path.to_owned(),
        },
        (_, Access::Read) => StoreError::unreadable(path, cause),
        (_, Access::Append) => StoreError::not_saved(path, cause),
    }
}
