//! A session that is being recorded.

use std::fs::File;
use std::io::{self, Write};
use std::os::unix::fs::MetadataExt;
use std::path::{Path, PathBuf};

use jiff::Timestamp;

use super::error::{Cause, StoreError};
use super::holder::Note;
use super::record::{Chain, encode};
use super::{Hash, LINE_LIMIT, SESSION_LIMIT, strict};

/// What a journal asks of the file it writes to.
trait Medium: std::fmt::Debug + Send {
    /// How long it is, and how many names it has.
    fn status(&self) -> io::Result<(u64, u64)>;
    fn write(&mut self, bytes: &[u8]) -> io::Result<()>;
    fn sync(&mut self) -> io::Result<()>;
    fn cut(&mut self, length: u64) -> io::Result<()>;
}

impl Medium for File {
    fn status(&self) -> io::Result<(u64, u64)> {
        self.metadata().map(|status| (status.len(), status.nlink()))
    }

    fn write(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.write_all(bytes)
    }

    fn sync(&mut self) -> io::Result<()> {
        self.sync_data()
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        self.set_len(length)
    }
}

/// A file whose loss would be no loss: nobody waits for the disk.
#[derive(Debug)]
struct Loose(File);

impl Medium for Loose {
    fn status(&self) -> io::Result<(u64, u64)> {
        self.0.status()
    }

    fn write(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.0.write_all(bytes)
    }

    fn sync(&mut self) -> io::Result<()> {
        Ok(())
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        self.0.cut(length)
    }
}

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

#[cfg(test)]
mod tests {
    use std::sync::{Arc, Mutex};

    use super::*;

    /// A disk that refuses what the test says, and shows what it holds.
    #[derive(Clone, Debug, Default)]
    struct Disk(Arc<Mutex<Inner>>);

    #[derive(Debug, Default)]
    struct Inner {
        bytes: Vec<u8>,
        /// How many more bytes there is room for.
        room: Option<usize>,
        syncs: usize,
        sync_fails: bool,
        cut_fails: bool,
    }

    impl Medium for Disk {
        fn status(&self) -> io::Result<(u64, u64)> {
            Ok((self.0.lock().unwrap().bytes.len() as u64, 1))
        }

        fn write(&mut self, bytes: &[u8]) -> io::Result<()> {
            let mut disk = self.0.lock().unwrap();
            let fits = disk.room.unwrap_or(usize::MAX).min(bytes.len());
            disk.bytes.extend(&bytes[..fits]);
            if fits < bytes.len() {
                return Err(io::ErrorKind::StorageFull.into());
            }
            Ok(())
        }

        fn sync(&mut self) -> io::Result<()> {
            let mut disk = self.0.lock().unwrap();
            disk.syncs += 1;
            // As systems do: the failure is told once, and the next sync finds nothing wrong.
            match std::mem::take(&mut disk.sync_fails) {
                true => Err(io::Error::other("input/output error")),
                false => Ok(()),
            }
        }

        fn cut(&mut self, length: u64) -> io::Result<()> {
            let mut disk = self.0.lock().unwrap();
            if disk.cut_fails {
                return Err(io::Error::other("input/output error"));
            }
            disk.bytes.truncate(length as usize);
            Ok(())
        }
    }

    fn journal() -> (Journal, Disk) {
        let disk = Disk::default();
        let journal = Journal {
            _note: None,
            file: Box::new(disk.clone()),
            path: "s.jsonl".into(),
            bytes: 0,
            chain: Chain::EMPTY,
            state: State::Sound,
        };
        (journal, disk)
    }

    fn append(journal: &mut Journal, event: &str) -> Result<(), String> {
        journal
            .append(&[event.to_owned()], Timestamp::UNIX_EPOCH)
            .map_err(|error| error.to_string())
    }

    fn change(disk: &Disk, change: impl FnOnce(&mut Inner)) {
        change(&mut disk.0.lock().unwrap());
    }

    /// The records on the disk, which must all be whole.
    #[track_caller]
    fn whole(disk: &Disk) -> u64 {
        let report = super::super::verify(disk.0.lock().unwrap().bytes.as_slice()).unwrap();
        assert!(report.is_whole(), "{report:?}");
        report.records
    }

