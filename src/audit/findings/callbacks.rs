//! Calls that came back.
//!
//! A callback is a closed call that is followed by another call opened at the same equipment within the window: from the
//! instant of its closing, the last instant included. Calls follow one another in the order they were opened. A call that was
//! opened before the other was closed does not follow it: nobody called back.
//!
//! A walk that only proves work, by the tree that its library names for that, is no call that came back, whoever walks it and when:
//! nobody called for it. It is none that can come back either, since the work that it proves is one already. Where something to do
//! comes of it, it is a call like any other.
//!
//! A next call may belong to the *same visit* (see [`SameVisits`]): the combustion check after a repair, say. It is a callback by its
//! definition, and told apart. A call is *settled* once its whole window lies before
//! the end of the archive; whether it came back on another visit is what groups are held against each other by. Otherwise those
//! who are careful would seem to have callbacks, and those who are new to have none.

use std::sync::Arc;

use jiff::{SignedDuration, Timestamp};
use serde::Serialize;

use super::super::auditor::Window;
use super::super::clocks::Ends;
use super::super::groups::is_misdiagnosed;
use super::super::rows::Rows;
use super::super::summary::{Callbacks, FollowUp, Rate, SessionRef};
use super::super::visits::{Visit, Visits};
use super::expected::Expectations;
use super::misdiagnosis::Misdiagnosis;
use super::same_visit::SameVisits;

const DAY: i64 = 24 * 60 * 60;

/// Two calls at one equipment, the second the next after the first: a callback, or a call that was left and somebody came again.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Pair {
    /// The call that was closed or left.
    pub first: SessionRef,
    /// The call that followed.
    pub second: SessionRef,
    /// At which equipment.
    pub equipment: String,
    /// Who walked the first.
    pub technician: Option<String>,
    /// Who walked the second.
    pub second_technician: Option<String>,
    /// Days of 24 h from the closing of the first, or from its last record where it was left, to the opening of the second.
    pub days: f64,
    /// Both began with the same complaint.
    pub same_complaint: bool,
    /// Both belong to one visit of the technician, who is named.
    pub same_visit: bool,
    /// The fault that the first ended in.
    pub fault: Option<String>,
    /// The outcome of its tree that the first ended in.
    pub outcome: Option<String>,
    /// The fault that the second ended in.
    pub then: Option<String>,
    /// The outcome of its tree that the second ended in.
    pub then_outcome: Option<String>,
}

impl Pair {
    fn of(visits: &Visits, (one, other, same_visit): &(u32, u32, bool)) -> Self {
        let (first, second) = (visits.get(*one), visits.get(*other));
        Self {
            first: visits.session(*one),
            second: visits.session(*other),
            equipment: visits.owned(first.equipment).unwrap_or_default(),
            technician: visits.owned(first.technician),
            second_technician: visits.owned(second.technician),
            days: between(&first, &second),
            same_complaint: is_same_complaint(&first, &second),
            same_visit: *same_visit,
            fault: visits.owned(first.fault),
            outcome: visits.owned(first.outcome),
            then: visits.owned(second.fault),
            then_outcome: visits.owned(second.outcome),
        }
    }
}

/// What followed each closed call with an equipment.
#[derive(Debug)]
pub(in super::super) struct Followed {
    window: Window,
    until: Option<Timestamp>,
    list: Vec<Follow>,
    /// The calls that were left before they were closed, each with the next within the window.
    left: Vec<(u32, u32, bool)>,
    /// Pairs of calls that begin alike at the same instant.
    twins: Vec<(u32, u32)>,
    /// How many closed walks only prove what was done on a call.
    proofs: u64,
}

/// What followed one call.
#[derive(Clone, Copy, Debug)]
struct Follow {
    call: u32,
    /// The next call at its equipment; of no meaning where none came.
    next: u32,
    what: What,
    /// The next call came within the window, on the same visit.
    same_visit: bool,
    /// A call came within the window that was not on the same visit.
    came_again: bool,
    /// The whole window lies before the end of the archive.
    is_settled: bool,
}

/// What became of a closed call with an equipment.
#[derive(Clone, Copy, Debug)]
pub(in super::super) struct Fate {
    pub call: u32,
    /// The call that it came back as.
    pub next: Option<u32>,
    /// That is of the same visit.
    pub same_visit: bool,
    /// Whether it came back on another visit; none where its window is not over.
    pub settled: Option<bool>,
}

