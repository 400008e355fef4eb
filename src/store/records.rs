//! Records read one after the other, in bounded memory.

use std::fmt;
use std::io::{self, BufRead, Read};

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

    fn read(&mut self) -> io::Result<Option<Result<Record, DamageKind>>> {
        self.line.clear();
        let most = LINE_LIMIT as u64 + 1;
        (&mut self.reader).take(most).read_until(b'\n', &mut self.line)?;
        let length = self.line.len() as u64;
        let Some((b'\n', line)) = self.line.split_last() else {
            if self.line.len() > LINE_LIMIT {
                return Ok(Some(Err(DamageKind::TooLong)));
            }
            self.report.torn_tail = Some(length).filter(|&length| length > 0);
            return Ok(None);
        };
        Ok(Some(self.chain.accept(line).map(|(record, warning)| {
            self.report.records = self.chain.records;
            self.report.head = self.chain.head;
            self.report.bytes += length;
            match warning {
                Some(warning) if self.report.warnings.len() < WARNINGS => self.report.warnings.push(warning),
                Some(_) => self.report.more_warnings += 1,
                None => {}
            }
            record
        })))
    }
}

impl<R: BufRead> Iterator for Records<R> {
    type Item = Result<Record, ReadError>;

    fn next(&mut self) -> Option<Self::Item> {
        if self.ended {
            return None;
        }
        let item = match self.read() {
            Ok(Some(Ok(record))) => return Some(Ok(record)),
            Ok(Some(Err(kind))) => {
                let line = self.report.records + 1;
                let damage = self.report.damage.insert(Damage { line, kind });
                Some(Err(ReadError::Damage(damage.clone())))
            }
            Ok(None) => None,
            Err(error) => Some(Err(ReadError::Io(error))),
        };
        self.ended = true;
        item
    }
}
