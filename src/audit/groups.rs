//! The same counts by technician, tree, part and month.

use std::collections::BTreeMap;

use jiff::civil::Date;
use jiff::tz::Offset;
use serde::Serialize;

use super::findings::{Fate, Followed};
use super::summary::{Rate, TOO_SMALL};
use super::visits::{EndKind, NO_NAME, NameNo, RemedyKind, Visit, Visits};

/// What a technician's calls came to.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Technician {
    /// Who; none for the calls that do not say.
    pub technician: Option<String>,
    /// The counts.
    #[serde(flatten)]
    pub tally: Tally,
}

/// What the calls of a complaint came to.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Tree {
    /// The tree of the complaint.
    pub tree: String,
    /// The counts.
    #[serde(flatten)]
    pub tally: Tally,
}

/// What the calls that condemned a part came to.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Part {
    /// The part.
    pub part: String,
    /// Calls that condemned it, and proved it.
    pub proven: u64,
    /// The counts; `insisted` are those that condemned it without proof.
    #[serde(flatten)]
    pub tally: Tally,
}

/// What the calls that were closed in a month came to.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Month {
    /// Which, as `2026-01`, in UTC.
    pub month: String,
    /// Calls closed in it.
    pub closed: u64,
    /// Those that came back, over those with an equipment.
    pub callbacks: Rate,
    /// Those that came back on another visit, over those whose whole window lies before the end of the archive.
    pub settled: Rate,
}

/// The counts of a group.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Tally {
    /// Calls.
    pub calls: u64,
    /// Those closed.
    pub closed: u64,
    /// Those that came back, over those closed with an equipment.
    pub callbacks: Rate,
    /// Callbacks whose next call belongs to the same visit.
    pub same_visit: u64,
    /// Those that came back on another visit, over those whose whole window lies before the end of the archive: what a group is
    /// held against others by.
    pub settled: Rate,
    /// Callbacks that make a misdiagnosis suspected.
    pub suspected_misdiagnoses: u64,
    /// Referred without a verdict.
    pub unproven: u64,
    /// Ended on the technician's own verdict.
    pub insisted: u64,
    /// Left something open.
    pub left_open: u64,
    /// Fewer calls that could come back than [`TOO_SMALL`]: the rate says nothing of this group.
    pub too_small: bool,
}

/// Counts as they grow.
#[derive(Clone, Copy, Debug, Default)]
struct Count {
    calls: u64,
    closed: u64,
    followed: u64,
    came_back: u64,
    same_visit: u64,
    settled: u64,
    came_again: u64,
    misdiagnoses: u64,
    unproven: u64,
    insisted: u64,
    left_open: u64,
}

/// Every group's counts.
#[derive(Debug, Default)]
pub(super) struct Counted {
    /// All calls.
    all: Count,
    technicians: BTreeMap<NameNo, Count>,
    trees: BTreeMap<NameNo, Count>,
    parts: BTreeMap<NameNo, Count>,
}

impl Counted {
    /// Counts all calls, and what followed them.
    pub fn new(visits: &Visits, followed: &Followed) -> Self {
        let mut counted = Self::default();
        for visit in visits.iter() {
            counted.each(&visit, |count| {
                count.calls += 1;
                count.closed += u64::from(visit.closed.is_some());
                count.unproven += u64::from(visit.end == EndKind::Unproven);
                count.insisted += u64::from(visit.end == EndKind::Insisted);
                count.left_open += u64::from(visit.left_open);
            });
        }
        for fate in followed.each() {
            let visit = visits.get(fate.call);
            let suspected = (fate.next).is_some_and(|next| is_misdiagnosed(&visit, &visits.get(next)));
            counted.each(&visit, |count| {
                count.follow(&fate);
                count.misdiagnoses += u64::from(suspected);
            });
        }
        counted
    }

    fn each(&mut self, visit: &Visit, change: impl Fn(&mut Count)) {
        change(&mut self.all);
        change(self.technicians.entry(visit.technician).or_default());
        change(self.trees.entry(visit.tree).or_default());
        if visit.part != NO_NAME {
            change(self.parts.entry(visit.part).or_default());
        }
    }

