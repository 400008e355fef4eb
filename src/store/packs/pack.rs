//! One pack: what is in it, and where.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::BufReader;
use std::os::fd::{AsFd, OwnedFd};
use std::path::{Path, PathBuf};

use rustix::fs::fstat;
use rustix::process::geteuid;
use zip::{CompressionMethod, ZipArchive};

use super::{PACK_LIMIT, doubled};
use crate::store::error::StoreError;
use crate::store::identity::Identity;
use crate::store::name::Name;
use crate::store::open::{self, Access};
use crate::store::{SESSION_LIMIT, SessionId};

/// Bytes that are read at once of what surrounds the sessions: a little here and there.
const LITTLE: usize = 512;

/// A pack whose table of contents is sound. Its entries are checked as they are read.
#[derive(Debug)]
pub struct Pack {
    pub(super) cover: Cover,
    /// Sorted by name.
    pub(super) entries: Vec<Entry>,
}

/// What is known of a pack without its table of contents.
#[derive(Debug)]
pub(in crate::store) struct Cover {
    pub(super) name: String,
    pub(super) path: PathBuf,
    pub(super) identity: Identity,
    pub(super) ours: bool,
    /// Names that several entries have, with how many: none of those is read.
    pub(super) doubled: BTreeMap<String, u64>,
}

/// A session in its pack.
#[derive(Clone, Debug)]
pub(in crate::store) struct Entry {
    pub name: Name,
    pub extent: Extent,
}

/// Where a session lies in its pack.
#[derive(Clone, Copy, Debug)]
pub(in crate::store) struct Extent {
    pub(super) start: u64,
    /// Bytes as packed, and as they were.
    pub(super) packed: u32,
    pub(super) size: u32,
    pub(super) sum: u32,
    pub(super) deflated: bool,
}

impl Pack {
    /// Reads the table of contents of the pack `name` in a folder.
    pub(in crate::store) fn open(folder: &OwnedFd, path: &Path, name: &str) -> Result<Self, StoreError> {
        let path = path.join(name);
        let file = open::session(folder.as_fd(), name.as_ref(), &path, Access::Read)?;
        Self::of(file, path, name)
    }

    /// Reads the table of contents of a file that is open.
    pub(super) fn of(file: File, path: PathBuf, name: &str) -> Result<Self, StoreError> {
        let (cover, mut zip) = Cover::of(file, path, name)?;
        let bad = |why: String| cover.bad(why);
        let mut entries = Vec::with_capacity(zip.len());
        for at in 0..zip.len() {
            let file = zip.by_index_raw(at).map_err(|error| bad(error.to_string()))?;
            let name = file.name().map_err(|error| bad(error.to_string()))?;
            let id = session(&name).ok_or_else(|| cover.no_session(&name))?;
            if cover.doubled.contains_key(&*name) {
                continue;
            }
            let deflated = match file.compression() {
                CompressionMethod::Deflated => true,
                CompressionMethod::Stored => false,
                _ => {
                    return Err(bad(format!(
                        "its entry {name} is compressed otherwise than deflated"
                    )));
                }
            };
            if file.encrypted() || !file.is_file() {
                return Err(bad(format!("its entry {name} is no plain file")));
            }
            let small = |bytes: u64| u32::try_from(bytes).ok().filter(|_| bytes <= SESSION_LIMIT);
            let (Some(start), Some(packed), Some(size)) = (
                file.data_start(),
                small(file.compressed_size()),
                small(file.size()),
            ) else {
                let most = SESSION_LIMIT >> 20;
                return Err(bad(format!(
                    "its entry {name} is larger than the {most} MiB that a session may have"
                )));
            };
            entries.push(Entry {
                name: id.into(),
                extent: Extent {
                    start,
                    packed,
                    size,
                    sum: file.crc32(),
                    deflated,
                },
            });
        }
        if overlap(&mut entries) {
            return Err(bad("two of its entries share bytes".to_owned()));
        }
        entries.sort_unstable_by(|one, other| one.name.cmp(&other.name));
        if entries.windows(2).any(|two| two[0].name == two[1].name) {
            return Err(bad("two of its entries have one name".to_owned()));
        }
        entries.shrink_to_fit();
        Ok(Self { cover, entries })
    }

