//! Session files that are damaged, half-written or foreign, and sessions that were never closed.

use serde::Serialize;

use super::super::call::Call;
use super::super::summary::SessionRef;
use super::super::visits::Visits;

/// A file that does not hold a whole, closed call.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Unsound {
    /// The session, or the name of the file or folder where that is no session's.
    pub session: SessionRef,
    /// What is wrong.
    pub what: WhatIsWrong,
    /// The same in words.
    pub why: String,
}

/// What is wrong with a session file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum WhatIsWrong {
    /// A line was changed, removed, doubled or moved, or is no record.
    Damaged,
    /// It holds records, but of something else than a call.
    Foreign,
    /// It could not be read, or something else stands in its place.
    Unreadable,
    /// It is another call than the one that goes by its id and is counted.
    SameId,
    /// Nothing was recorded in it.
    Empty,
    /// Its last line was cut off while it was written. The call counts as far as it is whole.
    HalfWritten,
    /// Its clock went back. The call counts, but the archive neither begins nor ends with it.
    ClockBack,
    /// Its clock is far ahead of the time of the audit. The call counts, but the archive does not end with it.
    ClockAhead,
    /// Its clock is far behind that of all other calls. The call counts, but the archive does not begin with it.
    ClockBehind,
    /// It begins as another call does, at the same instant: perhaps a copy under another name. Both count.
    Twin,
    /// It was never closed. The call counts.
    Unsealed,
}

impl WhatIsWrong {
    /// Whether it counts as a call all the same.
    pub fn is_call(self) -> bool {
        match self {
            Self::Damaged | Self::Foreign | Self::Unreadable | Self::SameId | Self::Empty => false,
            Self::HalfWritten
            | Self::ClockBack
            | Self::ClockAhead
            | Self::ClockBehind
            | Self::Twin
            | Self::Unsealed => true,
        }
    }

    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            Self::Damaged => "damaged",
            Self::Foreign => "foreign",
            Self::Unreadable => "unreadable",
            Self::SameId => "another call of the same id",
            Self::Empty => "empty",
            Self::HalfWritten => "half-written",
            Self::ClockBack => "clock went back",
            Self::ClockAhead => "clock ahead",
            Self::ClockBehind => "clock behind",
            Self::Twin => "perhaps a copy",
            Self::Unsealed => "never closed",
        }
    }
}

/// Collects files that hold no whole, closed call.
#[derive(Debug, Default)]
pub(in super::super) struct Unsounds {
    files: Vec<Unsound>,
    calls: Vec<(u32, WhatIsWrong, Option<u64>)>,
}

impl Unsounds {
    pub fn add(&mut self, call: &Call, number: u32) {
        if call.torn.is_some() {
            self.calls.push((number, WhatIsWrong::HalfWritten, call.torn));
        } else if call.clock_went_back {
            self.calls.push((number, WhatIsWrong::ClockBack, None));
        } else if !call.sealed {
            self.calls.push((number, WhatIsWrong::Unsealed, None));
        }
    }

    pub fn file(&mut self, folder: u32, file: &str, what: WhatIsWrong, why: &str) {
        let session = SessionRef {
            id: file.to_owned(),
            folder,
        };
        let why = why.to_owned();
        self.files.push(Unsound { session, what, why });
    }

    /// How many files are damaged, foreign, unreadable or of another call than their id says.
    pub fn damaged(&self) -> u64 {
        let damaged = self.files.iter().filter(|file| file.what != WhatIsWrong::Empty);
        damaged.count() as u64
    }

    pub fn found(self, visits: &Visits, twins: &[(u32, u32)], behind: &[u32], ahead: &[u32]) -> Vec<Unsound> {
        let behind = behind.iter().map(|number| Unsound {
            session: visits.session(*number),
            what: WhatIsWrong::ClockBehind,
            why: "it was opened more than a year before all other calls, so that its clock is in doubt, and with it its days, and those of \
                  what came before and after it; it counts, but the archive does not begin with it"
                .to_owned(),
        });
        let ahead = ahead.iter().map(|number| Unsound {
            session: visits.session(*number),
            what: WhatIsWrong::ClockAhead,
            why: "its clock is more than a day ahead of the time of this audit: its days, and those of what came before and after it, \
                  are in doubt; it counts, but the archive does not end with it"
                .to_owned(),
        });
        let twins = twins.iter().map(|(one, other)| Unsound {
            session: visits.session(*other),
            what: WhatIsWrong::Twin,
            why: format!(
                "it was opened at the same instant as {}, by the same technician at the same equipment: perhaps a copy under \
                 another name; both are counted",
                visits.session(*one).id
            ),
        });
        let calls = self.calls.into_iter().map(|(number, what, torn)| Unsound {
            session: visits.session(number),
            what,
            why: match (what, torn) {
                (WhatIsWrong::HalfWritten, Some(bytes)) => {
                    format!("its last line was cut off while it was written ({bytes} bytes)")
                }
                (WhatIsWrong::ClockBack, _) => {
                    "its clock went back; it is read in the order of its lines, and the archive neither begins nor ends with it, unless \
                     every clock went back"
                        .to_owned()
                }
                _ => "it was left before it was closed".to_owned(),
            },
        });
        let mut found: Vec<Unsound> = (self.files.into_iter().chain(calls).chain(twins))
            .chain(behind)
            .chain(ahead)
            .collect();
        found.sort_by(|one, other| (one.what, &one.session).cmp(&(other.what, &other.session)));
        found
    }
}
