//! Which calls at an equipment belong to one visit of a technician.
//!
//! Where the technician, who is named, opens the next call within an hour of leaving the one before, both belong to one visit: a repair,
//! say, and the combustion check after it. So do calls that overlap and were opened on the same day, and so does, within eight hours, a
//! walk of the tree by which a library has work proven: the verdict ends a call, the work comes after it, and may take the day.
//! The hour, the eight of a working day and the day are our own choice, after common practice.
//!
//! What belongs to one visit hangs together from call to call: the third may begin hours after the first was closed.

use std::collections::HashMap;

use foldhash::fast::RandomState;
use jiff::SignedDuration;

use super::super::visits::{NO_NAME, NameNo, Visit, Visits};

/// How long after a call its technician's next one at the equipment belongs to the same visit, the last instant included.
const SAME_VISIT: SignedDuration = SignedDuration::from_hours(1);

/// The same of a walk by which work is proven.
const WORK: SignedDuration = SignedDuration::from_hours(8);

/// The longest between the openings of two calls that overlap. One that is left open for weeks is not being walked.
const DAY: SignedDuration = SignedDuration::from_hours(24);

/// The visits that the calls at one equipment belong to, by the places of the calls in the order they were opened.
#[derive(Debug, Default)]
pub(super) struct SameVisits {
    places: Vec<Place>,
    latest: HashMap<NameNo, (u32, Visit), RandomState>,
}

/// What is known of the call at a place.
#[derive(Clone, Copy, Debug)]
struct Place {
    /// The number of its visit.
    visit: u32,
    /// The first place from here on of a call that may follow another: of a walk that only proves work, a later one.
    next: u32,
    /// The first such place whose call is of another visit than the one at `next`.
    other: u32,
}

impl SameVisits {
    /// Takes the calls at one equipment, in the order they were opened, in the place of those that were taken before.
    pub fn take(&mut self, visits: &Visits, calls: &[u32]) {
        self.places.clear();
        self.latest.clear();
        for (number, call) in (0..).zip(calls) {
            let call = visits.get(*call);
            let before = self.latest.get(&call.technician);
            let visit = match before.filter(|(_, before)| follows(before, &call)) {
                Some((visit, _)) => *visit,
                None => number,
            };
            self.latest.insert(call.technician, (visit, call));
            let (next, other) = (number, number);
            self.places.push(Place { visit, next, other });
        }
        let end = calls.len() as u32;
        let (mut next, mut other) = (end, end);
        for at in (0..calls.len()).rev() {
            if !visits.is_proof(calls[at]) {
                let is_another = |next: u32| self.places[next as usize].visit != self.places[at].visit;
                if next != end && is_another(next) {
                    other = next;
                }
                next = at as u32;
            }
            (self.places[at].next, self.places[at].other) = (next, other);
        }
    }

    /// The place of the first call from a place on that may follow another.
    pub fn next(&self, from: usize) -> Option<usize> {
        let next = self.places.get(from)?.next as usize;
        (next < self.places.len()).then_some(next)
    }

    /// Whether the calls at two places, one after the other, belong to one visit.
    pub fn are_one(&self, visits: &Visits, calls: &[u32], one: usize, other: usize) -> bool {
        self.places[one].visit == self.places[other].visit
            || follows(&visits.get(calls[one]), &visits.get(calls[other]))
    }

    /// The place of the first call from a place on that may follow the one at another place and does not belong to its visit.
    pub fn another(&self, visits: &Visits, calls: &[u32], one: usize, from: usize) -> Option<usize> {
        let mut at = self.next(from)?;
        while self.are_one(visits, calls, one, at) {
            at = match self.places[at].visit == self.places[one].visit {
                // No later one of the same visit is looked at: there may be very many.
                true => Some(self.places[at].other as usize).filter(|at| *at < self.places.len())?,
                false => self.next(at + 1)?,
            };
        }
        Some(at)
    }
}

/// Whether a call is of the same visit as the one before it.
fn follows(before: &Visit, call: &Visit) -> bool {
    let after = call.opened.duration_since(before.left);
    let most = if call.after_work { WORK } else { SAME_VISIT };
    call.technician != NO_NAME
        && before.technician == call.technician
        && match after.is_negative() {
            true => call.opened.duration_since(before.opened) <= DAY,
            false => after <= most,
        }
}
