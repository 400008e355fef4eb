//! The minutes that worked calls took, as they were walked.

use std::collections::BTreeMap;

use crate::library::{Datum, Fault, Id, Kind, Library, Tree};
use crate::walk::{End, Passed, Said, passed, rehearse};

/// Worked calls that began in one tree and ended in one verdict.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Calls {
    /// How many.
    pub count: usize,
    /// Their minutes, all together.
    pub minutes: f64,
}

impl Calls {
    /// The minutes of one on average; none where there is no call.
    pub fn mean(self) -> Option<f64> {
        (self.count > 0).then(|| self.minutes / self.count as f64)
    }
}

impl std::ops::AddAssign for Calls {
    fn add_assign(&mut self, other: Self) {
        self.count += other.count;
        self.minutes += other.minutes;
    }
}

/// The worked calls of a library that end in a verdict, by where they began and where they ended.
///
/// What was asked again, since it lay close to a bound or was not plausible, was taken again and counts again.
pub fn calls(library: &Library) -> BTreeMap<(Id<Tree>, Id<Fault>), Calls> {
    let mut calls: BTreeMap<_, Calls> = BTreeMap::new();
    for scenario in &library.scenarios {
        let run = rehearse(library, scenario);
        let Some(End::Verdict { fault, .. }) = &run.state.ended else {
            continue;
        };
        let (Some(fault), Ok(steps)) = (library.faults.find(fault), passed(library, &run.events)) else {
            continue;
        };
        *calls.entry((scenario.tree, fault)).or_default() += Calls {
            count: 1,
            minutes: steps.iter().map(|step| minutes(library, step)).sum(),
        };
    }
    calls
}

fn minutes(library: &Library, passed: &Passed) -> f64 {
    let step = &library[passed.step];
    if matches!(step.kind, Kind::Do { .. }) {
        return step.minutes.unwrap_or_default();
    }
    let mut times: BTreeMap<Datum, usize> = BTreeMap::new();
    for said in &passed.said {
        let datum = match said {
            Said::Value { worked_out: true, .. } => continue,
            Said::Value { datum, .. }
            | Said::Again { datum, .. }
            | Said::Unable(datum)
            | Said::Unsure(datum) => *datum,
        };
        *times.entry(datum).or_default() += 1;
    }
    if let Some(minutes) = step.minutes {
        return minutes * times.values().max().copied().unwrap_or_default() as f64;
    }
    let each = times.iter().map(|(datum, times)| {
        let taking = match datum {
            Datum::Reading(id) => &library.readings[*id].taking,
            Datum::Sign(id) => &library.signs[*id].taking,
            Datum::Field(_) => return 0.0,
        };
        taking.minutes.unwrap_or_default() * *times as f64
    });
    each.sum()
}
