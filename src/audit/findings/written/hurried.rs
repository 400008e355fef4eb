//! Answers faster than a hand can measure: in less than a tenth of the minutes that the library gives for a reading.

use std::sync::Arc;

use serde::Serialize;

use super::super::super::call::{Call, Taken};
use super::super::super::rows::Rows;
use super::super::super::summary::SessionRef;
use super::super::super::visits::{NameNo, Visits};

/// Faster than this share of the usual time, nobody measured between question and answer.
const SHARE: f64 = 0.1;

/// Fewest such answers in a call. One may have been measured before it was asked for.
const FEWEST: u64 = 2;

/// A call answered faster than a hand can measure.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Hurried {
    /// Its session.
    pub session: SessionRef,
    /// Who walked it.
    pub technician: Option<String>,
    /// At which equipment.
    pub equipment: Option<String>,
    /// How many readings came in less than a tenth of their usual minutes.
    pub readings: u64,
    /// Of how many whose minutes are known.
    pub of: u64,
    /// The one that came fastest, against its minutes.
    pub reading: String,
    /// How many seconds that took.
    pub seconds: f64,
    /// How many minutes the library gives for it.
    pub minutes: f64,
}

/// Collects calls in a hurry.
#[derive(Debug, Default)]
pub(super) struct Hurry(Vec<Fast>);

#[derive(Debug)]
struct Fast {
    call: u32,
    reading: NameNo,
    readings: u64,
    of: u64,
    seconds: f64,
    minutes: f64,
}

impl Hurry {
    pub fn add(&mut self, call: &Call, number: u32, visits: &mut Visits) {
        // Nobody's hand, or a clock that stood still: set by hand for a demonstration.
        if call.from_file || call.opened == call.last {
            return;
        }
        let timed: Vec<(&Taken, f64, f64)> = (call.readings.iter())
            .filter_map(|taken| {
                let minutes = taken.minutes.filter(|minutes| *minutes > 0.0)?;
                Some((taken, taken.seconds?, minutes))
            })
            .collect();
        let share = |(_, seconds, minutes): &(&Taken, f64, f64)| seconds / (60.0 * minutes);
        let fast = timed.iter().filter(|taken| share(taken) < SHARE);
        let readings = fast.clone().count() as u64;
        let of = timed.len() as u64;
        let fastest = fast.min_by(|one, other| share(one).total_cmp(&share(other)));
        if let Some((taken, seconds, minutes)) = fastest
            && readings >= FEWEST
            && 2 * readings >= of
        {
            self.0.push(Fast {
                call: number,
                reading: visits.name(&taken.reading),
                readings,
                of,
                seconds: *seconds,
                minutes: *minutes,
            });
        }
    }

    pub fn found(self, visits: &Arc<Visits>) -> Rows<Hurried> {
        Rows::of(visits, self.0, |visits, fast| {
            let visit = visits.get(fast.call);
            Hurried {
                session: visits.session(fast.call),
                technician: visits.owned(visit.technician),
                equipment: visits.owned(visit.equipment),
                readings: fast.readings,
                of: fast.of,
                reading: visits.owned(fast.reading).unwrap_or_default(),
                seconds: fast.seconds,
                minutes: fast.minutes,
            }
        })
    }
}
