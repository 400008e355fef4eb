//! The same value again and again: a furnace is not like the next one to the last digit.
//!
//! Not every number is measured. The dial of a gas meter is chosen, the gas has the heating value that its supplier gives, and who
//! works in one town has its altitude at every house. No library says which readings are such, so two things must speak before
//! anybody is named. Where the others keep to a value of their own as well, a reading is one of that kind, or it is too
//! coarse to differ. And who writes down what was not read does so with most readings, not with the two or three that are looked up.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde::Serialize;

use super::super::super::call::Taken;
use super::super::super::rows::Sessions;
use super::super::super::statistics::{binomial, false_discovery};
use super::super::super::visits::{NameNo, Visits};
use super::commonest::{Common, Value};

/// Fewest takings of a reading that are looked at.
const FEWEST: u64 = 8;

/// Of a list of values that stand out, so large a share may do so by chance.
const BY_CHANCE: f64 = 0.01;

/// A value that one technician gives for a reading again and again, and the others do not. It is told only of technicians of
/// whom at least half of the readings that are looked at are such.
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
    /// How common a value may be without anything behind it: this one's share with the others, or the share that the middle one of
    /// them gives to one value of their own, whichever is more.
    pub usual: f64,
    /// How often chance alone would repeat it so, if it were as common as that; corrected for looking at all.
    pub chance: f64,
    /// In how many readings a value of this technician stands out so.
    pub readings: u64,
    /// Of how many that are looked at: those that this technician took at least eight times.
    pub of_readings: u64,
    /// The first calls with it.
    pub sessions: Sessions,
}

/// Counts values by reading and technician.
#[derive(Debug, Default)]
pub(super) struct Values {
    readings: BTreeMap<NameNo, BTreeMap<NameNo, Common>>,
    units: BTreeMap<NameNo, String>,
}

/// A technician's commonest value of a reading, beside the others'.
#[derive(Debug)]
struct Looked<'v> {
    technician: NameNo,
    reading: NameNo,
    common: &'v Common,
    commonest: &'v Value,
    others: u64,
    others_of: u64,
    usual: f64,
    chance: f64,
}

/// The shares that technicians give to one value of their own, in order.
#[derive(Debug)]
struct Own(Vec<f64>);

impl Values {
    /// One more taking of a reading; how often that value was given so far, at least.
    pub fn add(&mut self, taken: &Taken, number: u32, technician: NameNo, visits: &mut Visits) -> u64 {
        let reading = visits.name(&taken.reading);
        let technicians = self.readings.entry(reading).or_insert_with(|| {
            self.units.insert(reading, taken.unit.to_string());
            BTreeMap::new()
        });
        technicians
            .entry(technician)
            .or_default()
            .add(taken.value, number)
    }

    pub fn found(self, visits: &Arc<Visits>) -> Vec<Repeated> {
        let mut looked = Vec::new();
        for (reading, technicians) in &self.readings {
            let all: u64 = technicians.values().map(|common| common.of).sum();
            let own = Own::of(technicians.values().filter(|common| common.of >= FEWEST));
            for (technician, common) in technicians.iter().filter(|(_, common)| common.of >= FEWEST) {
                let Some(commonest) = common.commonest() else {
                    continue;
                };
                let others_of = all - common.of;
                let others = (technicians.iter())
                    .filter(|(other, _)| *other != technician)
                    .map(|(_, common)| common.times(commonest.value))
                    .sum();
                // Nobody else to compare with, or not enough: one in ten may be given by all.
                let given = ((others + 1) as f64 / (others_of + 10) as f64).min(1.0);
                let usual = own.with_others(common).max(given);
                looked.push(Looked {
                    technician: *technician,
                    reading: *reading,
                    common,
                    commonest,
                    others,
                    others_of,
                    usual,
                    chance: binomial::at_least(commonest.times.into(), common.of, usual),
                });
            }
        }
        let chances: Vec<f64> = looked.iter().map(|one| one.chance).collect();
        for (one, adjusted) in looked.iter_mut().zip(false_discovery::adjusted(&chances)) {
            one.chance = adjusted;
        }
        let mut counts: BTreeMap<NameNo, (u64, u64)> = BTreeMap::new();
        for one in &looked {
            let (readings, of) = counts.entry(one.technician).or_default();
            *readings += u64::from(one.stands_out());
            *of += 1;
        }
        let mut found: Vec<Repeated> = (looked.iter().filter(|one| one.stands_out()))
            .map(|one| (one, counts[&one.technician]))
            .filter(|(_, (readings, of))| 2 * readings >= *of)
            .map(|(one, (readings, of_readings))| Repeated {
                technician: visits.owned(one.technician).unwrap_or_default(),
                reading: visits.owned(one.reading).unwrap_or_default(),
                value: one.commonest.value,
                unit: self.units.get(&one.reading).cloned().unwrap_or_default(),
                times: one.commonest.times.into(),
                of: one.common.of,
                others: one.others,
                others_of: one.others_of,
                usual: one.usual,
                chance: one.chance,
                readings,
                of_readings,
                sessions: Sessions::of_calls(visits, one.commonest.calls().to_vec()),
            })
            .collect();
        found.sort_by(|one, other| (&one.technician, &one.reading).cmp(&(&other.technician, &other.reading)));
        found
    }
}

impl Own {
    fn of<'c>(each: impl Iterator<Item = &'c Common>) -> Self {
        let mut shares: Vec<f64> = each.map(Common::own).collect();
        shares.sort_unstable_by(f64::total_cmp);
        Self(shares)
    }

    /// The middle one without this technician's, of two the larger; nothing where nobody else took the reading often enough. Not
    /// the mean: where several write down what they did not read, each would hide behind the others.
    fn with_others(&self, this: &Common) -> f64 {
        let this = self.0.partition_point(|share| *share < this.own());
        let middle = (self.0.len().saturating_sub(1)) / 2;
        let place = if middle < this { middle } else { middle + 1 };
        self.0.get(place).copied().unwrap_or(0.0)
    }
}

impl Looked<'_> {
    /// A value that is less than half of them is nothing to look at, however rare it is elsewhere.
    fn stands_out(&self) -> bool {
        self.chance <= BY_CHANCE && 2 * u64::from(self.commonest.times) >= self.common.of
    }
}
