//! Borderline readings on the way to a verdict: another meter could have led elsewhere.
//!
//! A borderline reading never completes a proof. But it lay as close to a bound of its step as the meter is exact, and the step
//! sorted by that bound: it decided where the walk went.

use std::sync::Arc;

use serde::Serialize;

use super::super::call::Call;
use super::super::rows::Rows;
use super::super::summary::SessionRef;
use super::super::visits::{NameNo, Visits};

/// A borderline reading that decided on the way to a verdict.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Borderline {
    /// Its session.
    pub session: SessionRef,
    /// Who walked it.
    pub technician: Option<String>,
    /// At which equipment.
    pub equipment: Option<String>,
    /// The fault that the call ended in.
    pub fault: Option<String>,
    /// Which reading.
    pub reading: String,
    /// Its value.
    pub value: f64,
    /// The unit of that.
    pub unit: String,
    /// What the meter leaves open, on either side, in the same unit.
    pub margin: f64,
}

/// Collects borderline readings.
#[derive(Debug, Default)]
pub(in super::super) struct Borderlines(Vec<Close>);

/// A reading that was close to a bound, as far as it is kept.
#[derive(Debug)]
struct Close {
    value: f64,
    margin: f64,
    call: u32,
    reading: NameNo,
    unit: NameNo,
}

impl Borderlines {
    pub fn add(&mut self, call: &Call, number: u32, visits: &mut Visits) {
        if call.verdict().is_none() {
            return;
        }
        let stood = call
            .readings
            .iter()
            .filter(|taken| taken.borderline && !taken.superseded);
        self.0.extend(stood.map(|taken| Close {
            value: taken.value,
            margin: taken.margin,
            call: number,
            reading: visits.name(&taken.reading),
            unit: visits.name(&taken.unit),
        }));
    }

    pub fn found(self, visits: &Arc<Visits>) -> Rows<Borderline> {
        Rows::of(visits, self.0, |visits, close| {
            let visit = visits.get(close.call);
            Borderline {
                session: visits.session(close.call),
                technician: visits.owned(visit.technician),
                equipment: visits.owned(visit.equipment),
                fault: visits.owned(visit.fault),
                reading: visits.owned(close.reading).unwrap_or_default(),
                value: close.value,
                unit: visits.owned(close.unit).unwrap_or_default(),
                margin: close.margin,
            }
        })
    }
}
