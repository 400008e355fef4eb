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

struct Sum {
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
        let mut sum = Sum {
            sum: Sha256::new(),
            files: 0,
            newest: i64::MIN,
        };
        for root in roots {
            sum.word(b"root");
            let mut waiting = vec![(SessionFolder::open_existing(root)?, 0)];
            while let Some((folder, depth)) = waiting.pop() {
                for below in sum.folder(&folder).into_iter().rev().filter(|_| depth < DEEPEST) {
                    match SessionFolder::open_existing(&below) {
                        Ok(folder) => waiting.push((folder, depth + 1)),
                        Err(error) => sum.word(error.to_string().as_bytes()),
                    }
                }
            }
        }
        Ok(Self {
            sum: Hash::from_digest(sum.sum.finalize().into()),
            files: sum.files,
            newest: sum.newest,
        })
    }

    /// Whether a later change of any file would show: all of them had rested at this second.
    pub fn is_settled(&self, second: i64) -> bool {
        self.newest < second.saturating_sub(REST)
    }
}

impl Sum {
    /// Takes in what is in a folder; the folders in it, sorted.
    fn folder(&mut self, folder: &SessionFolder) -> Vec<PathBuf> {
        self.word(folder.path.as_os_str().as_encoded_bytes());
        let listed = names(folder);
        let mut names = match listed {
            Ok(names) => names,
            Err(error) => {
                self.word(error.to_string().as_bytes());
                return Vec::new();
            }
        };
        names.sort_unstable();
        let looked: Vec<(Option<Stat>, &Vec<u8>)> = (names.par_iter().with_min_len(256))
            .map(|name| {
                let status = statat(folder.fd.as_fd(), name.as_slice(), AtFlags::SYMLINK_NOFOLLOW);
                // Of a hidden file, only that it is there tells on an audit.
                (status.ok().filter(|_| !name.starts_with(b".")), name)
            })
            .collect();
        let mut below = Vec::new();
        for (status, name) in looked {
            self.word(name);
            let Some(status) = status else { continue };
            if FileType::from_raw_mode(status.st_mode) == FileType::Directory {
                below.push(folder.path.join(&*String::from_utf8_lossy(name)));
                continue;
            }
            let identity = Identity::of(&status);
            self.newest = self.newest.max(identity.changed_second());
            self.files += u64::from(is_read(name));
            self.word(&identity.bytes());
        }
        below
    }

    /// Takes in a text, with its length in front: none can run over into the next.
    fn word(&mut self, bytes: &[u8]) {
        self.sum.update((bytes.len() as u64).to_be_bytes());
        self.sum.update(bytes);
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
