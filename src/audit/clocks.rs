//! Which calls' clocks are believed: a few that stand far apart do not move the ends of an archive, and none that went back does.
//!
//! Of a call whose clock *went back*, some record is wrong, and nobody knows which. However many there are, the archive begins with the
//! first opening of the others and ends with their last record: a single record that lies months ahead would have the windows of
//! all calls over, and make successes of what nobody has had the time to call back about. Where every clock went back, the archive ends
//! with the last opening, or with the closing of that call where it is dated before it: what one wrong record seldom moves ahead.
//!
//! A call is **ahead** where its last record is more than a day later than the time of the audit, and **behind** where it was opened
//! more than a year before the rest, with no call between. At either end no more than one call in twenty is doubted so, but one may
//! always be, of three and more. Where there are more, it is the clock of this machine that is behind, the archive that has a gap,
//! or the calls are made up, and all are believed; how many of them are ahead is told.
//!
//! A doubted call counts in everything that is counted. Only, the archive neither begins nor ends with it, and nobody knows how
//! long it was followed, where it was closed before the beginning or after the end.

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
    /// Those that are ahead, and went back.
    jumped: Vec<u32>,
    /// Of calls whose clocks went back, the last instant that is likely.
    likely_until: Option<Timestamp>,
    /// The openings, by spell.
    openings: BTreeMap<i64, Openings>,
}

/// The openings of a spell.
#[derive(Clone, Copy, Debug)]
struct Openings {
    calls: usize,
    first: Timestamp,
    last: Timestamp,
    /// The first by a clock that did not go back.
    sound: Option<Timestamp>,
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
        let is_ahead = self.latest.is_some_and(|latest| call.last > latest);
        if call.clock_went_back {
            self.jumped.extend(is_ahead.then_some(number));
            let likely = call.closed.map_or(call.opened, |closed| closed.min(call.opened));
            self.likely_until = self.likely_until.max(Some(likely));
        } else {
            self.until = self.until.max(Some(call.last));
            match is_ahead {
                true => self.ahead.push(number),
                false => self.believed_until = self.believed_until.max(Some(call.last)),
            }
        }
        let spell = call.opened.as_second().div_euclid(SPELL);
        let spell = self.openings.entry(spell).or_insert(Openings {
            calls: 0,
            first: call.opened,
            last: call.opened,
            sound: None,
        });
        spell.calls += 1;
        spell.first = spell.first.min(call.opened);
        spell.last = spell.last.max(call.opened);
        if !call.clock_went_back {
            spell.sound = Some(spell.sound.map_or(call.opened, |first| first.min(call.opened)));
        }
    }

    /// The latest time that a call can have, where some are doubted for being ahead of it.
    pub fn latest(&self) -> Option<Timestamp> {
        self.latest.filter(|_| !self.doubted().is_empty())
    }

    /// The calls that are doubted for being ahead.
    pub fn ahead(&self) -> Vec<u32> {
        [self.doubted(), &self.jumped].concat()
    }

    /// How many calls are ahead and believed all the same, being too many to doubt.
    pub fn ahead_and_believed(&self) -> usize {
        self.ahead.len() - self.doubted().len()
    }

    /// The calls that are ahead, and whose clocks did not go back, where they are few enough to doubt.
    fn doubted(&self) -> &[u32] {
        match self.ahead.len() <= self.may_be_doubted() {
            true => &self.ahead,
            false => &[],
        }
    }

    /// The first opening after calls that are doubted for being behind; none where there are none.
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
        let first = self.earliest().or(first);
        let believed = |spell: &Openings| spell.sound.filter(|_| Some(spell.first) >= first);
        let until = match self.latest() {
            Some(_) => self.believed_until,
            None => self.until,
        };
        Ends {
            from: self.openings.values().find_map(believed).or(first),
            until: until.or(self.likely_until),
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
