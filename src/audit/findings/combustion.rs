//! Combustion tests that were skipped: after work on a furnace that was left to run, nobody measured its flue gas.
//!
//! A call counts where something was replaced or set right and its library knows readings of the flue gas. A later call at the
//! same equipment within a day may have made the test: proving a repair is often walked as a call of its own. Other calls that
//! asked for such a reading and did not get it are named apart, whatever they ended in: they skipped nothing after work.

use std::collections::HashMap;

use jiff::SignedDuration;
use serde::Serialize;

use super::super::call::Call;
use super::super::summary::{Rate, SessionRef};
use super::super::visits::{NO_NAME, RemedyKind, Tested, Visit, Visits};

/// How long after the work a test still counts for it.
const SOON: SignedDuration = SignedDuration::from_hours(24);

/// Most calls that are named although nobody asked for the test; where it is never made, that would be all of an archive.
const NAMED: u64 = 1000;

/// Combustion tests that were skipped.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Combustion {
    /// Closed calls that replaced or set right something and were not followed by a test, over all that did such work.
    pub skipped: Rate,
    /// Those calls: all that asked for a test and did not get it, and the first thousand of the others.
    pub calls: Vec<NoTest>,
    /// Calls beside those that asked for a test and did not get it: nothing was worked on, the call was left, or it was made soon
    /// after.
    pub not_taken: Vec<NoTest>,
}

/// A call without the test.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct NoTest {
    /// Its session.
    pub session: SessionRef,
    /// Who walked it.
    pub technician: Option<String>,
    /// At which equipment.
    pub equipment: Option<String>,
    /// The fault that was seen to.
    pub fault: Option<String>,
    /// Why it could not be taken, in the technician's words; none where it was not asked for.
    pub why: Option<String>,
}

/// Collects the calls that asked for a test and did not get it.
#[derive(Debug, Default)]
pub(in super::super) struct Tests {
    refused: HashMap<u32, String>,
}

impl Tests {
    pub fn add(&mut self, call: &Call, number: u32) {
        let is_tested = |name: &str| call.readings.iter().any(|taken| taken.reading == name);
        let mut not_taken = call.not_taken.iter().filter(|not| not.combustion);
        if let Some(refused) = not_taken.find(|not| !is_tested(&not.datum)) {
            self.refused.insert(number, refused.why.to_string());
        }
    }

    pub fn found(mut self, visits: &Visits, by_equipment: &[u32]) -> Combustion {
        let tested = tested_soon(visits, by_equipment);
        let (mut worked, mut skipped) = (0, 0);
        let (mut calls, mut not_taken) = (Vec::new(), Vec::new());
        for (number, visit) in visits.iter().enumerate() {
            let number = number as u32;
            let refused = self.refused.remove(&number);
            let was_worked_on = is_worked_on(&visit);
            let is_skipped = was_worked_on && !tested[number as usize];
            worked += u64::from(was_worked_on);
            skipped += u64::from(is_skipped);
            if refused.is_some() || (is_skipped && skipped <= NAMED) {
                let list = if is_skipped { &mut calls } else { &mut not_taken };
                list.push(NoTest {
                    session: visits.session(number),
                    technician: visits.owned(visit.technician),
                    equipment: visits.owned(visit.equipment),
                    fault: visits.owned(visit.fault),
                    why: refused,
                });
            }
        }
        // A test that was asked for and refused says more than one that nobody asked for.
        calls.sort_by_key(|call: &NoTest| call.why.is_none());
        Combustion {
            skipped: Rate::new(skipped, worked),
            calls,
            not_taken,
        }
    }
}

/// Whether a call worked on a furnace, left it to run, and could have tested its flue gas.
fn is_worked_on(visit: &Visit) -> bool {
    let worked = matches!(visit.remedy, RemedyKind::Replace | RemedyKind::Correct);
    worked && visit.closed.is_some() && visit.combustion != Tested::Unknown
}

/// The calls that tested the flue gas themselves, or were followed by one that did, soon.
fn tested_soon(visits: &Visits, by_equipment: &[u32]) -> Vec<bool> {
    let mut tested: Vec<bool> = visits
        .iter()
        .map(|visit| visit.combustion == Tested::Yes)
        .collect();
    // From the last to the first, so that the next test at the same equipment is at hand.
    let (mut equipment, mut next) = (NO_NAME, None);
    for &number in by_equipment.iter().rev() {
        let visit = visits.get(number);
        if visit.equipment != equipment {
            (equipment, next) = (visit.equipment, None);
        }
        let soon = |test: jiff::Timestamp| test.duration_since(visit.opened) <= SOON;
        if next.is_some_and(soon) {
            tested[number as usize] = true;
        }
        if visit.combustion == Tested::Yes {
            next = Some(visit.opened);
        }
    }
    tested
}
