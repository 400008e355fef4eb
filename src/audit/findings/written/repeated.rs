//! The same value again and again: a furnace is not like the next one to the last digit.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::Serialize;

use super::super::super::call::Call;
use super::super::super::rows::Sessions;
use super::super::super::statistics::{binomial, false_discovery};
use super::super::super::visits::{NameNo, Visits};

/// Fewest takings of a reading that are looked at.
const FEWEST: u64 = 8;

/// Of a list of values that stand out, so large a share may do so by chance.
const BY_CHANCE: f64 = 0.01;

/// Most different values that are kept of one reading and technician; rarer ones give way to new ones.
const VALUES: usize = 48;

/// Most calls that are kept with one value.
const CALLS: usize = 200;

/// A value that one technician gives for a reading again and again, and the others do not.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Repeated {
    /// Who.
    pub technician: String,
    /// Which reading.
    pub reading: String,
    /// The value.
    pub value: f64,
    /// The unit of that.
    pub unit: String,
    /// How often, at least.
    pub times: u64,
    /// Of how many takings.
    pub of: u64,
    /// How often all others gave it.
    pub others: u64,
    /// Of how many takings of theirs.
    pub others_of: u64,
    /// How often chance alone would repeat it so, if it were as common as with the others; corrected for looking at all.
    pub chance: f64,
    /// The first calls with it.
    pub sessions: Sessions,
}

/// Counts values by reading and technician.
#[derive(Debug, Default)]
pub(super) struct Values {
    readings: BTreeMap<NameNo, BTreeMap<NameNo, Common>>,
    units: BTreeMap<NameNo, String>,
}

/// The commonest values among many, in bounded memory: those that are more than one in [`VALUES`] are sure to be kept, and
/// counted too low by no more than that share (Misra and Gries, Finding repeated elements, 1982). All are exact as long as
/// there are no more different ones.
#[derive(Debug, Default)]
struct Common {
    of: u64,
    values: Vec<Value>,
}

/// A value, with the first calls that gave it: nearly all are given in one, so that takes no list.
#[derive(Debug)]
struct Value {
    value: f64,
    times: u32,
    call: u32,
    /// The same call and those after it, where there are several.
    #[allow(
        clippy::box_collection,
        reason = "nearly all are empty, and a list that is not there takes a third so"
    )]
    calls: Option<Box<Vec<u32>>>,
}

const _: () = assert!(
    size_of::<Value>() == 24,
    "there are many for each technician and reading"
);

impl Values {
    pub fn add(&mut self, call: &Call, number: u32, technician: NameNo, visits: &mut Visits) {
        for taken in call.readings.iter().filter(|taken| taken.typed.is_some()) {
            let reading = visits.name(&taken.reading);
            let technicians = self.readings.entry(reading).or_insert_with(|| {
                self.units.insert(reading, taken.unit.to_string());
                BTreeMap::new()
            });
            technicians
                .entry(technician)
                .or_default()
                .add(taken.value, number);
        }
    }

    pub fn found(self, visits: &Arc<Visits>) -> Vec<Repeated> {
        let mut found = Vec::new();
        let mut chances = Vec::new();
        for (reading, technicians) in &self.readings {
            let all: u64 = technicians.values().map(|common| common.of).sum();
            for (technician, common) in technicians.iter().filter(|(_, common)| common.of >= FEWEST) {
                let Some(commonest) = common.values.iter().max_by_key(|value| value.times) else {
                    continue;
                };
                let others_of = all - common.of;
                let others = (technicians.iter())
                    .filter(|(other, _)| *other != technician)
                    .map(|(_, common)| common.times(commonest.value))
                    .sum();
                // Nobody else to compare with, or not enough: one in ten may be given by all.
                let usual = ((others + 1) as f64 / (others_of + 10) as f64).min(1.0);
                let chance = binomial::at_least(commonest.times.into(), common.of, usual);
                chances.push(chance);
                // A value that is less than half of them is nothing to look at, however rare it is elsewhere.
                let is_half = 2 * u64::from(commonest.times) >= common.of;
                found.push(is_half.then(|| Repeated {
                    technician: visits.owned(*technician).unwrap_or_default(),
                    reading: visits.owned(*reading).unwrap_or_default(),
                    value: commonest.value,
                    unit: self.units.get(reading).cloned().unwrap_or_default(),
                    times: commonest.times.into(),
                    of: common.of,
                    others,
                    others_of,
                    chance,
                    sessions: Sessions::of_calls(visits, commonest.calls().to_vec()),
                }));
            }
        }
        let adjusted = false_discovery::adjusted(&chances);
        let mut found: Vec<Repeated> = (found.into_iter().zip(adjusted))
            .filter(|(_, chance)| *chance <= BY_CHANCE)
            .filter_map(|(repeated, chance)| Some(Repeated { chance, ..repeated? }))
            .collect();
        found.sort_by(|one, other| (&one.technician, &one.reading).cmp(&(&other.technician, &other.reading)));
        found
    }
}

impl Value {
    /// One more call that gave it; given twice in a call, that is named once.
    fn again(&mut self, call: u32) {
        self.times = self.times.saturating_add(1);
        if self.calls().len() < CALLS && self.calls().last() != Some(&call) {
            self.calls
                .get_or_insert_with(|| Box::new(vec![self.call]))
                .push(call);
        }
    }

    fn calls(&self) -> &[u32] {
        match &self.calls {
            None => std::slice::from_ref(&self.call),
            Some(calls) => calls,
        }
    }
}

impl Common {
    fn add(&mut self, value: f64, call: u32) {
        self.of += 1;
        if let Some(known) = self.values.iter_mut().find(|known| known.value == value) {
            known.again(call);
        } else if self.values.len() < VALUES {
            if self.values.len() == self.values.capacity() {
                let more = self.values.len().max(3).min(VALUES - self.values.len());
                self.values.reserve_exact(more);
            }
            self.values.push(Value {
                value,
                times: 1,
                call,
                calls: None,
            });
        } else {
            self.values.iter_mut().for_each(|known| known.times -= 1);
            self.values.retain(|known| known.times > 0);
        }
    }

    fn times(&self, value: f64) -> u64 {
        self.values
            .iter()
            .find(|known| known.value == value)
            .map_or(0, |known| known.times.into())
    }
}
