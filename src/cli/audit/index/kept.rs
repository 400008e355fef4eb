//! What is kept of each session: the call that it came to, and what it was read from.
//!
//! ```text
//! a line that names the format
//! block: length, sum, bytes           what it is of
//! block: length, sum, bytes           sessions in the order of their ids, each with what the system said of its file,
//! …                                   what its library said, and the call
//! block: length 0                     the end
//! ```
//!
//! An audit goes through its sessions and through this side by side, so that neither is held in memory. A kept call stands in for a session
//! that lies in one place only, whose file (or pack) is by name, device, inode, size and both times the one that was read, had rested
//! when it was read, and whose library still says the same of the names in it. Whatever else there is, is read anew: a kept call can
//! be missing, too old or of another folder, and costs no more than the time to read that session. A block that is not what was written
//! ends the kept calls, and the audit says so.

use std::fs::File;
use std::io::{self, BufReader, Read, Write};
use std::sync::Arc;

use compact_str::CompactString;
use jiff::Timestamp;

use super::block::{Block, Reading, Writing};
use super::call;
use crate::audit::Call;
use crate::store::{Draft, Hash, Identity, Name, SessionId};
use crate::walk::LibraryMark;

/// What a kept file begins with.
const FORMAT: &[u8] = b"proofwalk calls 1\n";

/// Bytes of a block, about.
const BLOCK: usize = 1 << 16;

/// Most bytes of a block that are read: only what was read at once is kept, so no call comes near it.
const LARGEST: usize = 1 << 22;

/// What a call was read from and told by.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(in crate::cli::audit) struct Source {
    /// The file, or the pack.
    pub file: Identity,
    pub walked: Arc<Walked>,
}

/// The library of a call, as its session names it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(in crate::cli::audit) struct Walked {
    pub name: CompactString,
    pub edition: CompactString,
    pub hash: CompactString,
    /// The sum of what its names mean.
    pub meanings: CompactString,
}

impl Source {
    /// A call's file and library.
    pub fn new(file: Identity, walked: Arc<Walked>) -> Self {
        Self { file, walked }
    }
}

impl Walked {
    /// The library that a session names, and the sum of what its names mean.
    pub fn new(mark: &LibraryMark, meanings: &Hash) -> Self {
        Self {
            name: mark.name.as_str().into(),
            edition: mark.edition.as_str().into(),
            hash: mark.hash.as_str().into(),
            meanings: meanings.to_string().into(),
        }
    }

    /// Whether it is the one that a session names, and its names mean the same.
    pub fn is(&self, mark: &LibraryMark, meanings: &Hash) -> bool {
        self.name == mark.name
            && self.edition == mark.edition
            && self.hash == mark.hash
            && meanings.is_written_as(&self.meanings)
    }
}

/// A call that was kept.
pub(in crate::cli::audit) struct Kept {
    pub source: Source,
    pub call: Call,
}

/// Kept calls, one after the other.
pub(in crate::cli::audit) struct Calls {
    file: BufReader<File>,
    /// How long ago the first of them may have been read.
    pub since: Timestamp,
    /// How many sessions there were then.
    pub sessions: usize,
    block: Option<Block>,
    at: usize,
    before: Before,
    next: Option<(Name, Kept)>,
    is_at_end: bool,
    pub is_damaged: bool,
}

/// What the sessions of a block are told against: most are like the one before.
#[derive(Default)]
struct Before {
    file: Option<Identity>,
    walked: Option<Arc<Walked>>,
}

impl Calls {
    /// Those of an archive; none where the file is not what was kept of it.
    pub fn open(file: File, of: &Hash) -> Option<Self> {
        let mut calls = Self {
            file: BufReader::new(file),
            since: Timestamp::UNIX_EPOCH,
            sessions: 0,
            block: None,
            at: 0,
            before: Before::default(),
            next: None,
            is_at_end: false,
            is_damaged: false,
        };
        let mut format = [0; FORMAT.len()];
        calls.file.read_exact(&mut format).ok()?;
        let about = calls.block().ok()??;
        let mut reading = about.begin();
        let is_same = format == FORMAT && reading.text()? == *of.to_string();
        calls.since = Timestamp::from_second(reading.signed()?).ok()?;
        calls.sessions = reading.number()?.try_into().ok()?;
        is_same.then_some(calls)
    }

    /// The kept call of a session. Sessions are asked for in the order of their ids.
    pub fn find(&mut self, name: &Name) -> Option<Kept> {
        loop {
            if self.next.is_none() {
                self.next = self.read();
            }
            match self.next.as_ref()?.0.cmp(name) {
                std::cmp::Ordering::Less => self.next = None,
                std::cmp::Ordering::Equal => return self.next.take().map(|(_, kept)| kept),
                std::cmp::Ordering::Greater => return None,
            }
        }
    }

