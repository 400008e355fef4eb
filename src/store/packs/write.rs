//! Packing sessions, and removing their own files once the pack has been read back.

use std::collections::BTreeMap;
use std::io::{self, BufReader, Read, Write};
use std::os::fd::AsFd;
use std::path::{Path, PathBuf};

use rustix::fs::{AtFlags, fstat, renameat, unlinkat};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipArchive, ZipWriter};

use super::entry::EntryText;
use super::hidden;
use super::pack::Pack;
use super::target::Target;
use super::{PACK_ENDING, PACK_LIMIT};
use crate::store::error::{Cause, StoreError};
use crate::store::folder::{SessionFolder, sync_folder};
use crate::store::holder;
use crate::store::identity::Identity;
use crate::store::name::Name;
use crate::store::open::{self, Access};
use crate::store::{Hash, SESSION_LIMIT, SessionId, verify};

/// What came of packing.
#[derive(Debug)]
pub struct Packed {
    /// The pack's file.
    pub path: PathBuf,
    /// How many sessions it has now.
    pub sessions: usize,
    /// Those that were asked for and are in it, sorted.
    pub taken: Vec<SessionId>,
    /// How many bytes those have as they were.
    pub bytes: u64,
    /// How many bytes the pack has.
    pub size: u64,
    /// How many files of theirs were removed.
    pub removed: usize,
    /// Those that were asked for and left as they are, with why.
    pub left: Vec<(SessionId, StoreError)>,
}

/// A session as it was read to be packed.
struct Taken {
    id: SessionId,
    identity: Identity,
    sum: Hash,
    bytes: u64,
}

impl SessionFolder {
    /// Packs sessions into the pack `name` (as `2026-11`) of this folder, beside what that has already, and removes their own
    /// files unless they are to be kept.
    ///
    /// Only whole files of this user with one name are taken, and none that another process has open. The pack is written
    /// under another name, read back from the disk and compared before it takes its place, and only then is anything removed.
    ///
    /// # Errors
    ///
    /// [`StoreError::BadPack`] where there is a pack of this name already that is damaged, [`StoreError::WrongFile`] where it
    /// is no file of this user, [`StoreError::NotSaved`] where the disk refuses. No session was removed then.
    pub fn pack(&self, name: &str, ids: &[SessionId], keep: bool) -> Result<Packed, StoreError> {
        self.check_rights()?;
        let name = format!("{name}{PACK_ENDING}");
        let path = self.path.join(&name);
        let old = self.old_pack(&name, &path)?;
        let mut left = Vec::new();
        let mut taken = Vec::new();
        let hidden = hidden::name(&name);
        let written = self.write_pack(&hidden, &path, old.as_ref(), ids, &mut taken, &mut left);
        let placed = written.and_then(|pack| {
            renameat(&self.fd, &hidden, &self.fd, &name)
                .map_err(io::Error::from)
                .and_then(|()| sync_folder(&self.fd))
                .map_err(|cause| StoreError::not_saved(&path, cause))?;
            Ok(pack)
        });
        if placed.is_err() {
            let _ = unlinkat(&self.fd, &hidden, AtFlags::empty());
        }
        let pack = placed?;
        self.look_for_packs()?;
        let mut removed = 0;
        for taken in taken.iter().filter(|_| !keep) {
            match self.remove(taken) {
                Ok(()) => removed += 1,
                Err(error) => left.push((taken.id.clone(), error)),
            }
        }
        sync_folder(&self.fd).map_err(|cause| StoreError::not_saved(&path, cause))?;
        Ok(Packed {
            path,
            sessions: pack.entries.len(),
            bytes: taken.iter().map(|taken| taken.bytes).sum(),
            taken: taken.into_iter().map(|taken| taken.id).collect(),
            size: pack.cover.identity.size(),
            removed,
            left,
        })
    }

    /// The pack that is there, which must be one of this user's, with every byte as it was packed.
    fn old_pack(&self, name: &str, path: &Path) -> Result<Option<Pack>, StoreError> {
        let file = match open::session(self.fd.as_fd(), name.as_ref(), path, Access::Append) {
            Ok(file) => file,
            Err(StoreError::NoSession { .. }) => return Ok(None),
            Err(error) => return Err(error),
        };
        let pack = Pack::of(file, path.to_owned(), name)?.single()?;
        for entry in &pack.entries {
            self.bytes_in(&pack, &entry.name)?;
        }
        Ok(Some(pack))
    }

    /// A session's bytes, out of a pack.
    pub(super) fn bytes_in(&self, pack: &Pack, name: &Name) -> Result<Vec<u8>, StoreError> {
        let gone = || StoreError::Changed {
            path: pack.cover.path.clone(),
        };
        let entry = pack.find(name).ok_or_else(gone)?;
        let mut text = pack.text(&self.fd, entry)?.ok_or_else(gone)?;
        let mut bytes = Vec::with_capacity(entry.extent.size as usize);
        (text.read_to_end(&mut bytes)).map_err(|cause| super::Source::failed(&pack.cover.path, cause))?;
        Ok(bytes)
    }

