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

/// A pack whose table of contents is sound. Its entries are checked as they are read.
#[derive(Debug)]
pub struct Pack {
    pub(super) name: String,
    pub(super) path: PathBuf,
    pub(super) identity: Identity,
    pub(super) ours: bool,
    /// Sorted by name.
    pub(super) entries: Vec<Entry>,
    /// Names that several entries have, with how many: none of those is among the entries.
    pub(super) doubled: BTreeMap<String, u64>,
}

/// Where a session lies in its pack.
#[derive(Clone, Debug)]
pub(super) struct Entry {
    pub name: Name,
    pub start: u64,
    /// Bytes as packed, and as they were.
    pub packed: u32,
    pub size: u32,
    pub sum: u32,
    pub deflated: bool,
}

impl Pack {
    /// Reads the table of contents of the pack `name` in a folder.
    pub(super) fn open(folder: &OwnedFd, path: &Path, name: &str) -> Result<Self, StoreError> {
        let path = path.join(name);
        let file = open::session(folder.as_fd(), name.as_ref(), &path, Access::Read)?;
        Self::of(file, path, name)
    }

    /// Reads the table of contents of a file that is open.
    pub(super) fn of(file: File, path: PathBuf, name: &str) -> Result<Self, StoreError> {
        let status = fstat(&file).map_err(|error| StoreError::unreadable(&path, error.into()))?;
        let bad = |why: String| StoreError::BadPack {
            path: path.clone(),
            why,
        };
        let again = file
            .try_clone()
            .map_err(|error| StoreError::unreadable(&path, error))?;
        let mut zip = ZipArchive::new(BufReader::new(file)).map_err(|error| bad(error.to_string()))?;
        if zip.len() > PACK_LIMIT {
            return Err(bad(format!("it has more than {PACK_LIMIT} entries")));
        }
        let doubled = match zip.has_duplicate_names() {
            true => doubled::names(again, zip.central_directory_start())
                .map_err(|error| bad(error.to_string()))?,
            false => BTreeMap::new(),
        };
        if zip.has_duplicate_names() && doubled.is_empty() {
            return Err(bad("two of its entries have one name".to_owned()));
        }
        let mut entries = Vec::with_capacity(zip.len());
        for at in 0..zip.len() {
            let file = zip.by_index_raw(at).map_err(|error| bad(error.to_string()))?;
            let name = file.name().map_err(|error| bad(error.to_string()))?;
            let id = (name.strip_suffix(".jsonl")).and_then(|stem| SessionId::parse(stem).ok());
            let id = id.ok_or_else(|| bad(format!("its entry {name} is no session")))?;
            if doubled.contains_key(&*name) {
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
                start,
                packed,
                size,
                sum: file.crc32(),
                deflated,
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
        Ok(Self {
            name: name.to_owned(),
            identity: Identity::of(&status),
            ours: status.st_uid == geteuid().as_raw(),
            path,
            entries,
            doubled,
        })
    }

    /// The name of its file.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// How many bytes its file has.
    pub fn size(&self) -> u64 {
        self.identity.size()
    }

    /// The sessions in it, sorted.
    pub fn sessions(&self) -> impl Iterator<Item = SessionId> {
        self.entries.iter().map(|entry| SessionId::from(&entry.name))
    }

    /// Their names.
    pub(in crate::store) fn names(&self) -> impl ExactSizeIterator<Item = &Name> {
        self.entries.iter().map(|entry| &entry.name)
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

/// Entries that share bytes are how a small file unpacks to one without bounds.
fn overlap(entries: &mut [Entry]) -> bool {
    entries.sort_unstable_by_key(|entry| entry.start);
    entries
        .windows(2)
        .any(|two| two[0].start + u64::from(two[0].packed) > two[1].start)
}
