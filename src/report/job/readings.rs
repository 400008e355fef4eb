//! What was measured on a call: each reading once, with every taking of it and the bands that it was sorted into.

use serde::Serialize;

use super::plain;
use crate::library::{Answers, BandAnswer, Datum, Id, Kind, Library, Obtained, Reading};
use crate::measure::{Interval, Quantity, Scale};
use crate::walk::{self, Event, State};

/// One reading of a call.
#[derive(Clone, Debug, Serialize)]
pub struct ReadingEntry {
    /// Its registered name.
    pub reading: String,
    /// What it is called.
    pub title: String,
    /// Its unit.
    pub unit: String,
    /// Its takings, the first one first. There are several where something that was done made it be taken anew.
    pub takings: Vec<TakingEntry>,
    /// It was taken to work out another reading of the call.
    pub worked_into: bool,
    /// The bands of the last question that sorted it, the lowest first; none where it was only recorded.
    pub bands: Vec<BandEntry>,
}

/// One taking of a reading.
#[derive(Clone, Debug, Serialize)]
pub struct TakingEntry {
    /// As it was typed, or as it came out.
    pub value: String,
    /// The number, in the reading's unit.
    pub number: f64,
    /// Half the width of what the meter leaves open, in the same unit.
    pub margin: f64,
    /// It lay within the meter's accuracy of a bound.
    pub borderline: bool,
    /// The answer that gave it, counted from 0.
    #[serde(skip)]
    pub(super) answer: usize,
}

impl ReadingEntry {
    /// Whether some band has an end, so that there is something to set the reading against.
    pub(in crate::report) fn has_bounds(&self) -> bool {
        self.bands
            .iter()
            .any(|band| band.low.is_some() || band.high.is_some())
    }
}

impl TakingEntry {
    /// Whether what both meters leave open covers the difference to another taking.
    pub(super) fn is_as(&self, other: &Self) -> bool {
        (self.number - other.number).abs() <= self.margin + other.margin
    }
}

/// One band.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BandEntry {
    /// In words, with the plate's numbers in place.
    pub words: String,
    /// What it means, in the tree's words.
    pub means: Option<String>,
    /// Its lower end, in the reading's unit; none where it has none.
    pub low: Option<f64>,
    /// Its upper end.
    pub high: Option<f64>,
    /// The reading lay in it.
    pub here: bool,
}

/// What was measured in the course of the events, in the order of the first takings; what was taken back is left out.
pub(super) fn readings(library: &Library, events: &[Event]) -> Vec<ReadingEntry> {
    let mut state = State::default();
    let mut entries: Vec<ReadingEntry> = Vec::new();
    for event in events {
        if let Event::Took { .. } = event {
            sorted(library, &state, &mut entries);
        }
        // A log is folded before it is reported; what does not fit has been said then.
        if walk::apply(library, &mut state, event).is_err() {
            break;
        }
        let answers = state.trail.len();
        if let Event::WentBack { .. } = event {
            for entry in &mut entries {
                entry.takings.retain(|taking| taking.answer < answers);
            }
            entries.retain(|entry| !entry.takings.is_empty());
        }
        if let Event::Measured { reading, .. } = event
            && let Some(id) = library.readings.find(reading)
        {
            taken(library, id, event, answers.saturating_sub(1), &mut entries);
            for input in walk::inputs_of(library, Datum::Reading(id)) {
                let name = library.name_of(input);
                entries
                    .iter_mut()
                    .filter(|entry| entry.reading == name)
                    .for_each(|entry| entry.worked_into = true);
            }
        }
    }
    entries
}

fn taken(library: &Library, id: Id<Reading>, event: &Event, answer: usize, entries: &mut Vec<ReadingEntry>) {
    let Event::Measured {
        typed,
        value,
        margin,
        borderline,
        ..
    } = event
    else {
        return;
    };
    let reading = &library.readings[id];
    let typed = typed
        .as_ref()
        .filter(|_| matches!(reading.source_of_value, Obtained::Measured(_)));
    let came_out = || {
        Quantity::new(*value, reading.scale)
            .display(reading.scale)
            .worked_out()
            .to_string()
    };
    let taking = TakingEntry {
        value: plain(&typed.cloned().unwrap_or_else(came_out)),
        number: *value,
        margin: *margin,
        borderline: *borderline,
        answer,
    };
    match entries.iter_mut().find(|entry| entry.reading == reading.name) {
        Some(entry) => entry.takings.push(taking),
        None => entries.push(ReadingEntry {
            reading: reading.name.clone(),
            title: plain(&reading.title),
            unit: reading.scale.symbol().to_owned(),
            takings: vec![taking],
            worked_into: false,
            bands: Vec::new(),
        }),
    }
}

/// The step that is being left sorted a reading into its bands: they are kept with the plate as it stands.
fn sorted(library: &Library, state: &State, entries: &mut [ReadingEntry]) {
    let Some(frame) = state.top() else { return };
    let Kind::Measure { reading, answers, .. } = &library[frame.step].kind else {
        return;
    };
    let (Answers::Bands(bands), Some(standing)) = (answers, state.value(Datum::Reading(*reading))) else {
        return;
    };
    let scale = library.readings[*reading].scale;
    let Some(value) = standing.value.number() else {
        return;
    };
    let name = &library.readings[*reading].name;
    let Some(entry) = entries.iter_mut().find(|entry| entry.reading == *name) else {
        return;
    };
    let shown: Option<Vec<BandEntry>> = (bands.iter())
        .map(|answer| band(state, answer, value, scale))
        .collect();
    let Some(mut shown) = shown else { return };
    shown.sort_by(|a, b| {
        let from = |band: &BandEntry| band.low.unwrap_or(f64::NEG_INFINITY);
        from(a).total_cmp(&from(b))
    });
    entry.bands = shown;
}

fn band(state: &State, answer: &BandAnswer, value: Quantity, scale: Scale) -> Option<BandEntry> {
    let interval: Interval = answer.band.interval(&|field| state.field(*field))?;
    let end =
        |base: f64| (base.is_finite()).then(|| Quantity::from_base(base, scale.dimension()).number_in(scale));
    Some(BandEntry {
        words: interval.words(scale),
        means: answer.edge.means.as_deref().map(plain),
        low: end(interval.low.value()),
        high: end(interval.high.value()),
        here: answer.band.contains(value, &|field| state.field(*field)) == Some(true),
    })
}
