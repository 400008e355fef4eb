//! Whether anything below some folders has changed since it was read, told without reading any of it.

use std::os::fd::AsFd;
use std::path::PathBuf;

use rayon::prelude::*;
use rustix::fs::{AtFlags, Dir, FileType, Stat, statat};
use sha2::{Digest, Sha256};

use super::Hash;
use super::archive::DEEPEST;
use super::error::StoreError;
use super::folder::SessionFolder;
use super::identity::{Identity, REST};
use super::packs::PACK_ENDING;

/// Files of a folder that are asked about in one go.
const AT_ONCE: usize = 256;

/// What the system says of everything below some folders: the names, and the identity of each file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fingerprint {
    /// The sum of it all.
    pub sum: Hash,
    /// How many session files and packs there are.
    pub files: u64,
    /// The second in which one of them was last changed.
    newest: i64,
}

/// What the system says of a folder and of all below it.
struct Looked {
    sum: Sha256,
    files: u64,
    newest: i64,
}

impl Fingerprint {
    /// Looks at the folders and files that [`Archive::find`](super::Archive::find) finds, and at kept libraries, following no link.
    ///
    /// # Errors
    ///
    /// Where one of the folders that were named cannot be opened.
    pub fn of(roots: &[PathBuf]) -> Result<Self, StoreError> {
        let mut all = Looked::default();
        for root in roots {
            all.take(Looked::at(&SessionFolder::open_existing(root)?, 0));
        }
        Ok(Self {
            sum: Hash::from_digest(all.sum.finalize().into()),
            files: all.files,
            newest: all.newest,
        })
    }

    /// Whether a later change of any file would show: all of them had rested at this second.
    pub fn is_settled(&self, second: i64) -> bool {
        self.newest < second.saturating_sub(REST)
    }
}

/// What the system says of a name in a folder.
enum Told {
    /// It is hidden, so that only its name tells on an audit, or it is gone.
    Nothing,
    Folder,
    File(Identity),
}

impl Told {
    fn of(folder: &SessionFolder, name: &[u8]) -> Self {
        let status = match name.starts_with(b".") {
            true => None,
            false => statat(folder.fd.as_fd(), name, AtFlags::SYMLINK_NOFOLLOW).ok(),
        };
        let is_folder = |status: &Stat| FileType::from_raw_mode(status.st_mode) == FileType::Directory;
        match status {
            None => Self::Nothing,
            Some(status) if is_folder(&status) => Self::Folder,
            Some(status) => Self::File(Identity::of(&status)),
        }
    }
}

impl Looked {
    /// Looks at what is in a folder that lies so deep, and in those in it, several at a time: asking the system about each file is all that
    /// an unchanged archive costs.
    fn at(folder: &SessionFolder, depth: usize) -> Self {
        let mut looked = Self::default();
        looked.word(folder.path.as_os_str().as_encoded_bytes());
        let mut names = match names(folder) {
            Ok(names) => names,
            Err(error) => {
                looked.word(error.to_string().as_bytes());
                return looked;
            }
        };
        names.sort_unstable();
        let told: Vec<Told> = (names.par_iter().with_min_len(AT_ONCE))
            .map(|name| Told::of(folder, name))
            .collect();
        let mut below = Vec::new();
        for (name, told) in names.iter().zip(told) {
            looked.word(name);
            match told {
                Told::Nothing => {}
                Told::Folder => below.push(folder.path.join(&*String::from_utf8_lossy(name))),
                Told::File(identity) => {
                    looked.newest = looked.newest.max(identity.changed_second());
                    looked.files += u64::from(is_read(name));
                    looked.word(&identity.bytes());
                }
            }
        }
        if depth < DEEPEST {
            let below: Vec<Self> = (below.par_iter())
                .map(|path| match SessionFolder::open_existing(path) {
                    Ok(folder) => Self::at(&folder, depth + 1),
                    Err(error) => {
                        let mut closed = Self::default();
                        closed.word(error.to_string().as_bytes());
                        closed
                    }
                })
                .collect();
            below.into_iter().for_each(|below| looked.take(below));
        }
        looked
    }

    /// Takes in what was looked at by itself.
    fn take(&mut self, other: Self) {
        self.word(&other.sum.finalize());
        self.files += other.files;
        self.newest = self.newest.max(other.newest);
    }

    /// Takes in a text, with its length in front: none can run over into the next.
    fn word(&mut self, bytes: &[u8]) {
        self.sum.update((bytes.len() as u64).to_be_bytes());
        self.sum.update(bytes);
    }
}

impl Default for Looked {
    fn default() -> Self {
        Self {
            sum: Sha256::new(),
            files: 0,
            newest: i64::MIN,
        }
    }
}

fn names(folder: &SessionFolder) -> rustix::io::Result<Vec<Vec<u8>>> {
    let mut names = Vec::new();
    for entry in Dir::read_from(&folder.fd)? {
        let name = entry?.file_name().to_bytes().to_vec();
        if name != b"." && name != b".." {
            names.push(name);
        }
    }
    Ok(names)
}

fn is_read(name: &[u8]) -> bool {
    name.ends_with(b".jsonl") || name.ends_with(PACK_ENDING.as_bytes())
}
