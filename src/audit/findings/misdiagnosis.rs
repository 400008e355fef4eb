//! Verdicts that were probably wrong: a part was condemned, and what came back needed something else.
//!
//! A next call that ended in an outcome makes none suspected, also where a fault was noted on its way: that is not what it ended in.

use serde::Serialize;

use super::super::summary::SessionRef;
use super::super::visits::{EndKind, Visits};
use super::callbacks::between;

/// A callback whose first call condemned a part, and whose next ended in a fault with another remedy.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Misdiagnosis {
    /// The call that condemned the part.
    pub first: SessionRef,
    /// The call that followed.
    pub second: SessionRef,
    /// At which equipment.
    pub equipment: String,
    /// Who condemned it.
    pub technician: Option<String>,
    /// The part that was condemned.
    pub condemned: String,
    /// It was condemned on the technician's own verdict, without proof.
    pub insisted: bool,
    /// The fault that the next call ended in.
    pub then: String,
    /// What was done about that: `replace`, `correct`, `shut_down`, `refer`.
    pub remedy: &'static str,
    /// The part that was replaced then.
    pub part: Option<String>,
    /// Days of 24 h between them.
    pub days: f64,
    /// Both belong to one visit of the technician: nobody called back.
    pub same_visit: bool,
}

impl Misdiagnosis {
    /// What is told of a callback that makes one suspected.
    pub(super) fn of(visits: &Visits, (one, other, same_visit): &(u32, u32, bool)) -> Self {
        let (first, second) = (visits.get(*one), visits.get(*other));
        Self {
            first: visits.session(*one),
            second: visits.session(*other),
            equipment: visits.owned(first.equipment).unwrap_or_default(),
            technician: visits.owned(first.technician),
            condemned: visits.owned(first.part).unwrap_or_default(),
            insisted: first.end == EndKind::Insisted,
            then: visits.owned(second.fault).unwrap_or_default(),
            remedy: second.remedy.name(),
            part: visits.owned(second.part),
            days: between(&first, &second),
            same_visit: *same_visit,
        }
    }
}
