//! Reading one short session after the other without asking for memory each time.

use std::fs::File;
use std::io::{BufRead, Read};
use std::os::fd::AsFd;
use std::os::unix::fs::FileExt;
use std::path::Path;

use flate2::{Decompress, FlushDecompress, Status};
use rustix::fs::fstat;

use super::pack::{Cover, Extent};
use crate::store::SessionId;
use crate::store::error::StoreError;
use crate::store::folder::SessionFolder;
use crate::store::identity::Identity;
use crate::store::name::Name;
use crate::store::open::{self, Access};
use crate::store::records::Records;

/// Longest session that is read at once, in bytes. A longer one is read line by line: memory must not grow with it.
const SHORT: u64 = 256 << 10;

/// The records of a session, read in a room where it is short.
pub type Streamed<'r> = Records<Box<dyn BufRead + 'r>>;

/// Room for the text of one session, used again for the next.
#[derive(Debug, Default)]
pub struct Room {
    text: Vec<u8>,
    packed: Vec<u8>,
    inflate: Option<Decompress>,
    /// The pack that was read from last, held open: the next session is probably in it.
    pack: Option<(Identity, File)>,
}

impl SessionFolder {
    /// The same as [`stream`](Self::stream), in room that was used before: several times as fast where sessions are short.
    ///
    /// # Errors
    ///
    /// As [`stream`](Self::stream).
    pub fn stream_in<'r>(&self, id: &SessionId, room: &'r mut Room) -> Result<Streamed<'r>, StoreError> {
        self.stream_with(id, room).map(|(records, _)| records)
    }

    /// The same, with the file that it was read from where that was short and sound.
    pub(in crate::store) fn stream_with<'r>(
        &self,
        id: &SessionId,
        room: &'r mut Room,
    ) -> Result<(Streamed<'r>, Option<Identity>), StoreError> {
        // Whatever is not short and sound goes the usual way, which says what is wrong with it.
        match self.short(id, room) {
            Some(identity) => Ok((Records::new(Box::new(room.text.as_slice())), Some(identity))),
            None => Ok((Records::new(self.source(id)?.text), None)),
        }
    }

    /// Reads a session that is short.
    fn short(&self, id: &SessionId, room: &mut Room) -> Option<Identity> {
        if !self.only_packs {
            let file = Self::file_name(id);
            // What is wrong with it is not said here, so no path is asked for.
            let name = Path::new(&file);
            match open::with_status(self.fd.as_fd(), name, name, Access::Read) {
                Ok((file, status)) => {
                    let identity = Identity::of(&status);
                    return room.read(&file, identity.size()).map(|()| identity);
                }
                Err(StoreError::NoSession { .. }) => {}
                Err(_) => return None,
            }
        }
        let packs = self.known().clone()?;
        let name = Name::from(id.clone());
        let (pack, entry) = (packs.sound.iter()).find_map(|pack| Some((pack, pack.find(&name)?)))?;
        let unpacked = room.unpack(self, &pack.cover, entry.extent);
        unpacked.map(|()| pack.cover.identity())
    }
}

impl Room {
    /// What was read last.
    pub(in crate::store) fn text(&self) -> &[u8] {
        &self.text
    }

    /// Reads no further than a file goes now: another process may be recording.
    fn read(&mut self, file: &File, length: u64) -> Option<()> {
        let length = usize::try_from(length).ok().filter(|_| length <= SHORT)?;
        self.text.resize(length, 0);
        // Whoever reads to an end asks once more, to learn that nothing follows.
        (&*file).read_exact(&mut self.text).ok()
    }

    /// Reads an entry of a pack whose file is still the one that the table of contents was read from.
    pub(in crate::store) fn unpack(
        &mut self,
        folder: &SessionFolder,
        pack: &Cover,
        entry: Extent,
    ) -> Option<()> {
        if u64::from(entry.size.max(entry.packed)) > SHORT {
            return None;
        }
        let is_open = (self.pack.as_ref()).is_some_and(|(open, _)| *open == pack.identity);
        if !is_open {
            let file = open::session(folder.fd.as_fd(), pack.name.as_ref(), &pack.path, Access::Read).ok()?;
            let is_same = Identity::of(&fstat(&file).ok()?) == pack.identity;
            self.pack = is_same.then_some((pack.identity, file));
        }
        let (_, file) = self.pack.as_ref()?;
        let into = if entry.deflated {
            &mut self.packed
        } else {
            &mut self.text
        };
        into.resize(entry.packed as usize, 0);
        file.read_exact_at(into, entry.start).ok()?;
        if entry.deflated {
            self.inflate(entry.size as usize)?;
        }
        let is_whole = self.text.len() == entry.size as usize && crc32fast::hash(&self.text) == entry.sum;
        is_whole.then_some(())
    }

    /// Unpacks what was read, all of it, into so many bytes.
    fn inflate(&mut self, size: usize) -> Option<()> {
        let inflate = self.inflate.get_or_insert_with(|| Decompress::new(false));
        inflate.reset(false);
        // One byte more than is due shows that nothing follows.
        self.text.resize(size + 1, 0);
        let status = inflate.decompress(&self.packed, &mut self.text, FlushDecompress::Finish);
        let is_whole = matches!(status, Ok(Status::StreamEnd))
            && inflate.total_in() == self.packed.len() as u64
            && inflate.total_out() == size as u64;
        self.text.truncate(size);
        is_whole.then_some(())
    }
}
