//! The libraries that sessions were walked with, kept so that a session can be read when its library has moved on.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::{self, Read, Write};
use std::os::fd::{AsFd, OwnedFd};
use std::path::PathBuf;

use rustix::fs::{AtFlags, Mode, OFlags, mkdirat, openat, renameat, unlinkat};
use rustix::io::Errno;
use rustix::process::getpid;

use super::error::{Cause, StoreError};
use super::folder::{SessionFolder, sync_folder};
use super::open::{self, Access, CAREFUL};
use super::{Hash, LIBRARY_LIMIT, library_hash, strict};
use crate::source::SourceFile;

/// The folder of the kept libraries, in the session folder.
pub(super) const FOLDER: &str = "libraries";

/// Most bytes of a kept library: its text, with room for what JSON must escape.
const LIMIT: u64 = 2 * LIBRARY_LIMIT;

impl SessionFolder {
    /// Keeps a library under its sum (see [`library_hash`]), once and whole, and returns when it is on disk.
    ///
    /// # Errors
    ///
    /// [`StoreError::NotSaved`] where `hash` is not the sum of `files`, two of them have one name, or the disk refuses.
    pub fn keep_library(&self, hash: &Hash, files: &[SourceFile]) -> Result<(), StoreError> {
        self.check_rights()?;
        let path = self.library_path(hash);
        let texts: BTreeMap<String, &str> = files.iter().map(|file| (file.key(), file.text())).collect();
        if texts.len() != files.len() || library_hash(files) != *hash {
            return Err(StoreError::NotSaved {
                path,
                cause: Cause::OtherLibrary,
            });
        }
        // One that cannot be read or was altered is written anew: the sum leaves no doubt as to what it held.
        if matches!(self.kept_library(hash), Ok(Some(_))) {
            return Ok(());
        }
        let save = || {
            match mkdirat(&self.fd, FOLDER, Mode::RWXU) {
                Ok(()) => sync_folder(&self.fd)?,
                Err(Errno::EXIST) => {}
                Err(error) => return Err(error.into()),
            }
            let text = serde_json::to_string(&texts)?;
            replace(&self.libraries()?, &format!("{hash}.json"), text.as_bytes())
        };
        save().map_err(|cause| StoreError::not_saved(&path, cause))
    }

    /// A library that was kept under this sum, in the order of its files' keys; `None` where none was.
    ///
    /// # Errors
    ///
    /// [`StoreError::LibraryAltered`] where its sum is no longer the one it was kept under, [`StoreError::WrongFile`],
    /// [`StoreError::TooLarge`] or [`StoreError::Unreadable`].
    pub fn kept_library(&self, hash: &Hash) -> Result<Option<Vec<SourceFile>>, StoreError> {
        let path = self.library_path(hash);
        let unreadable = |cause| StoreError::unreadable(&path, cause);
        let folder = match self.libraries() {
            Ok(folder) => folder,
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
            Err(error) => return Err(unreadable(error)),
        };
        let name = format!("{hash}.json");
        let file = match open::session(folder.as_fd(), name.as_ref(), &path, Access::Read) {
            Ok(file) => file,
            Err(StoreError::NoSession { .. }) => return Ok(None),
            Err(error) => return Err(error),
        };
        let mut bytes = Vec::new();
        file.take(LIMIT + 1).read_to_end(&mut bytes).map_err(unreadable)?;
        if bytes.len() as u64 > LIMIT {
            return Err(StoreError::TooLarge { path, limit: LIMIT });
        }
        let files = parse(&bytes).filter(|files| library_hash(files) == *hash);
        files.map(Some).ok_or(StoreError::LibraryAltered { path })
    }

    fn libraries(&self) -> io::Result<OwnedFd> {
        let flags = OFlags::RDONLY | OFlags::DIRECTORY | CAREFUL;
        Ok(openat(&self.fd, FOLDER, flags, Mode::empty())?)
    }

    fn library_path(&self, hash: &Hash) -> PathBuf {
        self.path.join(FOLDER).join(format!("{hash}.json"))
    }
}

fn parse(bytes: &[u8]) -> Option<Vec<SourceFile>> {
    let text = str::from_utf8(bytes).ok()?;
    strict::check(text).ok()?;
    let texts: BTreeMap<String, String> = serde_json::from_str(text).ok()?;
    Some(
        texts
            .into_iter()
            .map(|(key, text)| SourceFile::from_key(&key, text))
            .collect(),
    )
}

/// Puts a whole file in place of what may be there, through the folder that is open rather than by its path.
pub(super) fn replace(folder: &OwnedFd, name: &str, bytes: &[u8]) -> io::Result<()> {
    place(folder, name, |file| {
        file.write_all(bytes)?;
        file.sync_all()
    })?;
    sync_folder(folder)
}

/// The same for a file that need not outlast a power cut, written bit by bit.
pub(super) fn place(
    folder: &OwnedFd,
    name: &str,
    write: impl FnOnce(&mut File) -> io::Result<()>,
) -> io::Result<()> {
    let (mut file, new) = begin(folder, name)?;
    let saved = write(&mut file).and_then(|()| Ok(renameat(folder, &new, folder, name)?));
    if saved.is_err() {
        let _ = unlinkat(folder, &new, AtFlags::empty());
    }
    saved
}

/// A new file under a hidden name, to take the place of another later.
pub(super) fn begin(folder: &OwnedFd, name: &str) -> io::Result<(File, String)> {
    let new = format!(".{name}.{}", getpid().as_raw_nonzero());
    let _ = unlinkat(folder, &new, AtFlags::empty());
    let flags = OFlags::WRONLY | OFlags::CREATE | OFlags::EXCL | CAREFUL;
    let file = File::from(openat(folder, &new, flags, Mode::RUSR | Mode::WUSR)?);
    Ok((file, new))
}
