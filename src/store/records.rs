//! Records read one after the other, in bounded memory.

use std::fmt;
use std::io::{self, BufRead, Read};

use jiff::Timestamp;
use memchr::{memchr, memmem};

use super::canonical;
use super::damage::{Damage, DamageKind, Warning};
use super::record::{Chain, Record};
use super::{Hash, LINE_LIMIT};

/// Most warnings that are kept of one file; further ones are only counted.
const WARNINGS: usize = 100;

/// Reads a session file record by record, and holds no more than one line of it.
///
/// It ends at the first damage, which it gives as its last item; what follows a damage proves nothing.
#[derive(Debug)]
pub struct Records<R> {
    reader: R,
    chain: Chain,
    report: ChainReport,
    line: Vec<u8>,
    ended: bool,
}

/// Why no more records can be read.
#[derive(Debug)]
pub enum ReadError {
    /// The next line is damaged.
    Damage(Damage),
    /// The file could not be read on.
    Io(io::Error),
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Damage(damage) => damage.fmt(f),
            Self::Io(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for ReadError {}

/// A record in its place, its event read already.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Decoded<E> {
    /// The line, from 1.
    pub line: u64,
    /// When it was recorded.
    pub time: Timestamp,
    /// What happened; none where the record is sound, but of something that the reader does not know.
    pub event: Option<E>,
}

/// What the chain of a session file says of it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ChainReport {
    /// How many records are whole and in their place, up to the first damage.
    pub records: u64,
    /// How many bytes they take, newlines included.
    pub bytes: u64,
    /// The sum of the last of them, zero if there is none. Whoever notes it down elsewhere can later tell whether the
    /// file was cut at the end of a line, or its last record changed: the chain alone cannot.
    pub head: Hash,
    /// The first thing that is wrong.
    pub damage: Option<Damage>,
    /// How many bytes stand after the last newline: a record that was cut off while it was written.
    pub torn_tail: Option<u64>,
    /// The first hundred times at which the clock went back.
    pub warnings: Vec<Warning>,
    /// How many more times it did.
    pub more_warnings: u64,
}

impl ChainReport {
    /// Whether every byte of the file belongs to a record in its place.
    pub fn is_whole(&self) -> bool {
        self.damage.is_none() && self.torn_tail.is_none()
    }
}

impl<R: BufRead> Records<R> {
    /// Reads from the start of a session file.
    pub fn new(reader: R) -> Self {
        Self {
            reader,
            chain: Chain::EMPTY,
            report: ChainReport::default(),
            line: Vec::new(),
            ended: false,
        }
    }

    /// What is known so far; after the last item, of the whole file.
    pub fn report(&self) -> &ChainReport {
        &self.report
    }

    /// The next record, with its event read by `decode` where it lies, at the time it was recorded. That must refuse what is no
    /// single JSON value and what has a key twice. All is checked as in [`next`](Iterator::next), in a third of the time.
    pub fn next_as<E>(
        &mut self,
        mut decode: impl FnMut(Timestamp, &str) -> Option<E>,
    ) -> Option<Result<Decoded<E>, ReadError>> {
        if self.ended {
            return None;
        }
        if let Some(decoded) = self.in_place(&mut decode) {
            return Some(decoded);
        }
        match self.read_line() {
            Ok(Some(Ok(()))) => {}
            Ok(Some(Err(kind))) => return Some(Err(self.damaged(kind))),
            Ok(None) => {
                self.ended = true;
                return None;
            }
            Err(error) => {
                self.ended = true;
                return Some(Err(ReadError::Io(error)));
            }
        }
        let line = &self.line[..self.line.len() - 1];
        if let Some(taken) = canonical::take_apart(&self.chain, line)
            && let Some(event) = decode(taken.time, taken.event)
        {
            let (time, head, length) = (taken.time, taken.head, self.line.len());
            return Some(Ok(self.taken(time, head, length, event)));
        }
        match self.accept() {
            Ok(record) => Some(Ok(Decoded {
                line: record.line,
                time: record.time,
                event: decode(record.time, record.event.get()),
            })),
            Err(kind) => Some(Err(self.damaged(kind))),
        }
    }

