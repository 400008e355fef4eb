//! The packs of a folder, and a session's text wherever it lies.

use std::fs::File;
use std::io::{self, BufRead, BufReader, Read};
use std::os::fd::AsFd;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use rustix::fs::{Dir, fstat};
use rustix::process::geteuid;

use super::PACK_ENDING;
use super::pack::Pack;
use crate::store::SessionId;
use crate::store::error::StoreError;
use crate::store::folder::SessionFolder;
use crate::store::name::Name;
use crate::store::open::{self, Access};

/// The packs of a folder.
#[derive(Debug, Default)]
pub struct Packs {
    /// Those that can be read, sorted by name.
    pub sound: Vec<Arc<Pack>>,
    /// The names of those that cannot, and of entries in the others that cannot, with why.
    pub bad: Vec<(String, StoreError)>,
}

/// What is known of a folder's packs, once it was asked for.
pub(in crate::store) type Known = Arc<Mutex<Option<Arc<Packs>>>>;

/// A session's text, from its own file or from a pack.
pub(in crate::store) struct Source {
    pub text: Box<dyn BufRead + Send>,
    /// How long it is, or was when it was opened.
    pub length: u64,
    /// The file that it is read from.
    pub path: PathBuf,
    /// Whether that belongs to the user of this process.
    pub ours: bool,
}

impl Source {
    /// A session that has a file of its own.
    pub fn own(file: File, path: PathBuf) -> Result<Self, StoreError> {
        let status = fstat(&file).map_err(|error| StoreError::unreadable(&path, error.into()))?;
        // No further than the file goes now: another process may be recording.
        let length = u64::try_from(status.st_size).unwrap_or(0);
        Ok(Self {
            text: Box::new(BufReader::new(file.take(length))),
            length,
            path,
            ours: status.st_uid == geteuid().as_raw(),
        })
    }

    /// What a failure to read on comes to.
    pub fn failed(path: &Path, cause: io::Error) -> StoreError {
        match cause.kind() {
            io::ErrorKind::InvalidData => StoreError::BadPack {
                path: path.to_owned(),
                why: cause.to_string(),
            },
            _ => StoreError::unreadable(path, cause),
        }
    }
}

impl SessionFolder {
    /// The packs in this folder, as they were when they were first asked for.
    ///
    /// # Errors
    ///
    /// [`StoreError::Unreadable`] where the folder cannot be read.
    pub fn packs(&self) -> Result<Arc<Packs>, StoreError> {
        let known = self.known().clone();
        known.map_or_else(|| self.look_for_packs(), Ok)
    }

    /// A pack of this folder.
    ///
    /// # Errors
    ///
    /// [`StoreError::BadPack`] where it cannot be read as one, [`StoreError::WrongFile`], [`StoreError::NoSession`] where there is
    /// none of this name.
    pub fn pack_named(&self, name: &str) -> Result<Arc<Pack>, StoreError> {
        Pack::open(&self.fd, &self.path, name).map(Arc::new)
    }

    /// The same folder as if it held nothing but one of its packs.
    pub fn only(&self, pack: &Arc<Pack>) -> Self {
        let packs = Packs {
            sound: vec![Arc::clone(pack)],
            bad: Vec::new(),
        };
        Self {
            known: Arc::new(Mutex::new(Some(Arc::new(packs)))),
            only_packs: true,
            ..self.clone()
        }
    }

    /// A session's text.
    pub(in crate::store) fn source(&self, id: &SessionId) -> Result<Source, StoreError> {
        let (file, path) = self.file(id);
        let name = Name::from(id.clone());
        let mut packs = self.known().clone();
        // A pack may take a session's place, or give it up, while we look: then its file, or the new pack, is there.
        for is_last in [false, true] {
            if !self.only_packs {
                match open::session(self.fd.as_fd(), file.as_ref(), &path, Access::Read) {
                    Ok(file) => return Source::own(file, path),
                    Err(StoreError::NoSession { .. }) => {}
                    Err(error) => return Err(error),
                }
            }
            let known = match packs.take() {
                Some(known) => known,
                None => self.look_for_packs()?,
            };
            if let Some(source) = self.packed(&known, &name)? {
                return Ok(source);
            }
            if is_last || self.only_packs {
                break;
            }
        }
        Err(StoreError::NoSession { path })
    }

    /// The pack that has a session which has no file.
    pub(in crate::store) fn packed_in(&self, id: &SessionId) -> Option<PathBuf> {
        let name = Name::from(id.clone());
        let packs = self.look_for_packs().ok()?;
        let pack = packs.sound.iter().find(|pack| pack.find(&name).is_some())?;
        Some(pack.cover.path.clone())
    }

    fn packed(&self, packs: &Packs, name: &Name) -> Result<Option<Source>, StoreError> {
        for pack in &packs.sound {
            if let Some(entry) = pack.find(name)
                && let Some(text) = pack.text(&self.fd, entry)?
            {
                return Ok(Some(Source {
                    text: Box::new(BufReader::new(text)),
                    length: u64::from(entry.extent.size),
                    path: pack.cover.path.clone(),
                    ours: pack.cover.ours,
                }));
            }
        }
        Ok(None)
    }

    pub(super) fn known(&self) -> MutexGuard<'_, Option<Arc<Packs>>> {
        // Nothing can fail while the lock is held.
        self.known.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Looks at the folder again.
    pub(in crate::store) fn look_for_packs(&self) -> Result<Arc<Packs>, StoreError> {
        let mut packs = Packs::default();
        for name in self.pack_names()? {
            match Pack::open(&self.fd, &self.path, &name) {
                Ok(pack) => {
                    packs.bad.extend(pack.doubled());
                    packs.sound.push(Arc::new(pack));
                }
                Err(error) => packs.bad.push((name, error)),
            }
        }
        let packs = Arc::new(packs);
        *self.known() = Some(Arc::clone(&packs));
        Ok(packs)
    }

    /// The names of the packs in this folder, sorted.
    pub(in crate::store) fn pack_names(&self) -> Result<Vec<String>, StoreError> {
        let unreadable = |error: rustix::io::Errno| StoreError::unreadable(&self.path, error.into());
        let mut names = Vec::new();
        for entry in Dir::read_from(&self.fd).map_err(unreadable)? {
            let entry = entry.map_err(unreadable)?;
            let name = String::from_utf8_lossy(entry.file_name().to_bytes());
            if name.ends_with(PACK_ENDING) && !name.starts_with('.') {
                names.push(name.into_owned());
            }
        }
        names.sort_unstable();
        Ok(names)
    }
}