    fn write_pack(
        &self,
        hidden: &str,
        path: &Path,
        old: Option<&Pack>,
        ids: &[SessionId],
        taken: &mut Vec<Taken>,
        left: &mut Vec<(SessionId, StoreError)>,
    ) -> Result<Pack, StoreError> {
        let not_saved = |cause: io::Error| StoreError::not_saved(path, cause);
        let file = self.make_hidden(hidden).map_err(not_saved)?;
        let mut zip = ZipWriter::new(Target::new(&file));
        let options = SimpleFileOptions::default()
            .compression_method(CompressionMethod::Deflated)
            .unix_permissions(0o600);
        if let Some(old) = old {
            let source = open::session(
                self.fd.as_fd(),
                old.cover.name.as_ref(),
                &old.cover.path,
                Access::Read,
            )?;
            let source = ZipArchive::new(BufReader::new(source)).map_err(|error| not_saved(error.into()))?;
            zip.merge_archive(source)
                .map_err(|error| not_saved(error.into()))?;
        }
        let mut room = PACK_LIMIT - old.map_or(0, |old| old.entries.len());
        for id in ids {
            let (bytes, one) = match self.to_pack(id) {
                Ok(read) => read,
                Err(error) => {
                    left.push((id.clone(), error));
                    continue;
                }
            };
            let name = Name::from(id.clone());
            match old.filter(|old| old.find(&name).is_some()) {
                // Left by a run that was cut off between the writing and the removing.
                Some(old) if self.bytes_in(old, &name)? == bytes => {}
                Some(_) => {
                    let path = path.to_owned();
                    left.push((id.clone(), StoreError::Exists { path }));
                    continue;
                }
                None if room == 0 => {
                    let (path, cause) = (path.to_owned(), Cause::PackFull);
                    left.push((id.clone(), StoreError::NotSaved { path, cause }));
                    continue;
                }
                None => {
                    room -= 1;
                    zip.start_file(format!("{id}.jsonl"), options)
                        .map_err(|error| not_saved(error.into()))?;
                    zip.write_all(&bytes).map_err(not_saved)?;
                }
            }
            taken.push(one);
        }
        let target = zip.finish().map_err(|error| not_saved(error.into()))?;
        target.close().map_err(not_saved)?;
        file.sync_all().map_err(not_saved)?;
        self.read_back(hidden, path, old, taken)
    }

    /// A session that may be packed: its bytes, and what it is to be known by when it is removed.
    fn to_pack(&self, id: &SessionId) -> Result<(Vec<u8>, Taken), StoreError> {
        let (name, path) = self.file(id);
        let file = open::session(self.fd.as_fd(), name.as_ref(), &path, Access::Append)?;
        let _note = holder::lock(&file, &self.fd, id, &path)?;
        let status = fstat(&file).map_err(|error| StoreError::unreadable(&path, error.into()))?;
        let mut bytes = Vec::new();
        ((&file).take(SESSION_LIMIT + 1).read_to_end(&mut bytes))
            .map_err(|cause| StoreError::unreadable(&path, cause))?;
        if bytes.len() as u64 > SESSION_LIMIT {
            let limit = SESSION_LIMIT;
            return Err(StoreError::TooLarge { path, limit });
        }
        let report = verify(&bytes[..]).map_err(|cause| StoreError::unreadable(&path, cause))?;
        if let Some(damage) = report.damage {
            return Err(StoreError::Damaged { path, damage });
        }
        if report.torn_tail.is_some() {
            return Err(StoreError::Changed { path });
        }
        let taken = Taken {
            id: id.clone(),
            identity: Identity::of(&status),
            sum: Hash::of(&bytes),
            bytes: bytes.len() as u64,
        };
        Ok((bytes, taken))
    }

    /// Reads the new pack from the disk: every session must be in it, byte for byte.
    fn read_back(
        &self,
        hidden: &str,
        path: &Path,
        old: Option<&Pack>,
        taken: &[Taken],
    ) -> Result<Pack, StoreError> {
        let failed = |why: &str| StoreError::not_saved(path, io::Error::other(why.to_owned()));
        let pack = Pack::open(&self.fd, &self.path, hidden)?;
        let sums: BTreeMap<Name, Hash> = taken
            .iter()
            .map(|taken| (Name::from(taken.id.clone()), taken.sum))
            .collect();
        let file = open::session(self.fd.as_fd(), hidden.as_ref(), path, Access::Read)?;
        let mut found = 0;
        for entry in &pack.entries {
            let again = file
                .try_clone()
                .and_then(|file| EntryText::new(file, &entry.extent));
            let mut bytes = Vec::with_capacity(entry.extent.size as usize);
            again
                .and_then(|mut text| text.read_to_end(&mut bytes))
                .map_err(|cause| StoreError::not_saved(path, cause))?;
            let wanted = match sums.get(&entry.name) {
                Some(sum) => {
                    found += 1;
                    Some(*sum)
                }
                // The old pack was read before; the sums of its entries were right then.
                None => old
                    .map(|old| self.bytes_in(old, &entry.name))
                    .transpose()?
                    .map(|bytes| Hash::of(&bytes)),
            };
            if wanted != Some(Hash::of(&bytes)) {
                return Err(failed("the pack reads otherwise than it was written"));
            }
        }
        if found != sums.len()
            || old.is_some_and(|old| old.entries.iter().any(|e| pack.find(&e.name).is_none()))
        {
            return Err(failed("the pack lacks a session that was written"));
        }
        Ok(pack)
    }

    /// Removes a session's own file, if it is still the one that was packed.
    fn remove(&self, taken: &Taken) -> Result<(), StoreError> {
        let (name, path) = self.file(&taken.id);
        let file = open::session(self.fd.as_fd(), name.as_ref(), &path, Access::Append)?;
        let _note = holder::lock(&file, &self.fd, &taken.id, &path)?;
        let status = fstat(&file).map_err(|error| StoreError::unreadable(&path, error.into()))?;
        if Identity::of(&status) != taken.identity {
            return Err(StoreError::Changed { path });
        }
        unlinkat(&self.fd, &name, AtFlags::empty()).map_err(|error| StoreError::not_saved(&path, error))
    }
}
