//! What is kept of each call, and found again by its equipment: a few dozen bytes.

use std::collections::HashMap;

use foldhash::fast::RandomState;
use jiff::Timestamp;
use rayon::slice::ParallelSliceMut;
use uuid::Uuid;

use super::blocks::Blocks;
use super::call::{Call, Ending, Remedy};
use super::names::Names;
use super::summary::SessionRef;

pub(super) use super::names::{NO_NAME, NameNo};

/// A second, in nanoseconds.
const SECOND: i64 = 1_000_000_000;

/// A call, as far as it is kept.
#[derive(Clone, Copy, Debug)]
pub(super) struct Visit {
    pub opened: Timestamp,
    /// When it was closed, where it was.
    pub closed: Option<Timestamp>,
    /// When it was closed, or the last that was recorded of it.
    pub left: Timestamp,
    pub equipment: NameNo,
    pub technician: NameNo,
    pub tree: NameNo,
    pub fault: NameNo,
    /// The outcome it ended in, where it did in one.
    pub outcome: NameNo,
    /// The part it condemned.
    pub part: NameNo,
    pub end: EndKind,
    pub remedy: RemedyKind,
    pub left_open: bool,
    pub combustion: Tested,
    /// It walked the tree by which its library has work proven.
    pub after_work: bool,
}

/// What is kept of a call: 48 bytes. What many calls have in common is kept once.
#[derive(Clone, Copy, Debug)]
struct Kept {
    /// Since 1970, with the nanoseconds below.
    seconds: i64,
    /// Nanoseconds from its opening to its closing, or to its last record where it was not closed. A call of 292 years is cut.
    lasted: i64,
    /// The session's id: a UUID, or the number of a name in its first four bytes.
    session: [u8; 16],
    nanoseconds: i32,
    folder: u32,
    equipment: NameNo,
    sort: u32,
}

const _: () = assert!(
    size_of::<Kept>() == 48,
    "memory is to grow by no more than this with each call"
);

/// What many calls have in common.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
struct Sort {
    technician: NameNo,
    tree: NameNo,
    fault: NameNo,
    outcome: NameNo,
    part: NameNo,
    end: EndKind,
    remedy: RemedyKind,
    is_closed: bool,
    is_uuid: bool,
    left_open: bool,
    combustion: Tested,
    after_work: bool,
    is_proof: bool,
}

/// How a call ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum EndKind {
    Verdict,
    Outcome,
    Unproven,
    Insisted,
    Open,
}

/// What is done about the fault of a call's verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum RemedyKind {
    /// There is no verdict, or nobody knows, or nothing is done.
    Nothing,
    Replace,
    Correct,
    ShutDown,
    Refer,
}

/// Whether the flue gas was tested.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum Tested {
    /// The library of the call has no such readings.
    Unknown,
    Yes,
    No,
}

/// Every call, in the order they came, with the names in them.
#[derive(Debug, Default)]
pub(super) struct Visits {
    list: Blocks<Kept>,
    sorts: Vec<Sort>,
    numbers: HashMap<Sort, u32, RandomState>,
    names: Names,
}

impl Visits {
    /// Takes a call; its number.
    pub fn add(&mut self, call: &Call) -> u32 {
        let number = self.list.len() as u32;
        let uuid = Uuid::try_parse(&call.session).ok();
        let uuid = uuid.filter(|uuid| {
            let mut written = Uuid::encode_buffer();
            *uuid.hyphenated().encode_lower(&mut written) == call.session
        });
        let session = match uuid {
            Some(uuid) => uuid.into_bytes(),
            None => {
                let mut bytes = [0; 16];
                bytes[..4].copy_from_slice(&self.name(&call.session).to_ne_bytes());
                bytes
            }
        };
        let left = call.closed.unwrap_or(call.last);
        let kept = Kept {
            seconds: call.opened.as_second(),
            nanoseconds: call.opened.subsec_nanosecond(),
            lasted: clamped(left.duration_since(call.opened).as_nanos()),
            session,
            folder: call.folder,
            equipment: self.maybe(call.equipment.as_deref()),
            sort: self.sort(call, uuid.is_some()),
        };
        self.list.push(kept);
        number
    }

