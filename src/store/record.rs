//! One line of a session file, and the chain that the lines form.

use std::fmt::Write as _;

use jiff::Timestamp;
use serde::Deserialize;
use serde_json::value::RawValue;

use super::damage::{DamageKind, Warning};
use super::strict::{self, Members};
use super::{FORMAT, Hash};

/// One record of a session: a line of its file.
#[derive(Clone, Debug)]
pub struct Record {
    /// The line, from 1.
    pub line: u64,
    /// The number in the session, from 0.
    pub seq: u64,
    /// When it was recorded, by the clock of the machine that did.
    pub time: Timestamp,
    /// The sum of the line before; zero for the first.
    pub prev: Hash,
    /// What happened, as JSON. It is well formed, and no object in it has a key twice.
    pub event: Box<RawValue>,
}

/// Writes a record's line, without its newline.
pub(super) fn encode(seq: u64, time: Timestamp, prev: Hash, event: &str) -> String {
    let mut line = String::with_capacity(160 + event.len());
    let format = if seq == 0 {
        format!(r#""format":{FORMAT},"#)
    } else {
        String::new()
    };
    // Writing to a string cannot fail.
    let _ = write!(
        line,
        r#"{{"seq":{seq},{format}"time":"{time}","prev":"{prev}","event":{event}"#
    );
    // Every line but the last is vouched for by the one after it; its own sum vouches for the last.
    let sum = Hash::of(line.as_bytes());
    let _ = write!(line, r#"{SUM_KEY}{sum}"}}"#);
    line
}

/// What stands before a line's own sum, which is over all that stands before this.
pub(super) const SUM_KEY: &str = r#","sum":""#;

/// Whether a line's own sum is right; none where it has none in its place.
fn sum_holds(text: &str) -> Option<bool> {
    let (body, rest) = text.rsplit_once(SUM_KEY)?;
    let sum: Hash = rest.strip_suffix("\"}")?.parse().ok()?;
    Some(sum == Hash::of(body.as_bytes()))
}

/// The end of a chain of lines: what the next one must name.
#[derive(Clone, Copy, Debug)]
pub(super) struct Chain {
    pub records: u64,
    pub head: Hash,
    pub time: Option<Timestamp>,
}

impl Chain {
    pub(super) const EMPTY: Self = Self {
        records: 0,
        head: Hash::ZERO,
        time: None,
    };

    /// Takes the next line (without its newline) if it is whole and belongs there.
    pub(super) fn accept(&mut self, line: &[u8]) -> Result<(Record, Option<Warning>), DamageKind> {
        let text = str::from_utf8(line).map_err(|error| DamageKind::NotUtf8(error.valid_up_to()))?;
        let record = self.parse(text)?;
        if record.seq != self.records {
            let (due, found) = (self.records, record.seq);
            return Err(DamageKind::Sequence { due, found });
        }
        if record.prev != self.head {
            let (due, found) = (self.head, record.prev);
            return Err(DamageKind::Chain { due, found });
        }
        let warning = self.follow(record.time, Hash::of(line));
        Ok((record, warning))
    }

    /// Moves on to a line that belongs there; a warning where the clock went back.
    pub(super) fn follow(&mut self, time: Timestamp, head: Hash) -> Option<Warning> {
        let records = self.records + 1;
        let before = self.time.filter(|&before| time < before);
        *self = Self {
            records,
            head,
            time: Some(time),
        };
        before.map(|before| Warning {
            line: records,
            before,
            time,
        })
    }

    fn parse(&self, text: &str) -> Result<Record, DamageKind> {
        if text.is_empty() {
            return malformed("it is empty");
        }
        // The parser would take white space around a record, such as the carriage returns of a converted file.
        if text.starts_with('\u{feff}') {
            return malformed("it begins with a byte order mark: another program saved this file anew");
        }
        if text.ends_with('\r') {
            return malformed("it ends in CR LF: another program saved this file anew");
        }
        if !text.starts_with('{') || !text.ends_with('}') {
            return malformed("it does not begin with { and end with }");
        }
        let Members(members) =
            serde_json::from_str(text).map_err(|error| DamageKind::Malformed(strict::wording(&error)))?;
        // Looked at first: a newer format may have other keys, and saying so helps more than naming one of them.
        if let Some((_, version)) = members.iter().find(|(key, _)| key == "format") {
            match value("format", version, "a whole number")? {
                newer if newer > FORMAT => return Err(DamageKind::NewerFormat(newer)),
                0 => return malformed("there is no format 0"),
                _ if self.records > 0 => return malformed("only the first record names a format"),
                _ => {}
            }
        } else if self.records == 0 {
            return malformed("the first record has no key `format`");
        }
        let [mut seq, mut time, mut prev, mut event, mut format, mut sum] = [None; 6];
        for (key, text) in &members {
            let place = match key.as_str() {
                "seq" => &mut seq,
                "time" => &mut time,
                "prev" => &mut prev,
                "event" => &mut event,
                "format" => &mut format,
                "sum" => &mut sum,
                _ => return malformed(format!("`{key}` is no key of a record")),
            };
            if place.replace(*text).is_some() {
                return malformed(format!("the key `{key}` stands twice"));
            }
        }
        let event = needed("event", event)?;
        strict::check(event.get()).map_err(|what| DamageKind::Malformed(format!("`event`: {what}")))?;
        let time: String = value("time", needed("time", time)?, "text")?;
        let prev: String = value("prev", needed("prev", prev)?, "text")?;
        let record = Record {
            line: self.records + 1,
            seq: value("seq", needed("seq", seq)?, "a whole number below 2^64")?,
            time: time.parse().map_err(|_| {
                DamageKind::Malformed(format!(
                    "`time` is no time with a zone in the form of RFC 3339: `{time}`"
                ))
            })?,
            prev: prev
                .parse()
                .map_err(|error| DamageKind::Malformed(format!("`prev`: {error}")))?,
            event: event.to_owned(),
        };
        // Last, so that a line that was never ours is told by what is wrong in it.
        needed("sum", sum)?;
        match sum_holds(text) {
            Some(true) => Ok(record),
            Some(false) => Err(DamageKind::Sum),
            None => malformed("`sum` does not stand at its end, or is no hash"),
        }
    }
}

fn malformed<T>(what: impl Into<String>) -> Result<T, DamageKind> {
    Err(DamageKind::Malformed(what.into()))
}

fn needed<'a>(key: &str, text: Option<&'a RawValue>) -> Result<&'a RawValue, DamageKind> {
    text.ok_or_else(|| DamageKind::Malformed(format!("it has no key `{key}`")))
}

fn value<'a, T: Deserialize<'a>>(key: &str, text: &'a RawValue, what: &str) -> Result<T, DamageKind> {
    serde_json::from_str(text.get()).map_err(|_| DamageKind::Malformed(format!("`{key}` is not {what}")))
}