    #[test]
    fn the_events_of_one_append_are_synced_once() {
        let (mut journal, disk) = journal();
        journal
            .append(&["{}".into(), "{}".into()], Timestamp::UNIX_EPOCH)
            .unwrap();
        assert_eq!(
            (whole(&disk), disk.0.lock().unwrap().syncs, journal.len()),
            (2, 1, 2)
        );
    }

    #[test]
    fn a_full_disk_leaves_whole_records_and_a_journal_to_try_again_with() {
        let (mut journal, disk) = journal();
        append(&mut journal, "{}").unwrap();
        let head = journal.head();
        change(&disk, |disk| disk.room = Some(30));
        assert_eq!(
            append(&mut journal, "{}").unwrap_err(),
            "s.jsonl: NOT SAVED: no storage space; what was half written has been cut off again; free some space on this \
             disk and try again"
        );
        assert_eq!((whole(&disk), journal.head()), (1, head));
        change(&disk, |disk| disk.room = None);
        append(&mut journal, "{}").unwrap();
        assert_eq!(whole(&disk), 2);
    }

    #[test]
    fn half_a_line_that_cannot_be_cut_off_at_once_is_cut_off_before_the_next() {
        let (mut journal, disk) = journal();
        change(&disk, |disk| (disk.room, disk.cut_fails) = (Some(30), true));
        assert!(
            append(&mut journal, "{}")
                .unwrap_err()
                .contains("is left half written")
        );
        change(&disk, |disk| disk.room = None);
        assert!(
            append(&mut journal, "{}")
                .unwrap_err()
                .contains("is left half written")
        );
        change(&disk, |disk| disk.cut_fails = false);
        append(&mut journal, "{}").unwrap();
        assert_eq!(whole(&disk), 1);
    }

    #[test]
    fn after_a_failed_sync_nothing_more_is_written_or_synced() {
        let (mut journal, disk) = journal();
        append(&mut journal, "{}").unwrap();
        change(&disk, |disk| disk.sync_fails = true);
        assert_eq!(
            append(&mut journal, "{}").unwrap_err(),
            "s.jsonl: NOT SAVED: the disk did not confirm the record: input/output error; close this call, see to the \
             disk, and resume it"
        );
        let again = "s.jsonl: NOT SAVED: the disk failed earlier in this call; close this call and resume it";
        assert_eq!(append(&mut journal, "{}").unwrap_err(), again);
        assert_eq!(
            (whole(&disk), disk.0.lock().unwrap().syncs, journal.len()),
            (1, 2, 1)
        );
    }

    #[test]
    fn what_could_not_be_read_again_is_not_written() {
        let (mut journal, disk) = journal();
        for (event, why) in [
            (
                "{",
                "the event is no JSON text of one line: EOF while parsing an object at column 1",
            ),
            (
                "{\n}",
                "the event is no JSON text of one line: it has a line break between its parts",
            ),
            (
                r#"{"a":1,"a":2}"#,
                "the event is no JSON text of one line: the key `a` stands twice at column 13",
            ),
        ] {
            let error = append(&mut journal, event).unwrap_err();
            assert_eq!(error, format!("s.jsonl: NOT SAVED: {why}"));
        }
        let long = format!("\"{}\"", "x".repeat(LINE_LIMIT));
        assert!(
            append(&mut journal, &long)
                .unwrap_err()
                .contains("shorten its text")
        );
        journal.bytes = SESSION_LIMIT - 10;
        assert!(append(&mut journal, "{}").unwrap_err().contains("start another"));
        assert_eq!(whole(&disk), 0);
    }

    #[test]
    fn the_longest_line_that_is_written_is_read_again() {
        let (mut journal, disk) = journal();
        let around = encode(0, Timestamp::UNIX_EPOCH, Hash::ZERO, "\"\"").len();
        append(&mut journal, &format!("\"{}\"", "x".repeat(LINE_LIMIT - around))).unwrap();
        assert_eq!(whole(&disk), 1);
    }
}
