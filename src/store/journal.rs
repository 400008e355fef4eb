//! A session that is being recorded.

mod medium;
#[cfg(test)]
mod tests;

use std::fs::File;
use std::io;
use std::path::{Path, PathBuf};

use jiff::Timestamp;

use self::medium::{Loose, Medium};
use super::error::{Cause, StoreError};
use super::holder::Note;
use super::record::{Chain, encode};
use super::{Hash, LINE_LIMIT, SESSION_LIMIT, strict};

/// One session, open for appending, and locked against every other process until it is dropped.
#[derive(Debug)]
pub struct Journal {
    // Dropped before the file, so that the note goes while the lock still holds.
    _note: Option<Note>,
    file: Box<dyn Medium>,
    path: PathBuf,
    /// The whole records on disk, in bytes.
    bytes: u64,
    chain: Chain,
    state: State,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum State {
    Sound,
    /// Half a line stands after the last record, and could not be cut off.
    Torn,
    /// The disk did not confirm a write. The system forgets such a failure once it has been told, so a later sync that
    /// succeeds would prove nothing.
    Poisoned,
}

impl Journal {
    pub(super) fn new(file: File, note: Note, path: &Path, chain: Chain, bytes: u64) -> Self {
        Self {
            _note: Some(note),
            file: Box::new(file),
            path: path.to_owned(),
            bytes,
            chain,
            state: State::Sound,
        }
    }

    /// Of a session that is made and not recorded: it can be made again, so it is not locked, and the disk confirms nothing.
    pub(super) fn loose(file: File, path: &Path) -> Self {
        Self {
            _note: None,
            file: Box::new(Loose(file)),
            path: path.to_owned(),
            bytes: 0,
            chain: Chain::EMPTY,
            state: State::Sound,
        }
    }

    /// The session's file, to name it to the user.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// How many records are on disk.
    pub fn len(&self) -> u64 {
        self.chain.records
    }

    /// Whether nothing has been recorded yet.
    pub fn is_empty(&self) -> bool {
        self.chain.records == 0
    }

    /// The sum of the last record, zero where there is none. Noted down elsewhere, it shows later whether the file was cut
    /// or its last record changed.
    pub fn head(&self) -> Hash {
        self.chain.head
    }

    /// Records these events, each a JSON text of one line, with one write; returns once they are on disk.
    ///
    /// # Errors
    ///
    /// [`StoreError::NotSaved`] where none of them was recorded; the same append may be tried again.
    /// [`StoreError::Poisoned`] where the disk did not confirm them, and on every append after that: close the journal and
    /// take the session up again, which shows what was kept. [`StoreError::Changed`] where another program touched the file.
    pub fn append(&mut self, events: &[String], time: Timestamp) -> Result<(), StoreError> {
        if self.state == State::Poisoned {
            return Err(StoreError::Poisoned {
                path: self.path.clone(),
                cause: None,
            });
        }
        let (lines, chain) = self.lines(events, time).map_err(|cause| self.not_saved(cause))?;
        if lines.is_empty() {
            return Ok(());
        }
        self.prepare()?;
        if let Err(cause) = self.file.write(lines.as_bytes()) {
            return Err(self.cut_back(cause));
        }
        if let Err(cause) = self.file.sync() {
            self.state = State::Poisoned;
            // Not confirmed, so not to be found when the session is taken up: the next append must write these bytes anew.
            // Where even that fails, taking up the session asks the disk again before it believes what it reads.
            let _ = self.file.cut(self.bytes);
            return Err(StoreError::Poisoned {
                path: self.path.clone(),
                cause: Some(cause),
            });
        }
        self.bytes += lines.len() as u64;
        self.chain = chain;
        Ok(())
    }

    /// The lines to write, and the chain as it is with them.
    fn lines(&self, events: &[String], time: Timestamp) -> Result<(String, Chain), Cause> {
        let mut lines = String::new();
        let mut chain = self.chain;
        for event in events {
            strict::check(event).map_err(Cause::NotAnEvent)?;
            if event.contains('\n') {
                return Err(Cause::NotAnEvent("it has a line break between its parts".into()));
            }
            let line = encode(chain.records, time, chain.head, event.trim());
            if line.len() > LINE_LIMIT {
                return Err(Cause::RecordTooLong(line.len()));
            }
            chain = Chain {
                records: chain.records + 1,
                head: Hash::of(line.as_bytes()),
                time: Some(time),
            };
            lines.push_str(&line);
            lines.push('\n');
            // What could be written but not taken up again would be lost. Asked of every line, to build no more than fits.
            if self.bytes + lines.len() as u64 > SESSION_LIMIT {
                return Err(Cause::SessionFull);
            }
        }
        Ok((lines, chain))
    }

    /// Sees that the file still ends where the last record ends, and still has its name.
    fn prepare(&mut self) -> Result<(), StoreError> {
        let (length, names) = self
            .file
            .status()
            .map_err(|cause| self.not_saved(Cause::Io(cause)))?;
        let torn = self.state == State::Torn && length > self.bytes;
        if names != 1 || (length != self.bytes && !torn) {
            return Err(StoreError::Changed {
                path: self.path.clone(),
            });
        }
        if torn {
            self.file
                .cut(self.bytes)
                .map_err(|cause| self.not_saved(Cause::LeftTorn(cause)))?;
        }
        self.state = State::Sound;
        Ok(())
    }

    fn cut_back(&mut self, cause: io::Error) -> StoreError {
        let cut = self.file.cut(self.bytes);
        if cut.is_err() {
            self.state = State::Torn;
            return self.not_saved(Cause::LeftTorn(cause));
        }
        self.not_saved(Cause::CutBack(cause))
    }

    fn not_saved(&self, cause: Cause) -> StoreError {
        let path = self.path.clone();
        StoreError::NotSaved { path, cause }
    }
}
