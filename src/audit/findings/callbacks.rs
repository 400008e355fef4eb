//! Calls that came back.
//!
//! A callback is a closed call that is followed by another call opened at the same equipment within the window: from the
//! instant of its closing, the last instant included. Calls follow one another in the order they were opened. A call that was
//! opened before the other was closed does not follow it: nobody called back.

use jiff::{SignedDuration, Timestamp};
use serde::Serialize;

use super::super::auditor::Window;
use super::super::statistics::LEVEL;
use super::super::statistics::survival::{Curve, Wait};
use super::super::summary::{Callbacks, FollowUp, Rate, SessionRef};
use super::super::visits::{Visit, Visits};
use super::misdiagnosis::{Misdiagnosis, suspected};

const DAY: i64 = 24 * 60 * 60;

/// A call that came back.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Callback {
    /// The call that was closed.
    pub first: SessionRef,
    /// The call that followed.
    pub second: SessionRef,
    /// At which equipment.
    pub equipment: String,
    /// Who walked the first.
    pub technician: Option<String>,
    /// Who walked the second.
    pub second_technician: Option<String>,
    /// Days of 24 h from the closing of the first to the opening of the second.
    pub days: f64,
    /// Both began with the same complaint.
    pub same_complaint: bool,
    /// The fault that the first ended in.
    pub fault: Option<String>,
    /// The fault that the second ended in.
    pub then: Option<String>,
}

/// What followed each closed call with an equipment.
#[derive(Debug)]
pub(in super::super) struct Followed {
    window: SignedDuration,
    list: Vec<Follow>,
}

/// What followed one call.
#[derive(Clone, Copy, Debug)]
struct Follow {
    call: u32,
    /// The next call at its equipment.
    next: Option<u32>,
    /// How long it was followed: to the next call, or to the end of the archive.
    after: SignedDuration,
}

impl Followed {
    /// Looks for what followed each call.
    pub fn new(visits: &Visits, window: Window, until: Option<Timestamp>) -> Self {
        let order = visits.by_equipment();
        let mut list = Vec::new();
        for calls in order.chunk_by(|one, other| visits.get(*one).equipment == visits.get(*other).equipment) {
            for (place, call) in calls.iter().enumerate() {
                let Some(closed) = visits.get(*call).closed() else {
                    continue;
                };
                let mut later = calls[place + 1..].iter();
                let next = later.find(|next| visits.get(**next).opened >= closed).copied();
                let end = next
                    .map(|next| visits.get(next).opened)
                    .or(until)
                    .unwrap_or(closed);
                list.push(Follow {
                    call: *call,
                    next,
                    after: end.duration_since(closed),
                });
            }
        }
        let window = SignedDuration::from_secs(i64::from(window.days) * DAY);
        Self { window, list }
    }

    /// The calls that came back, each with the one that followed.
    fn came_back(&self) -> impl Iterator<Item = (u32, u32, SignedDuration)> {
        self.list.iter().filter_map(|follow| {
            let next = follow.next.filter(|_| follow.after <= self.window)?;
            Some((follow.call, next, follow.after))
        })
    }

    /// Each closed call with an equipment, and the call that it came back as.
    pub fn each(&self) -> impl Iterator<Item = (u32, Option<u32>)> {
        self.list.iter().map(|follow| {
            let next = follow.next.filter(|_| follow.after <= self.window);
            (follow.call, next)
        })
    }

    /// Each closed call with an equipment, and whether it held: it came back, or was followed for the whole window and did not;
    /// none where it has not had its days yet.
    pub fn held(&self) -> impl Iterator<Item = (u32, Option<bool>)> {
        self.list.iter().map(|follow| match follow.next {
            Some(_) if follow.after <= self.window => (follow.call, Some(false)),
            _ => (follow.call, (follow.after >= self.window).then_some(true)),
        })
    }

    pub fn counts(&self, visits: &Visits) -> Callbacks {
        let of = self.list.len() as u64;
        let same =
            |(first, second, _): &(u32, u32, _)| is_same_complaint(visits.get(*first), visits.get(*second));
        Callbacks {
            rate: Rate::new(self.came_back().count() as u64, of),
            at_30_days: within_30_days(self.waits()),
            same_complaint: Rate::new(self.came_back().filter(same).count() as u64, of),
        }
    }

    pub fn pairs(&self, visits: &Visits) -> Vec<Callback> {
        let pairs = self.came_back().map(|(one, other, after)| {
            let (first, second) = (visits.get(one), visits.get(other));
            Callback {
                first: visits.session(one),
                second: visits.session(other),
                equipment: visits.owned(first.equipment).unwrap_or_default(),
                technician: visits.owned(first.technician),
                second_technician: visits.owned(second.technician),
                days: days(after),
                same_complaint: is_same_complaint(first, second),
                fault: visits.owned(first.fault),
                then: visits.owned(second.fault),
            }
        });
        let mut pairs: Vec<Callback> = pairs.collect();
        pairs.sort_by(|one, other| (&one.equipment, &one.first).cmp(&(&other.equipment, &other.first)));
        pairs
    }

    pub fn misdiagnoses(&self, visits: &Visits) -> Vec<Misdiagnosis> {
        let pairs = self.came_back();
        let mut found: Vec<Misdiagnosis> = pairs
            .filter_map(|(first, second, after)| suspected(visits, first, second, days(after)))
            .collect();
        found.sort_by(|one, other| (&one.equipment, &one.first).cmp(&(&other.equipment, &other.first)));
        found
    }

    pub fn follow_ups(&self) -> Vec<FollowUp> {
        self.waits().collect()
    }

    fn waits(&self) -> impl Iterator<Item = FollowUp> {
        self.list.iter().map(|follow| FollowUp {
            days: days(follow.after),
            called_back: follow.next.is_some(),
        })
    }
}

fn days(duration: SignedDuration) -> f64 {
    duration.as_secs_f64() / DAY as f64
}

fn is_same_complaint(first: &Visit, second: &Visit) -> bool {
    first.tree == second.tree
}

/// Kaplan and Meier's estimate of the share that is called back within 30 days.
fn within_30_days(follow_ups: impl Iterator<Item = FollowUp>) -> f64 {
    let waits = follow_ups.map(|follow_up| Wait {
        time: follow_up.days,
        came: follow_up.called_back,
    });
    1.0 - Curve::of(waits).at(30.0, LEVEL).still
}
