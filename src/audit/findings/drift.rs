//! Readings of an equipment that drift over the years: a capacitor that fades, an inducer that slows, a filter nobody changes.
//!
//! A straight line is fitted to the values over time. It counts where it covers a year with at least four takings, changes by more
//! than two meters at their worst could, and would hardly come by chance.

use std::collections::HashMap;

use serde::Serialize;

use super::super::call::Call;
use super::super::chains::Chains;
use super::super::clocks::Ends;
use super::super::statistics::{false_discovery, trend};
use super::super::summary::SessionRef;
use super::super::visits::{NameNo, Visits};

/// Fewest takings.
const FEWEST: u32 = 4;

/// Takings that are kept as they are, before a line is fitted.
const BEFORE: usize = FEWEST as usize - 1;

/// Most of those of one equipment; no library asks for as many readings of one furnace, thrice each.
const MOST: usize = 768;

/// Fewest days between the first and the last.
const SPAN: f64 = 365.0;

/// Of a list of drifts, so large a share may be there by chance.
const BY_CHANCE: f64 = 0.05;

const DAY: f64 = 24.0 * 60.0 * 60.0;

/// 2020, in seconds since 1970.
const EPOCH: i64 = 1_577_836_800;

/// A reading that drifts.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Drift {
    /// At which equipment.
    pub equipment: String,
    /// Which reading.
    pub reading: String,
    /// The unit of its values.
    pub unit: String,
    /// How often it was taken.
    pub times: u32,
    /// Over how many days.
    pub days: f64,
    /// The first value.
    pub first_value: f64,
    /// The last.
    pub last_value: f64,
    /// By how much the fitted line changes in a year of 365 days.
    pub a_year: f64,
    /// How often chance alone would fit as well; corrected for looking at all.
    pub chance: f64,
    /// The call of the first value.
    pub first: SessionRef,
    /// The call of the last.
    pub last: SessionRef,
}

/// Takings by equipment and reading, summed up once there are enough: most readings of most equipment are taken once or twice.
#[derive(Debug, Default)]
pub(in super::super) struct Drifts {
    takings: Chains<Taking>,
    sums: Chains<Series>,
    readings: HashMap<NameNo, About>,
}

/// One taking of a reading.
#[derive(Clone, Copy, Debug)]
struct Taking {
    reading: NameNo,
    call: u32,
    value: f32,
}

const _: () = assert!(size_of::<Taking>() == 12, "there may be several for each call");

/// What is known of a reading.
#[derive(Debug)]
struct About {
    unit: String,
    /// The most that a meter left open.
    margin: f64,
}

/// The running sums of a fitted line (Welford's): there is one for each reading of each equipment, so they are kept small.
#[derive(Clone, Copy, Debug)]
struct Series {
    reading: NameNo,
    times: u32,
    first: u32,
    last: u32,
    first_value: f32,
    last_value: f32,
    /// Means, and sums of squares about them; days count from [`EPOCH`].
    day: f32,
    value: f32,
    days_squared: f32,
    values_squared: f32,
    crossed: f32,
}

impl Drifts {
    pub fn add(&mut self, call: &Call, number: u32, visits: &mut Visits) {
        let Some(equipment) = &call.equipment else { return };
        let equipment = visits.name(equipment);
        for taken in call.readings.iter().filter(|taken| !taken.superseded) {
            let reading = visits.name(&taken.reading);
            let about = self.readings.entry(reading).or_insert_with(|| About {
                unit: taken.unit.to_string(),
                margin: 0.0,
            });
            about.margin = about.margin.max(taken.margin);
            let taking = Taking {
                reading,
                call: number,
                value: taken.value as f32,
            };
            self.take(equipment, taking, visits);
        }
    }

    fn take(&mut self, equipment: NameNo, new: Taking, visits: &Visits) {
        if let Some(series) = self.sums.find(equipment, |series| series.reading == new.reading) {
            return series.add(new, visits);
        }
        let mut before = [None; BEFORE];
        let mut all = 0;
        let takings = self.takings.of(equipment).inspect(|_| all += 1);
        let same = takings.filter(|taking| taking.reading == new.reading);
        before
            .iter_mut()
            .zip(same)
            .for_each(|(place, taking)| *place = Some(taking));
        if let [Some(third), Some(second), Some(first)] = before {
            self.takings
                .remove(equipment, |taking| taking.reading == new.reading);
            let mut series = Series::new(first, visits);
            for taking in [second, third, new] {
                series.add(taking, visits);
            }
            self.sums.push(equipment, series);
        } else if all < MOST {
            self.takings.push(equipment, new);
        }
    }

