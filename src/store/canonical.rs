//! A line as this program writes it, taken apart without a JSON parser.
//!
//! Nearly all lines of an archive are so. Whatever is not goes the long way, through `record`, which says what is wrong with it.

use jiff::Timestamp;
use sha2::{Digest, Sha256};

use super::Hash;
use super::record::{Chain, SUM_KEY};

/// What stands behind a line's own sum.
const END: &str = "\"}";

/// Digits of a sum.
const DIGITS: usize = 64;

/// A line in its place, its sums right.
pub(super) struct Canonical<'l> {
    pub time: Timestamp,
    /// What stands for the event: whether it is one JSON value is not known yet.
    pub event: &'l str,
    /// The sum of the whole line.
    pub head: Hash,
}

/// Takes the next line of a chain apart, if it is written as this program does and belongs there.
pub(super) fn take_apart<'l>(chain: &Chain, line: &'l [u8]) -> Option<Canonical<'l>> {
    let text = str::from_utf8(line).ok()?;
    let rest = text.strip_prefix("{\"seq\":")?;
    let (seq, rest) = rest.split_once(',')?;
    // No other spelling of the number is ever written.
    let is_due = seq.parse() == Ok(chain.records) && (seq == "0" || !seq.starts_with(['0', '+']));
    let rest = match chain.records {
        0 => rest.strip_prefix("\"format\":1,")?,
        _ => rest,
    };
    let (time, rest) = rest.strip_prefix("\"time\":\"")?.split_once('"')?;
    let (prev, rest) = rest.strip_prefix(",\"prev\":\"")?.split_at_checked(DIGITS)?;
    let rest = rest.strip_prefix("\",\"event\":")?;
    let event = rest.get(..rest.len().checked_sub(SUM_KEY.len() + DIGITS + END.len())?)?;
    let sum = rest[event.len()..].strip_prefix(SUM_KEY)?.strip_suffix(END)?;
    if !is_due || !chain.head.is_written_as(prev) {
        return None;
    }
    // Of the same bytes, the line's own sum is over all but the end, and the next line's over all.
    let body = text.len() - SUM_KEY.len() - DIGITS - END.len();
    let mut hasher = Sha256::new_with_prefix(&line[..body]);
    let own = Hash::from_digest(hasher.clone().finalize().into());
    if !own.is_written_as(sum) {
        return None;
    }
    hasher.update(&line[body..]);
    Some(Canonical {
        time: time.parse().ok()?,
        event,
        head: Hash::from_digest(hasher.finalize().into()),
    })
}
