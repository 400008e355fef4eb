//! Which verdicts held: how often each fault was proven, and what became of that.
//!
//! From this weights are learned. Only closed calls count. A verdict that the technician insisted on is no proof, and does not count.

use std::collections::BTreeMap;

use serde::Serialize;

use super::findings::Followed;
use super::visits::{EndKind, Visits};

/// What became of the proven verdicts of a fault.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Learned {
    /// The fault.
    pub fault: String,
    /// Closed calls with an equipment that ended in it, proven.
    pub proven: u64,
    /// Those that were followed for the whole window and did not come back on another visit.
    pub held: u64,
    /// Those that did within it.
    pub came_back: u64,
}

/// Every fault that was proven, in the order of their names. What is neither held nor came back has not had its days yet.
pub(super) fn learned(visits: &Visits, followed: &Followed) -> Vec<Learned> {
    let mut faults: BTreeMap<&str, Learned> = BTreeMap::new();
    for (call, held) in followed.held() {
        let visit = visits.get(call);
        let Some(fault) = visits.named(visit.fault).filter(|_| is_proven(visit.end)) else {
            continue;
        };
        let learned = faults.entry(fault).or_insert_with(|| Learned {
            fault: fault.to_owned(),
            ..Learned::default()
        });
        learned.proven += 1;
        learned.held += u64::from(held == Some(true));
        learned.came_back += u64::from(held == Some(false));
    }
    faults.into_values().collect()
}

fn is_proven(end: EndKind) -> bool {
    match end {
        EndKind::Verdict | EndKind::Outcome => true,
        EndKind::Insisted | EndKind::Unproven | EndKind::Open => false,
    }
}
