//! Parts condemned by proof, against parts insisted on.

use serde::Serialize;

use super::super::summary::SessionRef;
use super::super::visits::{EndKind, NO_NAME, Visits};

/// Parts condemned by proof, against parts insisted on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Condemned {
    /// Calls that condemned a part, and proved it.
    pub proven: u64,
    /// Calls that condemned a part on the technician's own verdict.
    pub insisted: u64,
    /// Every call that ended on the technician's own verdict.
    pub insisted_calls: Vec<Insisted>,
}

/// A call that ended on the technician's own verdict.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Insisted {
    /// Its session.
    pub session: SessionRef,
    /// Whose verdict.
    pub technician: Option<String>,
    /// At which equipment.
    pub equipment: Option<String>,
    /// The fault.
    pub fault: String,
    /// The part it condemned.
    pub part: Option<String>,
}

/// Looks through all calls.
pub(in super::super) fn proven_and_insisted(visits: &Visits) -> Condemned {
    let mut found = Condemned {
        proven: 0,
        insisted: 0,
        insisted_calls: Vec::new(),
    };
    for (number, visit) in visits.iter().enumerate() {
        let condemns = u64::from(visit.part != NO_NAME);
        if visit.end != EndKind::Insisted {
            found.proven += condemns;
            continue;
        }
        found.insisted += condemns;
        found.insisted_calls.push(Insisted {
            session: visits.session(number as u32),
            technician: visits.owned(visit.technician),
            equipment: visits.owned(visit.equipment),
            fault: visits.owned(visit.fault).unwrap_or_default(),
            part: visits.owned(visit.part),
        });
    }
    found
}