    /// The name of its file.
    pub fn name(&self) -> &str {
        &self.cover.name
    }

    /// How many bytes its file has.
    pub fn size(&self) -> u64 {
        self.cover.identity.size()
    }

    /// The sessions in it, sorted.
    pub fn sessions(&self) -> impl Iterator<Item = SessionId> {
        self.entries.iter().map(|entry| SessionId::from(&entry.name))
    }

    /// The same with where each lies.
    pub(in crate::store) fn into_entries(self) -> Vec<Entry> {
        self.entries
    }

    pub(super) fn find(&self, name: &Name) -> Option<&Entry> {
        // Most packs of a folder are of other months.
        if !(&self.entries.first()?.name..=&self.entries.last()?.name).contains(&name) {
            return None;
        }
        let at = self.entries.binary_search_by(|entry| entry.name.cmp(name)).ok()?;
        self.entries.get(at)
    }
}

impl Cover {
    /// What is said of a pack in a folder, with its first session and how many there are; where each lies is not looked at.
    pub(in crate::store) fn look(
        folder: &OwnedFd,
        path: &Path,
        name: &str,
    ) -> Result<(Self, Option<Name>, usize), StoreError> {
        let path = path.join(name);
        let file = open::session(folder.as_fd(), name.as_ref(), &path, Access::Read)?;
        let (cover, zip) = Self::of(file, path, name)?;
        let mut first: Option<Name> = None;
        for name in zip.file_names() {
            let name = name.map_err(|error| cover.bad(error.to_string()))?;
            let id = session(&name).ok_or_else(|| cover.no_session(&name))?;
            if cover.doubled.contains_key(&*name) {
                continue;
            }
            let name = Name::from(id);
            if first.as_ref().is_none_or(|first| name < *first) {
                first = Some(name);
            }
        }
        let many = zip.len().saturating_sub(cover.doubled.len());
        Ok((cover, first, many))
    }

    fn of(file: File, path: PathBuf, name: &str) -> Result<(Self, ZipArchive<BufReader<File>>), StoreError> {
        let status = fstat(&file).map_err(|error| StoreError::unreadable(&path, error.into()))?;
        let mut cover = Self {
            name: name.to_owned(),
            identity: Identity::of(&status),
            ours: status.st_uid == geteuid().as_raw(),
            path,
            doubled: BTreeMap::new(),
        };
        let again = (file.try_clone()).map_err(|error| StoreError::unreadable(&cover.path, error))?;
        let file = BufReader::with_capacity(LITTLE, file);
        let zip = ZipArchive::new(file).map_err(|error| cover.bad(error.to_string()))?;
        if zip.len() > PACK_LIMIT {
            return Err(cover.bad(format!("it has more than {PACK_LIMIT} entries")));
        }
        if zip.has_duplicate_names() {
            cover.doubled = doubled::names(again, zip.central_directory_start())
                .map_err(|error| cover.bad(error.to_string()))?;
            if cover.doubled.is_empty() {
                return Err(cover.bad("two of its entries have one name".to_owned()));
            }
        }
        Ok((cover, zip))
    }

    /// The name of its file.
    pub(in crate::store) fn name(&self) -> &str {
        &self.name
    }

    /// What the system said of its file when this was read.
    pub(in crate::store) fn identity(&self) -> Identity {
        self.identity
    }

    fn bad(&self, why: String) -> StoreError {
        StoreError::BadPack {
            path: self.path.clone(),
            why,
        }
    }

    fn no_session(&self, name: &str) -> StoreError {
        self.bad(format!("its entry {name} is no session"))
    }
}

/// The session of an entry's name.
fn session(name: &str) -> Option<SessionId> {
    SessionId::parse(name.strip_suffix(".jsonl")?).ok()
}

/// Entries that share bytes are how a small file unpacks to one without bounds.
fn overlap(entries: &mut [Entry]) -> bool {
    entries.sort_unstable_by_key(|entry| entry.extent.start);
    let mut extents = entries.windows(2).map(|two| (two[0].extent, two[1].extent));
    extents.any(|(one, next)| one.start + u64::from(one.packed) > next.start)
}