    /// The number of what a call has in common with others.
    fn sort(&mut self, call: &Call, is_uuid: bool) -> u32 {
        let verdict = call.verdict();
        let sort = Sort {
            technician: self.maybe(call.technician.as_deref()),
            tree: self.name(&call.tree),
            fault: self.maybe(verdict.map(|verdict| verdict.fault.as_str())),
            outcome: match &call.ending {
                Ending::Outcome(outcome) => self.name(outcome),
                _ => NO_NAME,
            },
            part: self.maybe(verdict.and_then(|verdict| verdict.condemned())),
            end: match call.ending {
                Ending::Verdict(_) => EndKind::Verdict,
                Ending::Outcome(_) => EndKind::Outcome,
                Ending::Unproven { .. } => EndKind::Unproven,
                Ending::Insisted(_) => EndKind::Insisted,
                Ending::Open => EndKind::Open,
            },
            remedy: match verdict.map(|verdict| &verdict.remedy) {
                None | Some(Remedy::Nothing | Remedy::Unknown) => RemedyKind::Nothing,
                Some(Remedy::Replace(_)) => RemedyKind::Replace,
                Some(Remedy::Correct) => RemedyKind::Correct,
                Some(Remedy::ShutDown) => RemedyKind::ShutDown,
                Some(Remedy::Refer) => RemedyKind::Refer,
            },
            is_closed: call.closed.is_some(),
            is_uuid,
            left_open: call.left_open(),
            combustion: match call.readings.iter().any(|taken| taken.combustion) {
                true => Tested::Yes,
                false if call.could_test_combustion => Tested::No,
                false => Tested::Unknown,
            },
            after_work: call.after_work,
            is_proof: call.is_proof(),
        };
        *self.numbers.entry(sort).or_insert_with(|| {
            self.sorts.push(sort);
            self.sorts.len() as u32 - 1
        })
    }

    /// The number of a name.
    pub fn name(&mut self, name: &str) -> NameNo {
        self.names.number(name)
    }

    fn maybe(&mut self, name: Option<&str>) -> NameNo {
        name.map_or(NO_NAME, |name| self.name(name))
    }

    /// The name of a number; none of [`NO_NAME`].
    pub fn named(&self, number: NameNo) -> Option<&str> {
        self.names.get(number)
    }

    /// The same, to keep.
    pub fn owned(&self, number: NameNo) -> Option<String> {
        self.named(number).map(str::to_owned)
    }

    /// A call by its number.
    pub fn get(&self, number: u32) -> Visit {
        self.visit(&self.list[number as usize])
    }

    /// The equipment of a call.
    pub fn equipment(&self, number: u32) -> NameNo {
        self.list[number as usize].equipment
    }

    /// Who walked a call.
    pub fn technician(&self, number: u32) -> NameNo {
        self.sorts[self.list[number as usize].sort as usize].technician
    }

    /// When a call was opened.
    pub fn opened(&self, number: u32) -> Timestamp {
        self.list[number as usize].opened()
    }

    /// When a call was left: closed, or last recorded of where it was not.
    pub fn left(&self, number: u32) -> Timestamp {
        self.list[number as usize].left()
    }

    /// The calls that were opened before a time; none before none.
    pub fn opened_before(&self, time: Option<Timestamp>) -> Vec<u32> {
        let numbers = 0..self.list.len() as u32;
        time.map_or_else(Vec::new, |time| {
            numbers.filter(|number| self.opened(*number) < time).collect()
        })
    }

    /// Every call.
    pub fn iter(&self) -> impl Iterator<Item = Visit> {
        self.list.iter().map(|kept| self.visit(kept))
    }

    fn visit(&self, kept: &Kept) -> Visit {
        let sort = &self.sorts[kept.sort as usize];
        let opened = kept.opened();
        let left = kept.left();
        Visit {
            opened,
            closed: sort.is_closed.then_some(left),
            left,
            equipment: kept.equipment,
            technician: sort.technician,
            tree: sort.tree,
            fault: sort.fault,
            outcome: sort.outcome,
            part: sort.part,
            end: sort.end,
            remedy: sort.remedy,
            left_open: sort.left_open,
            combustion: sort.combustion,
            after_work: sort.after_work,
        }
    }

