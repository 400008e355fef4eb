//! Calls that left something open: a put-back refused, or the call abandoned with one open.

use std::sync::Arc;

use serde::Serialize;

use super::super::call::Call;
use super::super::rows::Rows;
use super::super::summary::SessionRef;
use super::super::visits::{NameNo, Visits};

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
pub(in super::super) struct LeftOpens(Vec<Open>);

/// A call that left something open, as far as it is kept.
#[derive(Debug)]
struct Open {
    call: u32,
    why: WhyOpen,
    put_backs: Box<[NameNo]>,
}

impl LeftOpens {
    pub fn add(&mut self, call: &Call, number: u32, visits: &mut Visits) {
        if !call.left_open() {
            return;
        }
        let put_backs = &call.put_backs;
        let why = match put_backs.open.is_empty() {
            true => WhyOpen::Refused,
            false => WhyOpen::Abandoned,
        };
        let names = put_backs.open.iter().chain(&put_backs.refused);
        self.0.push(Open {
            call: number,
            why,
            put_backs: names.map(|name| visits.name(name)).collect(),
        });
    }

    pub fn found(self, visits: &Arc<Visits>) -> Rows<LeftOpen> {
        Rows::of(visits, self.0, |visits, open| {
            let visit = visits.get(open.call);
            let names = open.put_backs.iter().filter_map(|name| visits.owned(*name));
            LeftOpen {
                session: visits.session(open.call),
                technician: visits.owned(visit.technician),
                equipment: visits.owned(visit.equipment),
                why: open.why,
                put_backs: names.collect(),
            }
        })
    }
}
