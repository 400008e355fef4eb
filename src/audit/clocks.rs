//! Which calls' clocks are believed: a few that stand far apart do not move the ends of an archive.
//!
//! A call is **ahead** where its last record is more than a day later than the time of the audit, and **behind** where it was opened
//! more than a year before the rest, with no call between. At either end no more than one call in twenty is doubted so, but one may
//! always be, of three and more. Where there are more, it is the clock of this machine that is behind, the archive that has a gap,
//! or the calls are made up, and all are believed; how many of them are ahead is told.
//!
//! A doubted call counts in everything that is counted. Only, the archive neither begins nor ends with it, and nobody knows how
//! long it was followed.

use std::collections::BTreeMap;

use jiff::{SignedDuration, Timestamp};

use super::call::Call;

/// How far a call may be ahead of the time of the audit.
const AHEAD: SignedDuration = SignedDuration::from_hours(24);

/// How far calls may be apart at the beginning, before the earlier ones are doubted.
const BEHIND: SignedDuration = SignedDuration::from_hours(24 * 365);

/// Of so many calls, one may be doubted at either end.
const ONE_OF: usize = 20;

/// Fewest calls of which one may be.
const FEWEST: usize = 3;

/// Seconds of the spells by which openings are kept: several in a gap of [`BEHIND`], and few in an archive.
const SPELL: i64 = 30 * 24 * 60 * 60;

/// Takes the times of calls one at a time.
#[derive(Debug, Default)]
pub(super) struct Clocks {
    calls: usize,
    /// The latest time that a call can have; none where nobody said what time it is.
    latest: Option<Timestamp>,
    until: Option<Timestamp>,
    /// The last instant that is not ahead.
    believed_until: Option<Timestamp>,
    ahead: Vec<u32>,
    /// The openings, by spell.
    openings: BTreeMap<i64, Openings>,
}

/// The openings of a spell.
#[derive(Clone, Copy, Debug)]
struct Openings {
    calls: usize,
    first: Timestamp,
    last: Timestamp,
}

/// Where an archive begins and ends, as far as clocks are believed.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Ends {
    /// The first opening; none where there is no call.
    pub from: Option<Timestamp>,
    /// The last instant.
    pub until: Option<Timestamp>,
}

impl Clocks {
    /// Of an audit that is made at a time.
    pub fn made_at(now: Timestamp) -> Self {
        Self {
            latest: now.checked_add(AHEAD).ok(),
            ..Self::default()
        }
    }

    /// Takes the times of a call.
    pub fn add(&mut self, call: &Call, number: u32) {
        self.calls += 1;
        self.until = self.until.max(Some(call.last));
        match self.latest.is_some_and(|latest| call.last > latest) {
            true => self.ahead.push(number),
            false => self.believed_until = self.believed_until.max(Some(call.last)),
        }
        let spell = call.opened.as_second().div_euclid(SPELL);
        let spell = self.openings.entry(spell).or_insert(Openings {
            calls: 0,
            first: call.opened,
            last: call.opened,
        });
        spell.calls += 1;
        spell.first = spell.first.min(call.opened);
        spell.last = spell.last.max(call.opened);
    }

    /// The latest time that a call can have, where some are doubted for being ahead of it.
    pub fn latest(&self) -> Option<Timestamp> {
        self.latest.filter(|_| !self.ahead().is_empty())
    }

    /// The calls that are doubted for being ahead.
    pub fn ahead(&self) -> &[u32] {
        match self.ahead.len() <= self.may_be_doubted() {
            true => &self.ahead,
            false => &[],
        }
    }

    /// How many calls are ahead and believed all the same, being too many to doubt.
    pub fn ahead_and_believed(&self) -> usize {
        self.ahead.len() - self.ahead().len()
    }

    /// The first opening that is believed, where calls are doubted for being behind it.
    pub fn earliest(&self) -> Option<Timestamp> {
        let mut earliest = None;
        let mut before: Option<Openings> = None;
        for spell in self.openings.values() {
            if let Some(before) = &before {
                let is_gap = spell.first.duration_since(before.last) > BEHIND;
                earliest = Some(spell.first)
                    .filter(|_| is_gap && before.calls <= self.may_be_doubted())
                    .or(earliest);
            }
            before = Some(Openings {
                calls: before.map_or(0, |before| before.calls) + spell.calls,
                ..*spell
            });
        }
        earliest
    }

    /// Where the archive begins and ends.
    pub fn ends(&self) -> Ends {
        let first = self.openings.values().next().map(|spell| spell.first);
        Ends {
            from: self.earliest().or(first),
            until: match self.latest() {
                Some(_) => self.believed_until,
                None => self.until,
            },
        }
    }

    fn may_be_doubted(&self) -> usize {
        match self.calls < FEWEST {
            true => 0,
            false => (self.calls / ONE_OF).max(1),
        }
    }
}

impl Ends {
    /// Whether a time lies before the archive begins, by a clock that is doubted.
    pub fn is_before(&self, time: Timestamp) -> bool {
        self.from.is_some_and(|from| time < from)
    }

    /// Whether a time lies after its end, by a clock that is doubted.
    pub fn is_after(&self, time: Timestamp) -> bool {
        self.until.is_some_and(|until| time > until)
    }
}
