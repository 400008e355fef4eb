//! Calls that left something open: a put-back refused, or the call abandoned with one open.

use std::cmp::Reverse;
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
    /// The next call at this equipment that was closed with nothing left open: somebody was there since. Whether it put this back,
    /// too, is for it to tell.
    pub seen_since: Option<SessionRef>,
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
    seen_since: Option<u32>,
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
            seen_since: None,
        });
    }

    /// The calls at whose equipment nobody was since come first, and of them the latest.
    pub fn found(mut self, visits: &Arc<Visits>, by_equipment: &[u32]) -> Rows<LeftOpen> {
        self.look_who_came(visits, by_equipment);
        self.0.sort_by_cached_key(|open| {
            let latest = Reverse((visits.opened(open.call), visits.session(open.call)));
            (open.seen_since.is_some(), latest)
        });
        Rows::of(visits, self.0, |visits, open| {
            let visit = visits.get(open.call);
            let names = open.put_backs.iter().filter_map(|name| visits.owned(*name));
            LeftOpen {
                session: visits.session(open.call),
                technician: visits.owned(visit.technician),
                equipment: visits.owned(visit.equipment),
                why: open.why,
                put_backs: names.collect(),
                seen_since: open.seen_since.map(|call| visits.session(call)),
            }
        })
    }

    fn look_who_came(&mut self, visits: &Visits, by_equipment: &[u32]) {
        if self.0.is_empty() {
            return;
        }
        for calls in by_equipment.chunk_by(|one, other| visits.equipment(*one) == visits.equipment(*other)) {
            for (place, call) in calls.iter().enumerate() {
                // They were added in the order of their numbers.
                let Ok(at) = self.0.binary_search_by_key(call, |open| open.call) else {
                    continue;
                };
                let left = visits.get(*call).left;
                let is_sound = |next: &&u32| {
                    let next = visits.get(**next);
                    next.opened >= left && next.closed.is_some() && !next.left_open
                };
                self.0[at].seen_since = calls[place + 1..].iter().find(is_sound).copied();
            }
        }
    }
}
