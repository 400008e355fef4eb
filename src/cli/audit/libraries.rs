//! The libraries that sessions were walked with: each is read once, and only what its names mean is kept.

use std::collections::HashMap;
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use crate::audit::Meanings;
use crate::cli::library;
use crate::library::FileKind;
use crate::source::{Files, SourceFile, safe};
use crate::store::{Archive, Hash};

/// What the names of each library mean, by its hash.
pub(super) struct Libraries<'a> {
    archive: &'a Archive,
    known: Mutex<HashMap<Hash, Arc<OnceLock<Words>>>>,
    built_in: OnceLock<Option<BuiltIn>>,
    unknown: OnceLock<Words>,
}

/// What the names of a library mean.
#[derive(Clone)]
pub(super) struct Words {
    pub meanings: Arc<Meanings>,
    /// The sum of all of it.
    pub sum: Hash,
}

impl Words {
    fn new(meanings: Meanings) -> Self {
        let sum = Hash::of(meanings.in_one_text().as_bytes());
        let meanings = Arc::new(meanings);
        Self { meanings, sum }
    }
}

/// The library in the program, for sessions whose own was not kept.
struct BuiltIn {
    name: String,
    hash: Hash,
    words: Words,
    presumed: Words,
}

impl<'a> Libraries<'a> {
    /// Of an archive.
    pub fn new(archive: &'a Archive) -> Self {
        Self {
            archive,
            known: Mutex::default(),
            built_in: OnceLock::new(),
            unknown: OnceLock::new(),
        }
    }

    /// What the names of a session in a folder mean.
    pub fn words(&self, folder: u32, name: &str, edition: &str, hash: &str) -> Words {
        let Ok(hash) = hash.parse::<Hash>() else {
            return self.presumed(name);
        };
        let cell = {
            // Nothing can fail while the lock is held.
            let mut known = self.known.lock().unwrap_or_else(PoisonError::into_inner);
            Arc::clone(known.entry(hash).or_default())
        };
        cell.get_or_init(|| self.read(folder, name, edition, &hash))
            .clone()
    }

    /// Looks in the folder of a session, in those above it, and then in all others: a library is the same wherever it is kept, and which
    /// session asks first must not matter.
    fn read(&self, folder: u32, name: &str, edition: &str, hash: &Hash) -> Words {
        let all = 0..self.archive.folders().count() as u32;
        for place in self.archive.upwards(folder).chain(all) {
            let kept = self
                .archive
                .folder(place)
                .and_then(|folder| folder.kept_library(hash));
            match kept {
                Ok(Some(files)) => {
                    return Words::new(meanings_of(files));
                }
                Ok(None) => {}
                Err(error) => crate::cli::tell(&format!("proofwalk: {error}")),
            }
        }
        match self.built_in() {
            Some(built_in) if built_in.hash == *hash => built_in.words.clone(),
            _ => {
                crate::cli::tell(&format!(
                    "proofwalk: the library {} {} of some sessions is not kept beside them; copy the folder `libraries` from \
                     where they were walked",
                    safe(name),
                    safe(edition),
                ));
                self.presumed(name)
            }
        }
    }

    /// For a session whose library is not at hand: the built-in one, where it is another edition of that.
    fn presumed(&self, name: &str) -> Words {
        match self.built_in() {
            Some(built_in) if built_in.name == name => built_in.presumed.clone(),
            _ => self
                .unknown
                .get_or_init(|| Words::new(Meanings::default()))
                .clone(),
        }
    }

    fn built_in(&self) -> Option<&BuiltIn> {
        let read = || {
            let loaded = library::load(None, &[]).ok()?;
            let meanings = Meanings::of(&loaded.library);
            Some(BuiltIn {
                name: loaded.library.name.clone(),
                hash: loaded.hash,
                presumed: Words::new(meanings.clone().presumed()),
                words: Words::new(meanings),
            })
        };
        self.built_in.get_or_init(read).as_ref()
    }
}

/// What the names in these files mean. Scenarios say nothing of that, and are nearly half of a library.
fn meanings_of(mut files: Vec<SourceFile>) -> Meanings {
    files.retain(|file| FileKind::of(file.name()) != Some(FileKind::Scenario));
    let (library, _) = crate::library::load(Files::new(files));
    Meanings::of(&library)
}