    /// Of all calls.
    pub fn all(&self) -> Tally {
        self.all.tally()
    }

    pub fn by_technician(&self, visits: &Visits) -> Vec<Technician> {
        let mut rows: Vec<Technician> = (self.technicians.iter())
            .map(|(name, count)| Technician {
                technician: visits.owned(*name),
                tally: count.tally(),
            })
            .collect();
        // Those that do not say who come last.
        rows.sort_by(|one, other| {
            let key = |row: &Technician| (row.technician.is_none(), row.technician.clone());
            key(one).cmp(&key(other))
        });
        rows
    }

    pub fn by_tree(&self, visits: &Visits) -> Vec<Tree> {
        let mut rows: Vec<Tree> = (self.trees.iter())
            .map(|(name, count)| Tree {
                tree: visits.owned(*name).unwrap_or_default(),
                tally: count.tally(),
            })
            .collect();
        rows.sort_by(|one, other| one.tree.cmp(&other.tree));
        rows
    }

    pub fn by_part(&self, visits: &Visits) -> Vec<Part> {
        let mut rows: Vec<Part> = (self.parts.iter())
            .map(|(name, count)| Part {
                part: visits.owned(*name).unwrap_or_default(),
                proven: count.calls - count.insisted,
                tally: count.tally(),
            })
            .collect();
        rows.sort_by(|one, other| one.part.cmp(&other.part));
        rows
    }
}

impl Count {
    /// Takes what followed a call.
    fn follow(&mut self, fate: &Fate) {
        self.followed += 1;
        self.came_back += u64::from(fate.next.is_some());
        self.same_visit += u64::from(fate.same_visit);
        self.settled += u64::from(fate.settled.is_some());
        self.came_again += u64::from(fate.settled == Some(true));
    }

    fn tally(&self) -> Tally {
        Tally {
            calls: self.calls,
            closed: self.closed,
            callbacks: Rate::new(self.came_back, self.followed),
            same_visit: self.same_visit,
            settled: Rate::new(self.came_again, self.settled),
            suspected_misdiagnoses: self.misdiagnoses,
            unproven: self.unproven,
            insisted: self.insisted,
            left_open: self.left_open,
            too_small: self.followed < TOO_SMALL,
        }
    }
}

/// Whether a call that condemned a part came back and ended in a fault with another remedy. A fault that was only noted on the way
/// to something else is not what the call ended in.
pub(super) fn is_misdiagnosed(first: &Visit, second: &Visit) -> bool {
    let ended_in_fault = matches!(second.end, EndKind::Verdict | EndKind::Insisted);
    let another = match second.remedy {
        RemedyKind::Nothing => false,
        RemedyKind::Replace => second.part != first.part,
        RemedyKind::Correct | RemedyKind::ShutDown | RemedyKind::Refer => true,
    };
    first.part != NO_NAME && ended_in_fault && another
}

/// By the month in which calls were closed.
pub(super) fn by_month(visits: &Visits, followed: &Followed) -> Vec<Month> {
    let mut months: BTreeMap<Date, Count> = BTreeMap::new();
    let month = |visit: &Visit| {
        let closed = Offset::UTC.to_datetime(visit.closed?);
        Some(closed.date().first_of_month())
    };
    for visit in visits.iter() {
        if let Some(month) = month(&visit) {
            months.entry(month).or_default().closed += 1;
        }
    }
    for fate in followed.each() {
        if let Some(month) = month(&visits.get(fate.call)) {
            months.entry(month).or_default().follow(&fate);
        }
    }
    let rows = months.into_iter().map(|(month, count)| Month {
        month: month.strftime("%Y-%m").to_string(),
        closed: count.closed,
        callbacks: Rate::new(count.came_back, count.followed),
        settled: Rate::new(count.came_again, count.settled),
    });
    rows.collect()
}