/// What came after a call.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum What {
    /// The next call, within the window.
    Callback,
    /// The next call, but later.
    Later,
    /// No call, for the whole window and up to the end of the archive.
    Nothing,
    /// No call so far: the archive ends before the window does.
    TooSoon,
    /// Nobody knows: its clock is doubted.
    InDoubt,
}

impl Followed {
    /// Looks for what followed each call.
    pub fn new(visits: &Visits, by_equipment: &[u32], window: Window, ends: Ends) -> Self {
        let days = SignedDuration::from_secs(i64::from(window.days) * DAY);
        let mut list = Vec::with_capacity(by_equipment.len());
        let (mut left, mut twins, mut proofs) = (Vec::new(), Vec::new(), 0);
        let mut same = SameVisits::default();
        for calls in by_equipment.chunk_by(|one, other| visits.equipment(*one) == visits.equipment(*other)) {
            same.take(visits, calls);
            for (place, call) in calls.iter().enumerate() {
                let visit = visits.get(*call);
                let later = &calls[place + 1..];
                let twin = later.first().filter(|next| is_twin(&visit, &visits.get(**next)));
                twins.extend(twin.map(|next| (*call, *next)));
                if visits.is_proof(*call) {
                    proofs += u64::from(visit.closed.is_some());
                    continue;
                }
                let after = place + 1 + later.partition_point(|next| visits.opened(*next) < visit.left);
                let next = same.next(after);
                let is_same_visit = next.is_some_and(|next| same.are_one(visits, calls, place, next));
                let next = next.map(|next| calls[next]);
                let Some(closed) = visit.closed else {
                    let soon = |next: &u32| visits.opened(*next).duration_since(visit.left) <= days;
                    left.extend(next.filter(soon).map(|next| (*call, next, is_same_visit)));
                    continue;
                };
                let came = next.map(|next| visits.opened(next));
                let followed = ends.until.unwrap_or(closed).duration_since(closed);
                let what = match came {
                    Some(came) if came.duration_since(closed) <= days => What::Callback,
                    _ if ends.is_before(closed) => What::InDoubt,
                    // What is dated after the end says nothing of when somebody called.
                    Some(came) if !ends.is_after(came) => What::Later,
                    _ if followed >= days => What::Nothing,
                    _ => What::TooSoon,
                };
                let another = same.another(visits, calls, place, after);
                let soon = |next: usize| visits.opened(calls[next]).duration_since(closed) <= days;
                list.push(Follow {
                    call: *call,
                    next: next.unwrap_or(*call),
                    what,
                    same_visit: what == What::Callback && is_same_visit,
                    came_again: another.is_some_and(soon),
                    is_settled: followed >= days && !ends.is_before(closed),
                });
            }
        }
        Self {
            window,
            until: ends.until,
            list,
            left,
            twins,
            proofs,
        }
    }

    /// The calls that came back, each with the one that followed, and whether that was on the same visit.
    fn came_back(&self) -> impl Iterator<Item = (u32, u32, bool)> {
        let callbacks = self.list.iter().filter(|follow| follow.what == What::Callback);
        callbacks.map(|follow| (follow.call, follow.next, follow.same_visit))
    }

    /// What became of each closed call with an equipment.
    pub fn each(&self) -> impl Iterator<Item = Fate> {
        self.list.iter().map(|follow| Fate {
            call: follow.call,
            next: (follow.what == What::Callback).then_some(follow.next),
            same_visit: follow.same_visit,
            settled: follow.is_settled.then_some(follow.came_again),
        })
    }

    /// Each closed call with an equipment, and whether it held: it came back on another visit, or was followed for the whole window
    /// and did not; none where it has not had its days yet.
    pub fn held(&self) -> impl Iterator<Item = (u32, Option<bool>)> {
        self.list.iter().map(|follow| {
            let held = match follow.came_again {
                true => Some(false),
                false => follow.is_settled.then_some(true),
            };
            (follow.call, held)
        })
    }

