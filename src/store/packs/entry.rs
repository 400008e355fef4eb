//! A session read out of a pack: no more bytes than its pack says, and those that were packed.

use std::fs::File;
use std::io::{self, BufReader, Read, Seek, SeekFrom};
use std::os::fd::{AsFd, OwnedFd};

use flate2::Crc;
use flate2::bufread::DeflateDecoder;
use rustix::fs::fstat;

use super::pack::{Cover, Entry, Extent, Pack};
use crate::store::error::StoreError;
use crate::store::identity::Identity;
use crate::store::open::{self, Access};

/// The bytes of an entry, with their sum checked when the last has been read.
pub(super) struct EntryText {
    inner: Box<dyn Read + Send>,
    sum: Crc,
    wanted: u32,
    left: u64,
    checked: bool,
}

impl Pack {
    /// Opens an entry; none where the pack's file is another by now.
    pub(super) fn text(&self, folder: &OwnedFd, entry: &Entry) -> Result<Option<EntryText>, StoreError> {
        self.cover.text(folder, &entry.extent)
    }
}

impl Cover {
    fn text(&self, folder: &OwnedFd, extent: &Extent) -> Result<Option<EntryText>, StoreError> {
        let file = match open::session(folder.as_fd(), self.name.as_ref(), &self.path, Access::Read) {
            Ok(file) => file,
            Err(StoreError::NoSession { .. }) => return Ok(None),
            Err(error) => return Err(error),
        };
        let unreadable = |cause| StoreError::unreadable(&self.path, cause);
        let status = fstat(&file).map_err(|error| unreadable(error.into()))?;
        if Identity::of(&status) != self.identity {
            return Ok(None);
        }
        EntryText::new(file, extent).map(Some).map_err(unreadable)
    }
}

impl EntryText {
    /// Reads an entry from the file of its pack.
    pub fn new(mut file: File, entry: &Extent) -> io::Result<Self> {
        file.seek(SeekFrom::Start(entry.start))?;
        let packed = file.take(u64::from(entry.packed));
        Ok(Self {
            inner: if entry.deflated {
                Box::new(DeflateDecoder::new(BufReader::new(packed)))
            } else {
                Box::new(packed)
            },
            sum: Crc::new(),
            wanted: entry.sum,
            left: u64::from(entry.size),
            checked: false,
        })
    }

    /// Once all is read: nothing may follow, and the sum must be right.
    fn check(&mut self) -> io::Result<()> {
        if !self.checked {
            if self.inner.read(&mut [0])? > 0 {
                return Err(damaged("a packed session is longer than its pack says"));
            }
            if self.sum.sum() != self.wanted {
                return Err(damaged(
                    "a packed session is not what was packed: its sum differs",
                ));
            }
            self.checked = true;
        }
        Ok(())
    }
}

impl Read for EntryText {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        if self.left == 0 {
            return self.check().map(|()| 0);
        }
        let most = into.len().min(usize::try_from(self.left).unwrap_or(usize::MAX));
        let read = match self.inner.read(&mut into[..most]) {
            Err(error) if error.kind() == io::ErrorKind::InvalidInput => {
                Err(damaged("a packed session cannot be unpacked"))
            }
            other => other,
        }?;
        if read == 0 && most > 0 {
            return Err(damaged("a packed session is shorter than its pack says"));
        }
        self.sum.update(&into[..read]);
        self.left -= read as u64;
        Ok(read)
    }
}

fn damaged(what: &'static str) -> io::Error {
    io::Error::new(io::ErrorKind::InvalidData, what)
}
