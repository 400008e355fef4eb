//! Giving each session of a pack its own file again.

use std::fs::File;
use std::io::{self, Read, Write};
use std::os::fd::AsFd;
use std::sync::Arc;

use rustix::fs::{AtFlags, Mode, OFlags, RenameFlags, fstat, openat, renameat_with, unlinkat};

use super::PACK_ENDING;
use super::hidden;
use super::pack::Pack;
use crate::store::error::StoreError;
use crate::store::fault::FileFault;
use crate::store::folder::{SessionFolder, sync_folder};
use crate::store::identity::Identity;
use crate::store::open::{self, Access, CAREFUL};
use crate::store::{SESSION_LIMIT, SessionId};

/// What came of unpacking.
#[derive(Debug)]
pub struct Unpacked {
    /// How many sessions have a file of their own now, byte for byte as they were packed.
    pub sessions: usize,
    /// Those that have not, with why.
    pub left: Vec<(SessionId, StoreError)>,
    /// Whether the pack was removed.
    pub removed: bool,
}

impl SessionFolder {
    /// Gives each session of a pack in this folder its own file again, in this folder or another; removes the pack unless it
    /// is to be kept.
    ///
    /// A file that is there already is never written to: where it is not the same, its session is left, and the pack stays.
    ///
    /// # Errors
    ///
    /// [`StoreError::BadPack`], [`StoreError::WrongFile`] where it is no file of this user, and where the disk refuses.
    pub fn unpack(&self, name: &str, to: &Self, keep: bool) -> Result<Unpacked, StoreError> {
        to.check_rights()?;
        let path = self.path.join(name);
        if !name.ends_with(PACK_ENDING) {
            let why = format!("the name of a pack ends in {PACK_ENDING}");
            return Err(StoreError::BadPack { path, why });
        }
        let file = match open::session(self.fd.as_fd(), name.as_ref(), &path, Access::Append) {
            // One of another's packs may be read, but not taken away.
            Err(StoreError::WrongFile {
                fault: FileFault::OtherOwner,
                ..
            }) if keep => open::session(self.fd.as_fd(), name.as_ref(), &path, Access::Read),
            // What cannot be read is told as such; what may only be read may not be taken away.
            Err(error @ StoreError::NotSaved { .. }) => {
                let readable = open::session(self.fd.as_fd(), name.as_ref(), &path, Access::Read)?;
                if keep { Ok(readable) } else { Err(error) }
            }
            other => other,
        }?;
        let pack = Arc::new(Pack::of(file, path.clone(), name)?.single()?);
        let mut unpacked = Unpacked {
            sessions: 0,
            left: Vec::new(),
            removed: false,
        };
        for id in pack.sessions() {
            match self.unpack_one(&pack, &id, to) {
                Ok(()) => unpacked.sessions += 1,
                // The next would fail like this one.
                Err(error @ StoreError::NotSaved { .. }) => return Err(error),
                Err(error) => unpacked.left.push((id, error)),
            }
        }
        sync_folder(&to.fd).map_err(|cause| StoreError::not_saved(&to.path, cause))?;
        if !keep && unpacked.left.is_empty() && self.is_still(&pack)? {
            unlinkat(&self.fd, name, AtFlags::empty())
                .map_err(io::Error::from)
                .and_then(|()| sync_folder(&self.fd))
                .map_err(|cause| StoreError::not_saved(&path, cause))?;
            unpacked.removed = true;
        }
        self.look_for_packs()?;
        to.look_for_packs()?;
        Ok(unpacked)
    }

    fn unpack_one(&self, pack: &Pack, id: &SessionId, to: &Self) -> Result<(), StoreError> {
        let bytes = self.bytes_in(pack, &id.clone().into())?;
        let (name, path) = to.file(id);
        match open::session(to.fd.as_fd(), name.as_ref(), &path, Access::Read) {
            Ok(file) => {
                let mut there = Vec::new();
                (file.take(SESSION_LIMIT + 1).read_to_end(&mut there))
                    .map_err(|cause| StoreError::unreadable(&path, cause))?;
                return match there == bytes {
                    true => Ok(()),
                    false => Err(StoreError::Exists { path }),
                };
            }
            Err(StoreError::NoSession { .. }) => {}
            Err(error) => return Err(error),
        }
        let hidden = hidden::name(&name);
        let written = to.write_new(&hidden, &bytes).and_then(|()| {
            // Whatever came there meanwhile is not replaced.
            Ok(renameat_with(
                &to.fd,
                &hidden,
                &to.fd,
                &name,
                RenameFlags::NOREPLACE,
            )?)
        });
        if written.is_err() {
            let _ = unlinkat(&to.fd, &hidden, AtFlags::empty());
        }
        written.map_err(|cause| match cause.kind() {
            io::ErrorKind::AlreadyExists => StoreError::Exists { path },
            _ => StoreError::not_saved(&path, cause),
        })
    }

    /// Writes a new file and reads it back.
    fn write_new(&self, name: &str, bytes: &[u8]) -> io::Result<()> {
        let mut file = self.make_hidden(name)?;
        file.write_all(bytes)?;
        file.sync_all()?;
        let mut again = Vec::with_capacity(bytes.len());
        let file = File::from(openat(&self.fd, name, OFlags::RDONLY | CAREFUL, Mode::empty())?);
        file.take(bytes.len() as u64 + 1).read_to_end(&mut again)?;
        match again == bytes {
            true => Ok(()),
            false => Err(io::Error::other("the file reads otherwise than it was written")),
        }
    }

    /// Whether a pack is still the one that was read.
    fn is_still(&self, pack: &Pack) -> Result<bool, StoreError> {
        let file = open::session(
            self.fd.as_fd(),
            pack.cover.name.as_ref(),
            &pack.cover.path,
            Access::Append,
        )?;
        let status = fstat(&file).map_err(|error| StoreError::unreadable(&pack.cover.path, error.into()))?;
        Ok(Identity::of(&status) == pack.cover.identity)
    }
}
