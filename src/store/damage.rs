//! What can be wrong with a line of a session file.

use std::fmt;

use jiff::Timestamp;

use super::{FORMAT, Hash, LINE_LIMIT};
use crate::source::safe;

/// The first thing that is wrong with a session file, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Damage {
    /// The line, from 1.
    pub line: u64,
    /// What is wrong with it.
    pub kind: DamageKind,
}

/// The ways in which a line can be wrong.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DamageKind {
    /// Longer than [`LINE_LIMIT`].
    TooLong,
    /// Not UTF-8, from this byte of the line on (from 0).
    NotUtf8(usize),
    /// Not a record as this program writes it; the text says what is wrong, and may quote the line.
    Malformed(String),
    /// Written by a newer version of this program, in this format.
    NewerFormat(u64),
    /// A record is missing, doubled or moved.
    Sequence {
        /// The number that was due.
        due: u64,
        /// The number that the line has.
        found: u64,
    },
    /// The line does not name the sum of the line before it.
    Chain {
        /// The sum of the line before.
        due: Hash,
        /// What the line names.
        found: Hash,
    },
    /// The line is not as it was written: its own sum is another.
    Sum,
}

impl fmt::Display for Damage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let line = self.line;
        match &self.kind {
            DamageKind::TooLong => write!(f, "line {line} is longer than {LINE_LIMIT} bytes"),
            DamageKind::NotUtf8(byte) => write!(f, "line {line} is not UTF-8 from its byte {byte} on"),
            DamageKind::Malformed(what) => write!(f, "line {line} is not a record: {}", safe(what).cut(160)),
            DamageKind::NewerFormat(version) => write!(
                f,
                "line {line} says format {version}, and this program reads no format above {FORMAT}"
            ),
            DamageKind::Sequence { due, found } => write!(
                f,
                "line {line} has number {found} where {due} is due: a record is missing, doubled or moved"
            ),
            DamageKind::Sum => write!(f, "line {line} was changed: its own sum is another"),
            DamageKind::Chain { due, .. } if *due == Hash::ZERO => {
                write!(f, "line {line} names a record before it, but is the first")
            }
            DamageKind::Chain { .. } => write!(
                f,
                "line {line} does not follow from line {}: one of the two was changed, or a line between them removed",
                line.saturating_sub(1)
            ),
        }
    }
}

/// Something odd in a session file that is no damage: the clock went back between two records.
///
/// Records are ordered by their number, never by their time.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Warning {
    /// The line with the earlier time, from 1.
    pub line: u64,
    /// The time of the record before.
    pub before: Timestamp,
    /// The time of this record.
    pub time: Timestamp,
}

impl fmt::Display for Warning {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "line {} is dated {}, before the record it follows ({}): the clock was set back",
            self.line, self.time, self.before
        )
    }
}