    /// The next, if there is one.
    fn read(&mut self) -> Option<(Name, Kept)> {
        if self.is_damaged || self.is_at_end {
            return None;
        }
        while self
            .block
            .as_ref()
            .is_none_or(|block| block.at(self.at).is_at_end())
        {
            match self.block() {
                Ok(Some(block)) => {
                    self.at = block.begin().place();
                    self.block = Some(block);
                    self.before = Before::default();
                }
                Ok(None) => {
                    self.is_at_end = true;
                    return None;
                }
                Err(_) => {
                    self.is_damaged = true;
                    return None;
                }
            }
        }
        let mut reading = self.block.as_ref()?.at(self.at);
        let read = self.before.read(&mut reading);
        self.at = reading.place();
        self.is_damaged = read.is_none();
        read
    }

    /// The next block; none at the end.
    fn block(&mut self) -> io::Result<Option<Block>> {
        let mut number = [0; 4];
        self.file.read_exact(&mut number)?;
        let length = u32::from_le_bytes(number) as usize;
        self.file.read_exact(&mut number)?;
        let damaged = || io::Error::from(io::ErrorKind::InvalidData);
        if length > LARGEST {
            return Err(damaged());
        }
        let mut bytes = vec![0; length];
        self.file.read_exact(&mut bytes)?;
        if crc32fast::hash(&bytes) != u32::from_le_bytes(number) {
            return Err(damaged());
        }
        if bytes.is_empty() {
            return Ok(None);
        }
        Block::open(bytes).map(Some).ok_or_else(damaged)
    }
}

impl Before {
    fn read(&mut self, from: &mut Reading<'_>) -> Option<(Name, Kept)> {
        let name = match from.number()? {
            0 => Name::Uuid(from.bytes(16)?.try_into().ok()?),
            _ => Name::from(SessionId::parse(&from.text()?).ok()?),
        };
        let mut file = self.file.map_or([0; Identity::WORDS], Identity::words);
        for word in &mut file {
            *word = word.wrapping_add(from.signed()? as u64);
        }
        let file = Identity::from(file);
        let walked = Walked {
            name: from.text()?,
            edition: from.text()?,
            hash: from.text()?,
            meanings: from.text()?,
        };
        let walked = match &self.walked {
            Some(before) if **before == walked => Arc::clone(before),
            _ => Arc::new(walked),
        };
        (self.file, self.walked) = (Some(file), Some(Arc::clone(&walked)));
        // Its session and its folder are those of whoever asks for it.
        let call = call::read(from, "", 0)?;
        let source = Source { file, walked };
        Some((name, Kept { source, call }))
    }
}

/// Calls that are being kept.
pub(in crate::cli::audit) struct Keeping {
    draft: Draft,
    block: Writing,
    before: Option<Identity>,
    is_sound: bool,
}

impl Keeping {
    /// Of an archive of so many sessions; the first of them may have been read at this time.
    pub fn new(draft: Draft, of: &Hash, since: Timestamp, sessions: usize) -> Self {
        let mut keeping = Self {
            draft,
            block: Writing::default(),
            before: None,
            is_sound: true,
        };
        keeping.is_sound = keeping.draft.write_all(FORMAT).is_ok();
        keeping.block.text(&of.to_string());
        keeping.block.signed(since.as_second());
        keeping.block.number(sessions as u64);
        keeping.flush();
        keeping
    }

    /// One more, after all whose ids sort before.
    pub fn add(&mut self, name: &Name, source: &Source, call: &Call) {
        let block = &mut self.block;
        match name {
            Name::Uuid(bytes) => {
                block.number(0_u64);
                block.bytes(bytes);
            }
            Name::Named(id) => {
                block.number(1_u64);
                block.text(id.as_str());
            }
        }
        let before = self.before.map_or([0; Identity::WORDS], Identity::words);
        for (word, before) in source.file.words().into_iter().zip(before) {
            block.signed(word.wrapping_sub(before) as i64);
        }
        self.before = Some(source.file);
        let Walked {
            name,
            edition,
            hash,
            meanings,
        } = &*source.walked;
        for text in [name, edition, hash, meanings] {
            block.text(text);
        }
        call::write(block, call);
        if block.len() >= BLOCK {
            self.flush();
        }
    }

    /// There are no more: they take the place of those that were kept before.
    pub fn finish(mut self) {
        self.flush();
        self.put(&[]);
        if self.is_sound {
            self.draft.finish();
        }
    }

    fn flush(&mut self) {
        if self.block.len() > 0 {
            let bytes = self.block.take();
            self.put(&bytes);
            self.before = None;
        }
    }

    fn put(&mut self, bytes: &[u8]) {
        let head = [bytes.len() as u32, crc32fast::hash(bytes)].map(u32::to_le_bytes);
        let out = &mut self.draft;
        self.is_sound = self.is_sound
            && out
                .write_all(head.as_flattened())
                .and_then(|()| out.write_all(bytes))
                .is_ok();
    }
}
