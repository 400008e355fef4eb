//! Many scenarios, walked one after the other.

use super::{Coverage, Run, rehearse};
use crate::library::{Datum, Library, Placed, Scenario};

/// Scenarios that were walked, with what they came to together.
#[derive(Debug)]
pub struct Rehearsal<'l> {
    /// The library.
    pub library: &'l Library,
    /// How many were walked.
    pub walked: usize,
    /// Those that departed from what they expect.
    pub failed: Vec<(&'l Scenario, Run)>,
    /// What scenarios that held answer, and were never asked for.
    pub idle: Vec<Placed<Datum>>,
    /// What they have walked.
    pub coverage: Coverage<'l>,
}

impl<'l> Rehearsal<'l> {
    /// Walks scenarios of a library.
    pub fn of(library: &'l Library, scenarios: impl IntoIterator<Item = &'l Scenario>) -> Self {
        let mut rehearsal = Self {
            library,
            walked: 0,
            failed: Vec::new(),
            idle: Vec::new(),
            coverage: Coverage::new(library),
        };
        for scenario in scenarios {
            let run = rehearse(library, scenario);
            rehearsal.walked += 1;
            rehearsal.coverage.add(&run.events);
            if run.departures.is_empty() {
                // A walk that departed was asked other things, so what it leaves unasked says nothing.
                rehearsal.idle.extend(run.idle);
            } else {
                rehearsal.failed.push((scenario, run));
            }
        }
        rehearsal
    }
}