    pub fn counts(&self, visits: &Visits) -> Callbacks {
        let of = self.list.len() as u64;
        let same = |(first, second, _): &(u32, u32, bool)| {
            is_same_complaint(&visits.get(*first), &visits.get(*second))
        };
        let expected = Expectations::of(self.waits(visits), self.window);
        let mut nexts: Vec<u32> = self.came_back().map(|(_, next, _)| next).collect();
        nexts.sort_unstable();
        nexts.dedup();
        let settled = || self.list.iter().filter(|follow| follow.is_settled);
        let came_again = settled().filter(|follow| follow.came_again).count();
        let (at_30, at_window) = (expected.at_30_days, expected.at_window);
        Callbacks {
            rate: Rate::new(self.came_back().count() as u64, of),
            at_30_days: at_30.share,
            at_30_days_low: at_30.low,
            at_30_days_high: at_30.high,
            at_window: at_window.known(),
            at_window_low: at_window.low,
            at_window_high: at_window.high,
            followed_days: expected.followed_days,
            same_complaint: Rate::new(self.came_back().filter(same).count() as u64, of),
            same_visit: self.list.iter().filter(|follow| follow.same_visit).count() as u64,
            returns: nexts.len() as u64,
            proofs: self.proofs,
            settled: Rate::new(came_again as u64, settled().count() as u64),
        }
    }

    /// The calls that came back.
    pub fn pairs(&self, visits: &Arc<Visits>) -> Rows<Pair> {
        Rows::of(visits, sorted(visits, self.came_back()), Pair::of)
    }

    /// The calls that were left, and somebody came again.
    pub fn came_again(&self, visits: &Arc<Visits>) -> Rows<Pair> {
        Rows::of(visits, sorted(visits, self.left.iter().copied()), Pair::of)
    }

    /// The callbacks that make a misdiagnosis suspected.
    pub fn misdiagnoses(&self, visits: &Arc<Visits>) -> Rows<Misdiagnosis> {
        let suspected =
            |(one, other, _): &(u32, u32, bool)| is_misdiagnosed(&visits.get(*one), &visits.get(*other));
        let pairs = sorted(visits, self.came_back().filter(suspected));
        Rows::of(visits, pairs, Misdiagnosis::of)
    }

    /// Pairs of calls that begin alike at the same instant.
    pub fn twins(&self) -> &[(u32, u32)] {
        &self.twins
    }

    /// How long each closed call with an equipment was followed.
    pub fn follow_ups(self, visits: &Arc<Visits>) -> Rows<FollowUp> {
        let visits = Arc::clone(visits);
        Rows::made(self.list.len(), move |at| self.wait(&visits, &self.list[at]))
    }

    fn waits(&self, visits: &Visits) -> impl Iterator<Item = FollowUp> {
        self.list.iter().map(|follow| self.wait(visits, follow))
    }

    fn wait(&self, visits: &Visits, follow: &Follow) -> FollowUp {
        // Only closed calls are followed.
        let closed = Some(visits.left(follow.call));
        let days = match follow.what {
            What::Callback | What::Later => days(closed, Some(visits.opened(follow.next))),
            // Closed after the end by a clock that is doubted, it was not followed at all.
            What::Nothing | What::TooSoon => days(closed, self.until).max(0.0),
            What::InDoubt => 0.0,
        };
        FollowUp::new(days, matches!(follow.what, What::Callback | What::Later))
    }
}

/// Pairs of calls in the order of their equipment.
fn sorted(visits: &Visits, pairs: impl Iterator<Item = (u32, u32, bool)>) -> Vec<(u32, u32, bool)> {
    let mut list: Vec<(u32, u32, bool)> = pairs.collect();
    let equipment = |call: u32| visits.named(visits.equipment(call));
    list.sort_unstable_by(|(one, ..), (other, ..)| {
        let by_session = || visits.session(*one).cmp(&visits.session(*other));
        equipment(*one).cmp(&equipment(*other)).then_with(by_session)
    });
    list
}

/// Days of 24 h from the closing of a call, or from when it was left, to the opening of the next.
pub(super) fn between(first: &Visit, second: &Visit) -> f64 {
    days(Some(first.left), Some(second.opened))
}

fn days(from: Option<Timestamp>, to: Option<Timestamp>) -> f64 {
    let duration = from.zip(to).map(|(from, to)| to.duration_since(from));
    duration.unwrap_or_default().as_secs_f64() / DAY as f64
}

/// Whether two calls at an equipment begin alike at the same instant, as a copy does.
fn is_twin(one: &Visit, other: &Visit) -> bool {
    one.opened == other.opened && one.technician == other.technician && one.tree == other.tree
}

fn is_same_complaint(first: &Visit, second: &Visit) -> bool {
    first.tree == second.tree
}
