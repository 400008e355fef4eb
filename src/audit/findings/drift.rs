//! Readings of an equipment that drift over the years: a capacitor that fades, an inducer that slows, a filter nobody changes.
//!
//! A straight line is fitted to the values over time. It counts where it covers a year with at least four takings, changes by more
//! than two meters at their worst could, and would hardly come by chance.

use std::collections::HashMap;

use serde::Serialize;

use super::super::call::Call;
use super::super::statistics::{false_discovery, trend};
use super::super::summary::SessionRef;
use super::super::visits::{NameNo, Visits};

/// Fewest takings.
const FEWEST: u32 = 4;

/// Fewest days between the first and the last.
const SPAN: f64 = 365.0;

/// Of a list of drifts, so large a share may be there by chance.
const BY_CHANCE: f64 = 0.05;

const DAY: f64 = 24.0 * 60.0 * 60.0;

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

/// Sums by equipment and reading.
#[derive(Debug, Default)]
pub(in super::super) struct Drifts {
    series: HashMap<(NameNo, NameNo), Series>,
    units: HashMap<NameNo, String>,
}

/// The running sums of a fitted line (Welford's), small: there is one for each reading of each equipment.
#[derive(Clone, Copy, Debug)]
struct Series {
    times: u32,
    /// The call that days are counted from: the one that came first, not the earliest.
    origin: u32,
    first: u32,
    last: u32,
    first_value: f32,
    last_value: f32,
    margin: f32,
    /// Means and sums of squares about them.
    day: f64,
    value: f64,
    days_squared: f64,
    values_squared: f64,
    crossed: f64,
}

impl Drifts {
    pub fn add(&mut self, call: &Call, number: u32, visits: &mut Visits) {
        let Some(equipment) = &call.equipment else { return };
        let equipment = visits.name(equipment);
        for taken in call.readings.iter().filter(|taken| !taken.superseded) {
            let reading = visits.name(&taken.reading);
            self.units.entry(reading).or_insert_with(|| taken.unit.clone());
            let (value, margin) = (taken.value, taken.margin as f32);
            match self.series.get_mut(&(equipment, reading)) {
                Some(series) => series.add(number, value, margin, visits),
                None => drop(
                    self.series
                        .insert((equipment, reading), Series::new(number, value, margin)),
                ),
            }
        }
    }

    pub fn found(self, visits: &Visits) -> Vec<Drift> {
        let tested: Vec<(NameNo, NameNo, Series, f64)> = (self.series.into_iter())
            .filter(|(_, series)| series.times >= FEWEST && series.span(visits) >= SPAN)
            .filter_map(|((equipment, reading), series)| {
                let correlation = series.correlation()?;
                let chance = trend::chance(correlation, u64::from(series.times))?;
                Some((equipment, reading, series, chance))
            })
            .collect();
        let chances: Vec<f64> = tested.iter().map(|(.., chance)| *chance).collect();
        let adjusted = false_discovery::adjusted(&chances);
        let mut found = Vec::new();
        for ((equipment, reading, series, _), chance) in tested.into_iter().zip(adjusted) {
            let a_day = series.crossed / series.days_squared;
            let days = series.span(visits);
            if chance > BY_CHANCE || (a_day * days).abs() <= 2.0 * f64::from(series.margin) {
                continue;
            }
            found.push(Drift {
                equipment: visits.owned(equipment).unwrap_or_default(),
                reading: visits.owned(reading).unwrap_or_default(),
                unit: self.units.get(&reading).cloned().unwrap_or_default(),
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
    fn new(call: u32, value: f64, margin: f32) -> Self {
        Self {
            times: 1,
            origin: call,
            first: call,
            last: call,
            first_value: value as f32,
            last_value: value as f32,
            margin,
            day: 0.0,
            value,
            days_squared: 0.0,
            values_squared: 0.0,
            crossed: 0.0,
        }
    }

    fn add(&mut self, call: u32, value: f64, margin: f32, visits: &Visits) {
        let opened = |call: u32| visits.get(call).opened;
        let day = opened(call).duration_since(opened(self.origin)).as_secs_f64() / DAY;
        if opened(call) < opened(self.first) {
            (self.first, self.first_value) = (call, value as f32);
        }
        if opened(call) >= opened(self.last) {
            (self.last, self.last_value) = (call, value as f32);
        }
        self.margin = self.margin.max(margin);
        self.times += 1;
        let part = 1.0 / f64::from(self.times);
        let (day_off, value_off) = (day - self.day, value - self.value);
        self.day += day_off * part;
        self.value += value_off * part;
        self.days_squared += day_off * (day - self.day);
        self.values_squared += value_off * (value - self.value);
        self.crossed += day_off * (value - self.value);
    }

    /// Days between the first and the last.
    fn span(&self, visits: &Visits) -> f64 {
        let opened = |call: u32| visits.get(call).opened;
        opened(self.last).duration_since(opened(self.first)).as_secs_f64() / DAY
    }

    /// How well a line fits, from -1 to 1; nothing where all times or all values are one.
    fn correlation(&self) -> Option<f64> {
        let whole = (self.days_squared * self.values_squared).sqrt();
        (whole > 0.0).then(|| self.crossed / whole)
    }
}

/// A value that was kept small, as it was typed: not 3.0999999046 for 3.1.
fn shortest(value: f32) -> f64 {
    value.to_string().parse().unwrap_or(f64::from(value))
}
