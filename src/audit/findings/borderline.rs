//! Borderline readings on the way to a verdict: another meter could have led elsewhere.
//!
//! A borderline reading never completes a proof. But it lay as close to a bound of its step as the meter is exact, and the step
//! sorted by that bound: it decided where the walk went.

use serde::Serialize;

use super::super::call::Call;
use super::super::summary::SessionRef;
use super::super::visits::Visits;

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
pub(in super::super) struct Borderlines(Vec<(u32, String, f64, String, f64)>);

impl Borderlines {
    pub fn add(&mut self, call: &Call, number: u32) {
        if call.verdict().is_none() {
            return;
        }
        let stood = call
            .readings
            .iter()
            .filter(|taken| taken.borderline && !taken.superseded);
        for taken in stood {
            let (reading, unit) = (taken.reading.to_string(), taken.unit.to_string());
            self.0.push((number, reading, taken.value, unit, taken.margin));
        }
    }

    pub fn found(self, visits: &Visits) -> Vec<Borderline> {
        let found = self.0.into_iter().map(|(number, reading, value, unit, margin)| {
            let visit = visits.get(number);
            Borderline {
                session: visits.session(number),
                technician: visits.owned(visit.technician),
                equipment: visits.owned(visit.equipment),
                fault: visits.owned(visit.fault),
                reading,
                value,
                unit,
                margin,
            }
        });
        found.collect()
    }
}
