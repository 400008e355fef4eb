//! Calls that were left before they were closed, and somebody came again.
//!
//! Such a call is no callback: it was never closed, so nobody can call back about it. But a furnace that was driven away from and
//! seen again is what a service manager asks about first, so it is told beside the callbacks, and counts among none of them.

use serde::Serialize;

use super::super::summary::SessionRef;
use super::super::visits::Visits;
use super::callbacks::between;

/// A call that was left before it was closed, and followed by another at the same equipment within the window.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CameAgain {
    /// The call that was left: it never ended, or something it had opened was not put back.
    pub first: SessionRef,
    /// The call that followed.
    pub second: SessionRef,
    /// At which equipment.
    pub equipment: String,
    /// Who left the first.
    pub technician: Option<String>,
    /// Who walked the second.
    pub second_technician: Option<String>,
    /// Days of 24 h from the last record of the first to the opening of the second.
    pub days: f64,
    /// The fault that the second ended in.
    pub then: Option<String>,
}

/// A call that was left, with the one that followed.
pub(super) fn came_again(visits: &Visits, one: u32, other: u32) -> CameAgain {
    let (first, second) = (visits.get(one), visits.get(other));
    CameAgain {
        first: visits.session(one),
        second: visits.session(other),
        equipment: visits.owned(first.equipment).unwrap_or_default(),
        technician: visits.owned(first.technician),
        second_technician: visits.owned(second.technician),
        days: between(&first, &second),
        then: visits.owned(second.fault),
    }
}
