//! Whether anything below some folders has changed since it was read, told without reading any of it.

use std::os::fd::AsFd;
use std::path::{Path, PathBuf};

use rayon::prelude::*;
use rustix::fs::{AtFlags, Dir, FileType, Stat, statat};
use sha2::{Digest, Sha256};

use super::archive::DEEPEST;
use super::error::StoreError;
use super::folder::SessionFolder;
use super::identity::{Identity, REST};
use super::packs::PACK_ENDING;

/// Names of a folder that are held at a time: it may have a million.
const HELD: usize = 4096;

/// Files that a core asks about in one go.
const AT_ONCE: usize = 256;

/// What the system says of everything below some folders: the names, and the identity of each file.
///
/// It is the same in whatever order it is taken in. So it can be taken from all files at once, or from each as it is read, which spares
/// asking the system twice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fingerprint {
    /// The sum of the sums of each name, in four numbers that overflow by themselves.
    sum: [u64; 4],
    /// How many session files and packs there are.
    pub files: u64,
    /// The second in which one of the files was last changed.
    newest: i64,
}

/// What the system says of a name in a folder.
#[derive(Clone, Copy, Debug)]
pub(super) enum Told {
    /// It is hidden, so that only its name tells on an audit, or it is gone.
    Nothing,
    Folder,
    File(Identity),
}

impl Fingerprint {
    /// Looks at the folders and files that [`Archive::find`](super::Archive::find) finds, and at kept libraries, following no link.
    ///
    /// # Errors
    ///
    /// Where one of the folders that were named cannot be opened.
    pub fn of(roots: &[PathBuf]) -> Result<Self, StoreError> {
        let mut all = Self::default();
        for root in roots {
            all.add(Self::below(&SessionFolder::open_existing(root)?, 0));
        }
        Ok(all)
    }

    /// Whether a later change of any file would show: all of them had rested at this second.
    pub fn is_settled(&self, second: i64) -> bool {
        self.newest < second.saturating_sub(REST)
    }

    /// Takes in what was looked at by itself.
    pub fn add(&mut self, other: Self) {
        for (part, other) in self.sum.iter_mut().zip(other.sum) {
            *part = part.wrapping_add(other);
        }
        self.files += other.files;
        self.newest = self.newest.max(other.newest);
    }

    /// Takes in what the system says of a name in a folder.
    pub(super) fn name(&mut self, folder: &Path, name: &[u8], told: Told) {
        match told {
            Told::Nothing => self.item(b'n', folder, name, &[]),
            Told::Folder => self.item(b'd', folder, name, &[]),
            Told::File(identity) => {
                self.newest = self.newest.max(identity.changed_second());
                self.files += u64::from(is_read(name));
                self.item(b'f', folder, name, &identity.bytes());
            }
        }
    }

    /// Takes in that a folder cannot be looked into, and why.
    pub(super) fn shut(&mut self, folder: &Path, error: &StoreError) {
        self.item(b'e', folder, error.to_string().as_bytes(), &[]);
    }

    /// Looks at what is in a folder that lies so deep, and in those in it, several at a time: asking the system about each file is all that
    /// an unchanged archive costs.
    pub(super) fn below(folder: &SessionFolder, depth: usize) -> Self {
        let mut looked = Self::default();
        let mut below = Vec::new();
        if let Err(error) = looked.names(folder, &mut below) {
            looked.shut(&folder.path, &error);
        }
        if depth < DEEPEST {
            let below = below.par_iter().map(|path| Self::at(path, depth + 1));
            looked.add(below.reduce(Self::default, Self::and));
        }
        looked
    }

    /// Takes in every name in a folder, and names the folders among them.
    fn names(&mut self, folder: &SessionFolder, below: &mut Vec<PathBuf>) -> Result<(), StoreError> {
        let unreadable = |error: rustix::io::Errno| StoreError::unreadable(&folder.path, error.into());
        let mut entries = Dir::read_from(&folder.fd).map_err(unreadable)?;
        loop {
            let names: Vec<Vec<u8>> = (entries.by_ref().take(HELD))
                .map(|entry| Ok(entry.map_err(unreadable)?.file_name().to_bytes().to_vec()))
                .collect::<Result<_, StoreError>>()?;
            if names.is_empty() {
                return Ok(());
            }
            let told: Vec<(Self, Option<PathBuf>)> = (names.par_iter().with_min_len(AT_ONCE))
                .filter(|name| **name != b"." && **name != b"..")
                .map(|name| Self::of_name(folder, name))
                .collect();
            for (one, folder) in told {
                self.add(one);
                below.extend(folder);
            }
        }
    }

    /// What the system says of a name in a folder, and the path where it is one of a folder.
    fn of_name(folder: &SessionFolder, name: &[u8]) -> (Self, Option<PathBuf>) {
        let told = Told::of(folder, name);
        let mut one = Self::default();
        one.name(&folder.path, name, told);
        let path = || folder.path.join(&*String::from_utf8_lossy(name));
        (one, matches!(told, Told::Folder).then(path))
    }

    /// Both together.
    fn and(mut self, other: Self) -> Self {
        self.add(other);
        self
    }

    /// Looks at what is in a folder, if it can be opened.
    pub(super) fn at(path: &Path, depth: usize) -> Self {
        match SessionFolder::open_existing(path) {
            Ok(folder) => Self::below(&folder, depth),
            Err(error) => {
                let mut shut = Self::default();
                shut.shut(path, &error);
                shut
            }
        }
    }

    /// One thing more. Each of its texts has its length in front: none can run over into the next.
    fn item(&mut self, kind: u8, folder: &Path, name: &[u8], rest: &[u8]) {
        let mut sum = Sha256::new_with_prefix([kind]);
        for text in [folder.as_os_str().as_encoded_bytes(), name, rest] {
            sum.update((text.len() as u64).to_be_bytes());
            sum.update(text);
        }
        let digest = sum.finalize();
        let (words, _) = digest.as_chunks::<8>();
        for (part, word) in self.sum.iter_mut().zip(words) {
            *part = part.wrapping_add(u64::from_be_bytes(*word));
        }
    }
}

impl Default for Fingerprint {
    /// Of nothing.
    fn default() -> Self {
        Self {
            sum: [0; 4],
            files: 0,
            newest: i64::MIN,
        }
    }
}

impl std::fmt::Display for Fingerprint {
    /// The sum, which is all that is compared.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.sum.iter().try_for_each(|part| write!(f, "{part:016x}"))
    }
}

impl Told {
    pub(super) fn of(folder: &SessionFolder, name: &[u8]) -> Self {
        let status = match name.starts_with(b".") {
            true => None,
            false => statat(folder.fd.as_fd(), name, AtFlags::SYMLINK_NOFOLLOW).ok(),
        };
        // What has a session's name is taken for one, and not looked into.
        let is_folder = |status: &Stat| {
            FileType::from_raw_mode(status.st_mode) == FileType::Directory && !name.ends_with(b".jsonl")
        };
        match status {
            None => Self::Nothing,
            Some(status) if is_folder(&status) => Self::Folder,
            Some(status) => Self::File(Identity::of(&status)),
        }
    }
}

fn is_read(name: &[u8]) -> bool {
    name.ends_with(b".jsonl") || name.ends_with(PACK_ENDING.as_bytes())
}