    pub fn found(self, visits: &Visits, ends: Ends) -> Vec<Drift> {
        let mut tested: Vec<(NameNo, Series, f64)> = (self.sums.all())
            .filter(|(_, series)| series.span(visits) >= SPAN && series.is_within(visits, ends))
            .filter_map(|(equipment, series)| {
                let chance = trend::chance(series.correlation()?, u64::from(series.times))?;
                Some((equipment, series, chance))
            })
            .collect();
        tested.sort_unstable_by_key(|(equipment, series, _)| (*equipment, series.reading));
        let chances: Vec<f64> = tested.iter().map(|(.., chance)| *chance).collect();
        let adjusted = false_discovery::adjusted(&chances);
        let mut found = Vec::new();
        for ((equipment, series, _), chance) in tested.into_iter().zip(adjusted) {
            let a_day = f64::from(series.crossed / series.days_squared);
            let days = series.span(visits);
            let about = self.readings.get(&series.reading);
            let margin = about.map_or(f64::INFINITY, |about| about.margin);
            if chance > BY_CHANCE || (a_day * days).abs() <= 2.0 * margin {
                continue;
            }
            found.push(Drift {
                equipment: visits.owned(equipment).unwrap_or_default(),
                reading: visits.owned(series.reading).unwrap_or_default(),
                unit: about.map(|about| about.unit.clone()).unwrap_or_default(),
                times: series.times,
                days,
                first_value: shortest(series.first_value),
                last_value: shortest(series.last_value),
                a_year: a_day * 365.0,
                chance,
                first: visits.session(series.first),
                last: visits.session(series.last),
            });
        }
        found.sort_by(|one, other| (&one.equipment, &one.reading).cmp(&(&other.equipment, &other.reading)));
        found
    }
}

impl Series {
    fn new(taking: Taking, visits: &Visits) -> Self {
        let Taking { reading, call, value } = taking;
        Self {
            reading,
            times: 1,
            first: call,
            last: call,
            first_value: value,
            last_value: value,
            day: day(call, visits),
            value,
            days_squared: 0.0,
            values_squared: 0.0,
            crossed: 0.0,
        }
    }

    fn add(&mut self, taking: Taking, visits: &Visits) {
        let Taking { call, value, .. } = taking;
        let day = day(call, visits);
        let opened = |call: u32| visits.opened(call);
        if opened(call) < opened(self.first) {
            (self.first, self.first_value) = (call, value);
        }
        if opened(call) >= opened(self.last) {
            (self.last, self.last_value) = (call, value);
        }
        self.times += 1;
        let part = 1.0 / self.times as f32;
        let (day_off, value_off) = (day - self.day, value - self.value);
        self.day += day_off * part;
        self.value += value_off * part;
        self.days_squared += day_off * (day - self.day);
        self.values_squared += value_off * (value - self.value);
        self.crossed += day_off * (value - self.value);
    }

    /// Whether no clock in it is doubted: one value by such a clock would bend the line.
    fn is_within(&self, visits: &Visits, ends: Ends) -> bool {
        !ends.is_before(visits.opened(self.first)) && !ends.is_after(visits.opened(self.last))
    }

    /// Days between the first and the last.
    fn span(&self, visits: &Visits) -> f64 {
        let opened = |call: u32| visits.opened(call);
        opened(self.last).duration_since(opened(self.first)).as_secs_f64() / DAY
    }

    /// How well a line fits, from -1 to 1; nothing where all times or all values are one.
    fn correlation(&self) -> Option<f64> {
        let whole = (f64::from(self.days_squared) * f64::from(self.values_squared)).sqrt();
        (whole > 0.0).then(|| (f64::from(self.crossed) / whole).clamp(-1.0, 1.0))
    }
}

/// Days from [`EPOCH`] to the opening of a call: near enough to it that a small number tells minutes apart.
fn day(call: u32, visits: &Visits) -> f32 {
    ((visits.opened(call).as_second() - EPOCH) as f64 / DAY) as f32
}

/// A value that was kept small, as it was typed: not 3.0999999046 for 3.1.
fn shortest(value: f32) -> f64 {
    value.to_string().parse().unwrap_or(f64::from(value))
}
