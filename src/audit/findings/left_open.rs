//! Calls that left something open: a put-back refused, or the call abandoned with one open.

use serde::Serialize;

use super::super::call::Call;
use super::super::summary::SessionRef;
use super::super::visits::Visits;

/// A call that left something open.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LeftOpen {
    /// Its session.
    pub session: SessionRef,
    /// Who walked it.
    pub technician: Option<String>,
    /// At which equipment.
    pub equipment: Option<String>,
    /// Why it is open.
    pub why: WhyOpen,
    /// What was not put back, by its registered names.
    pub put_backs: Vec<String>,
}

/// Why something is open.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum WhyOpen {
    /// The technician refused to put it back, in writing.
    Refused,
    /// The call had not ended, or what it had opened was not asked for any more.
    Abandoned,
}

/// Collects the calls that left something open.
#[derive(Debug, Default)]
pub(in super::super) struct LeftOpens(Vec<(u32, WhyOpen, Vec<String>)>);

impl LeftOpens {
    pub fn add(&mut self, call: &Call, number: u32) {
        if !call.left_open() {
            return;
        }
        let put_backs = &call.put_backs;
        let why = match put_backs.open.is_empty() {
            true => WhyOpen::Refused,
            false => WhyOpen::Abandoned,
        };
        let names = put_backs
            .open
            .iter()
            .chain(&put_backs.refused)
            .map(ToString::to_string)
            .collect();
        self.0.push((number, why, names));
    }

    pub fn found(self, visits: &Visits) -> Vec<LeftOpen> {
        let found = self.0.into_iter().map(|(number, why, put_backs)| {
            let visit = visits.get(number);
            LeftOpen {
                session: visits.session(number),
                technician: visits.owned(visit.technician),
                equipment: visits.owned(visit.equipment),
                why,
                put_backs,
            }
        });
        found.collect()
    }
}