    /// Whether a call only proves work that was done before.
    pub fn is_proof(&self, number: u32) -> bool {
        self.sorts[self.list[number as usize].sort as usize].is_proof
    }

    /// How many.
    pub fn len(&self) -> usize {
        self.list.len()
    }

    /// The session of a call.
    pub fn session(&self, number: u32) -> SessionRef {
        let kept = &self.list[number as usize];
        SessionRef {
            id: match self.session_name(kept) {
                Some(name) => self.owned(name).unwrap_or_default(),
                None => Uuid::from_bytes(kept.session).to_string(),
            },
            folder: kept.folder,
        }
    }

    /// The number of a session's name; none where it is a UUID.
    fn session_name(&self, kept: &Kept) -> Option<NameNo> {
        let [a, b, c, d, ..] = kept.session;
        let is_uuid = self.sorts[kept.sort as usize].is_uuid;
        (!is_uuid).then(|| NameNo::from_ne_bytes([a, b, c, d]))
    }

    /// The calls of each equipment, in the order they were opened; those without an equipment left out.
    pub fn by_equipment(&self) -> Vec<u32> {
        let kept = |number: &u32| &self.list[*number as usize];
        let mut order: Vec<u32> = (0..self.list.len() as u32)
            .filter(|number| kept(number).equipment != NO_NAME)
            .collect();
        order.par_sort_unstable_by(|one, other| {
            let key = |kept: &Kept| (kept.equipment, kept.seconds, kept.nanoseconds);
            let (first, second) = (kept(one), kept(other));
            // Names are numbered as they come, and calls may come in any order.
            let by_id = || match (self.session_name(first), self.session_name(second)) {
                (Some(one), Some(other)) => self.named(one).cmp(&self.named(other)),
                (one, other) => (one, first.session).cmp(&(other, second.session)),
            };
            key(first).cmp(&key(second)).then_with(by_id)
        });
        order
    }
}

impl Kept {
    fn opened(&self) -> Timestamp {
        // It was taken from a time.
        Timestamp::new(self.seconds, self.nanoseconds).unwrap_or_default()
    }

    fn left(&self) -> Timestamp {
        later(self.seconds, self.nanoseconds, self.lasted).unwrap_or_else(|| self.opened())
    }
}

/// A time so many nanoseconds later. A calendar's own sum takes ten times as long, and this is done for every call, again and again.
fn later(seconds: i64, nanoseconds: i32, lasted: i64) -> Option<Timestamp> {
    let nanoseconds = i64::from(nanoseconds) + lasted % SECOND;
    let seconds = seconds + lasted / SECOND + nanoseconds.div_euclid(SECOND);
    Timestamp::new(seconds, nanoseconds.rem_euclid(SECOND) as i32).ok()
}

/// A number of nanoseconds, cut to what fits.
fn clamped(nanoseconds: i128) -> i64 {
    nanoseconds.clamp(i64::MIN.into(), i64::MAX.into()) as i64
}

impl RemedyKind {
    /// In a word, as the format of libraries has it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Nothing => "none",
            Self::Replace => "replace",
            Self::Correct => "correct",
            Self::ShutDown => "shut_down",
            Self::Refer => "refer",
        }
    }
}

#[cfg(test)]
mod tests {
    use jiff::{SignedDuration, Timestamp};
    use proptest::prelude::*;

    use super::later;

    proptest! {
        #[test]
        fn a_later_time_is_what_the_calendar_says(
            seconds in -10_000_000_000_i64..10_000_000_000,
            part in -999_999_999_i32..=999_999_999,
            lasted in any::<i64>(),
        ) {
            let opened = Timestamp::new(seconds, part).unwrap();
            let closed = opened.checked_add(SignedDuration::from_nanos(lasted)).ok();
            prop_assert_eq!(later(opened.as_second(), opened.subsec_nanosecond(), lasted), closed);
        }
    }
}
