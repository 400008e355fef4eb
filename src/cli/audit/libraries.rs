//! The libraries that sessions were walked with: each is read once, and only what its names mean is kept.

use std::collections::HashMap;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use crate::audit::Meanings;
use crate::cli::library;
use crate::source::{Files, safe};
use crate::store::{Archive, Hash};
use crate::walk::LibraryMark;

/// What the names of each library mean, by its hash.
pub(super) struct Libraries<'a> {
    archive: &'a Archive,
    known: Mutex<HashMap<Hash, Arc<OnceLock<Arc<Meanings>>>>>,
    built_in: OnceLock<Option<BuiltIn>>,
}

/// The library in the program, for sessions whose own was not kept.
struct BuiltIn {
    name: String,
    hash: Hash,
    meanings: Arc<Meanings>,
    presumed: Arc<Meanings>,
}

impl<'a> Libraries<'a> {
    /// Of an archive.
    pub fn new(archive: &'a Archive) -> Self {
        Self {
            archive,
            known: Mutex::default(),
            built_in: OnceLock::new(),
        }
    }

    /// What the names of a session in a folder mean.
    pub fn meanings(&self, folder: u32, mark: &LibraryMark) -> Arc<Meanings> {
        let Ok(hash) = mark.hash.parse::<Hash>() else {
            return self.presumed(mark);
        };
        let cell = {
            // Nothing can fail while the lock is held.
            let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
            Arc::clone(known.entry(hash).or_default())
        };
        Arc::clone(cell.get_or_init(|| self.read(folder, mark, &hash)))
    }

    fn read(&self, folder: u32, mark: &LibraryMark, hash: &Hash) -> Arc<Meanings> {
        for place in self.archive.upwards(folder) {
            let kept = self
                .archive
                .folder(place)
                .and_then(|folder| folder.kept_library(hash));
            match kept {
                Ok(Some(files)) => {
                    let library = library::resolved(Files::new(files)).library;
                    return Arc::new(Meanings::of(&library));
                }
                Ok(None) => {}
                Err(error) => crate::cli::tell(&format!("proofwalk: {error}")),
            }
        }
        match self.built_in() {
            Some(built_in) if built_in.hash == *hash => Arc::clone(&built_in.meanings),
            _ => {
                crate::cli::tell(&format!(
                    "proofwalk: the library {} {} of some sessions is not kept beside them; copy the folder `libraries` from \
                     where they were walked",
                    safe(&mark.name),
                    safe(&mark.edition),
                ));
                self.presumed(mark)
            }
        }
    }

    /// For a session whose library is not at hand: the built-in one, where it is another edition of that.
    fn presumed(&self, mark: &LibraryMark) -> Arc<Meanings> {
        match self.built_in() {
            Some(built_in) if built_in.name == mark.name => Arc::clone(&built_in.presumed),
            _ => Arc::default(),
        }
    }

    fn built_in(&self) -> Option<&BuiltIn> {
        let read = || {
            let loaded = library::load(None, &[]).ok()?;
            let meanings = Meanings::of(&loaded.library);
            Some(BuiltIn {
                name: loaded.library.name.clone(),
                hash: loaded.hash,
                presumed: Arc::new(meanings.clone().presumed()),
                meanings: Arc::new(meanings),
            })
        };
        self.built_in.get_or_init(read).as_ref()
    }
}