    /// The next record without copying its line, where that lies in the reader's buffer as a whole, is written as this program
    /// does, and belongs there; none for any other, which is still to be read then.
    fn in_place<E>(
        &mut self,
        decode: &mut impl FnMut(Timestamp, &str) -> Option<E>,
    ) -> Option<Result<Decoded<E>, ReadError>> {
        let buffer = match self.reader.fill_buf() {
            Ok(buffer) => buffer,
            Err(error) if error.kind() == io::ErrorKind::Interrupted => return None,
            Err(error) => {
                self.ended = true;
                return Some(Err(ReadError::Io(error)));
            }
        };
        let length = memchr(b'\n', buffer).filter(|length| *length <= LINE_LIMIT)?;
        let taken = canonical::take_apart(&self.chain, &buffer[..length])?;
        let event = decode(taken.time, taken.event)?;
        let (time, head, length) = (taken.time, taken.head, length + 1);
        self.reader.consume(length);
        Some(Ok(self.taken(time, head, length, event)))
    }

    /// Moves on to a line that was found to belong there.
    fn taken<E>(&mut self, time: Timestamp, head: Hash, length: usize, event: E) -> Decoded<E> {
        let warning = self.chain.follow(time, head);
        self.count(warning, length);
        Decoded {
            line: self.chain.records,
            time,
            event: Some(event),
        }
    }

    /// Reads to the end, hands each record on, and reports.
    pub(super) fn each(mut self, mut take: impl FnMut(Record)) -> io::Result<ChainReport> {
        for record in &mut self {
            match record {
                Ok(record) => take(record),
                Err(ReadError::Damage(_)) => {}
                Err(ReadError::Io(error)) => return Err(error),
            }
        }
        Ok(self.report)
    }

    /// Reads the next line, with its newline.
    fn read_line(&mut self) -> io::Result<Option<Result<(), DamageKind>>> {
        self.line.clear();
        let most = LINE_LIMIT as u64 + 1;
        (&mut self.reader).take(most).read_until(b'\n', &mut self.line)?;
        if self.line.last() == Some(&b'\n') {
            return Ok(Some(Ok(())));
        }
        if self.line.len() > LINE_LIMIT {
            return Ok(Some(Err(DamageKind::TooLong)));
        }
        if let Some(what) = self.is_no_tail() {
            return Ok(Some(Err(DamageKind::Malformed(what.to_owned()))));
        }
        self.report.torn_tail = Some(self.line.len() as u64).filter(|&length| length > 0);
        Ok(None)
    }

    /// Why what follows the last newline is no record that was cut off while it was written. Records that lost their newlines are
    /// told here, or a whole call would pass for one that was never begun.
    fn is_no_tail(&self) -> Option<&'static str> {
        const START: &[u8] = br#"{"seq":"#;
        if memmem::find_iter(&self.line, START).any(|place| place > 0) {
            return Some("another record follows in the same line");
        }
        // What stands behind whole records is set aside when they are taken up, whatever it is.
        let is_start = self.line.iter().zip(START).all(|(is, due)| is == due);
        (self.report.records == 0 && !is_start && self.line.first() != Some(&0))
            .then_some("it does not begin as one")
    }

    /// Takes the line that was read if it belongs there.
    fn accept(&mut self) -> Result<Record, DamageKind> {
        let (record, warning) = self.chain.accept(&self.line[..self.line.len() - 1])?;
        self.count(warning, self.line.len());
        Ok(record)
    }

    /// Counts the line that was taken, which has so many bytes with its newline.
    fn count(&mut self, warning: Option<Warning>, length: usize) {
        self.report.records = self.chain.records;
        self.report.head = self.chain.head;
        self.report.bytes += length as u64;
        match warning {
            Some(warning) if self.report.warnings.len() < WARNINGS => self.report.warnings.push(warning),
            Some(_) => self.report.more_warnings += 1,
            None => {}
        }
    }

    fn damaged(&mut self, kind: DamageKind) -> ReadError {
        self.ended = true;
        let line = self.report.records + 1;
        ReadError::Damage(self.report.damage.insert(Damage { line, kind }).clone())
    }
}

impl<R: BufRead> Iterator for Records<R> {
    type Item = Result<Record, ReadError>;

    fn next(&mut self) -> Option<Self::Item> {
        if self.ended {
            return None;
        }
        match self.read_line() {
            Ok(Some(Ok(()))) => match self.accept() {
                Ok(record) => return Some(Ok(record)),
                Err(kind) => return Some(Err(self.damaged(kind))),
            },
            Ok(Some(Err(kind))) => return Some(Err(self.damaged(kind))),
            Ok(None) => self.ended = true,
            Err(error) => {
                self.ended = true;
                return Some(Err(ReadError::Io(error)));
            }
        }
        None
    }
}
