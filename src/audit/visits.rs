//! What is kept of each call, and found again by its equipment: a few dozen bytes.

use std::collections::HashMap;

use jiff::Timestamp;
use uuid::Uuid;

use super::call::{Call, Ending, Remedy};
use super::summary::SessionRef;

/// The number of a name, or of no name.
pub(super) type NameNo = u32;

/// No name.
pub(super) const NO_NAME: NameNo = NameNo::MAX;

/// What is kept of a call.
#[derive(Clone, Copy, Debug)]
pub(super) struct Visit {
    pub opened: Timestamp,
    /// When it was closed; of no meaning where it was not.
    closed: Timestamp,
    session: SessionNo,
    folder: u32,
    pub equipment: NameNo,
    pub technician: NameNo,
    pub tree: NameNo,
    pub fault: NameNo,
    /// The part it condemned.
    pub part: NameNo,
    pub end: EndKind,
    pub remedy: RemedyKind,
    is_closed: bool,
    pub left_open: bool,
    pub combustion: Tested,
}

/// How a call ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum EndKind {
    Verdict,
    Outcome,
    Unproven,
    Insisted,
    Open,
}

/// What is done about the fault of a call's verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum RemedyKind {
    /// There is no verdict, or nobody knows, or nothing is done.
    Nothing,
    Replace,
    Correct,
    ShutDown,
    Refer,
}

/// Whether the flue gas was tested.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Tested {
    /// The library of the call has no such readings.
    Unknown,
    Yes,
    No,
}

/// A session's id, small: nearly all are UUIDs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum SessionNo {
    Uuid([u8; 16]),
    Named(NameNo),
}

/// Every call, in the order they came, with the names in them.
#[derive(Debug, Default)]
pub(super) struct Visits {
    list: Vec<Visit>,
    names: Names,
}

/// Names, each kept once.
#[derive(Debug, Default)]
struct Names {
    numbers: HashMap<Box<str>, NameNo>,
    list: Vec<Box<str>>,
}

impl Visits {
    /// Takes a call; its number.
    pub fn add(&mut self, call: &Call) -> u32 {
        let number = self.list.len() as u32;
        let verdict = call.verdict();
        let session = match Uuid::try_parse(&call.session) {
            Ok(uuid) if uuid.to_string() == call.session => SessionNo::Uuid(uuid.into_bytes()),
            _ => SessionNo::Named(self.name(&call.session)),
        };
        let visit = Visit {
            opened: call.opened,
            closed: call.closed.unwrap_or(call.opened),
            session,
            folder: call.folder,
            equipment: self.maybe(call.equipment.as_deref()),
            technician: self.maybe(call.technician.as_deref()),
            tree: self.name(&call.tree),
            fault: self.maybe(verdict.map(|verdict| verdict.fault.as_str())),
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
            left_open: call.left_open(),
            combustion: match call.readings.iter().any(|taken| taken.combustion) {
                true => Tested::Yes,
                false if call.could_test_combustion => Tested::No,
                false => Tested::Unknown,
            },
        };
        self.list.push(visit);
        number
    }

    /// The number of a name.
    pub fn name(&mut self, name: &str) -> NameNo {
        if let Some(number) = self.names.numbers.get(name) {
            return *number;
        }
        let number = self.names.list.len() as NameNo;
        self.names.list.push(name.into());
        self.names.numbers.insert(name.into(), number);
        number
    }

    fn maybe(&mut self, name: Option<&str>) -> NameNo {
        name.map_or(NO_NAME, |name| self.name(name))
    }

    /// The name of a number; none of [`NO_NAME`].
    pub fn named(&self, number: NameNo) -> Option<&str> {
        self.names.list.get(number as usize).map(AsRef::as_ref)
    }

    /// The same, to keep.
    pub fn owned(&self, number: NameNo) -> Option<String> {
        self.named(number).map(str::to_owned)
    }

    /// A call by its number.
    pub fn get(&self, number: u32) -> &Visit {
        &self.list[number as usize]
    }

    /// Every call.
    pub fn iter(&self) -> impl Iterator<Item = &Visit> {
        self.list.iter()
    }

    /// How many.
    pub fn len(&self) -> usize {
        self.list.len()
    }

    /// The session of a call.
    pub fn session(&self, number: u32) -> SessionRef {
        let visit = self.get(number);
        SessionRef {
            id: match visit.session {
                SessionNo::Uuid(bytes) => Uuid::from_bytes(bytes).to_string(),
                SessionNo::Named(name) => self.owned(name).unwrap_or_default(),
            },
            folder: visit.folder,
        }
    }

    /// The sessions of several calls.
    pub fn sessions(&self, numbers: &[u32]) -> Vec<SessionRef> {
        numbers.iter().map(|number| self.session(*number)).collect()
    }

    /// The calls of each equipment, in the order they were opened; those without an equipment left out.
    pub fn by_equipment(&self) -> Vec<u32> {
        let mut order: Vec<u32> = (0..self.list.len() as u32)
            .filter(|number| self.get(*number).equipment != NO_NAME)
            .collect();
        order.sort_unstable_by(|one, other| {
            let (first, second) = (self.get(*one), self.get(*other));
            let key = |visit: &Visit| (visit.equipment, visit.opened);
            let by_time = key(first).cmp(&key(second));
            let by_id = || match (first.session, second.session) {
                // Names are numbered as they come, and calls may come in any order.
                (SessionNo::Named(one), SessionNo::Named(other)) => self.named(one).cmp(&self.named(other)),
                (one, other) => one.cmp(&other),
            };
            by_time.then_with(by_id).then(one.cmp(other))
        });
        order
    }
}

impl Visit {
    /// When it was closed, where it was.
    pub fn closed(&self) -> Option<Timestamp> {
        self.is_closed.then_some(self.closed)
    }
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
