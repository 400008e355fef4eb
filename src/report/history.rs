//! What is known of an equipment from its earlier calls: plate, readings with their trend, verdicts, and what was advised.

use serde::Serialize;

use super::columns_on;
use super::job::{Job, PlateEntry};
use crate::source::{Safe, safe, wrap};
use crate::walk::Known;

/// Calls that are told; the older ones are counted.
const CALLS: usize = 5;
/// Readings that are told on arriving: those of several calls, the moved ones first.
const READINGS: usize = 8;
/// Takings of one reading that are told.
const POINTS: usize = 4;
const AS_BEFORE: &str = "as before";

/// What is known of an equipment.
#[derive(Clone, Debug, Serialize)]
pub struct History {
    /// Its id.
    pub equipment: String,
    /// Its calls, the newest first.
    pub calls: Vec<PastCall>,
    /// Its plate, as it was read last.
    pub plate: Vec<PlateEntry>,
    /// Fields that two calls read otherwise: the furnace, its plate or the id may not be the same.
    pub plate_differs: Vec<String>,
    /// Its readings: those that have moved first, then those with the most takings.
    pub readings: Vec<ReadingHistory>,
}

/// One earlier call.
#[derive(Clone, Debug, Serialize)]
pub struct PastCall {
    /// Its session.
    pub session: String,
    /// Its day.
    pub day: String,
    /// The complaint.
    pub complaint: String,
    /// How it ended; none where it was not finished.
    pub ended: Option<String>,
    /// What was done about it.
    pub remedy: Option<String>,
    /// Verdicts that were noted on the way.
    pub noted: Vec<String>,
    /// What was advised or worse, and what is done about the verdicts that were noted.
    pub advised: Vec<String>,
    /// What was passed over, because a verdict before it was noted.
    pub not_looked_at: Vec<String>,
    /// What was left open.
    pub left_open: Vec<String>,
}

/// One reading over the calls.
#[derive(Clone, Debug, Serialize)]
pub struct ReadingHistory {
    /// Its registered name.
    pub reading: String,
    /// What it is called.
    pub title: String,
    /// What each call took last, the oldest first.
    pub points: Vec<ReadingPoint>,
    /// How it has moved since the first of them: `up`, `down`, or `as before` where both meters' accuracies cover it;
    /// none with a single taking.
    pub trend: Option<&'static str>,
    /// The band in which the last of them lay, where a question sorted it.
    pub band: Option<String>,
}

/// What one call took last of a reading.
#[derive(Clone, Debug, Serialize)]
pub struct ReadingPoint {
    /// The call's day.
    pub day: String,
    /// As it was typed, or as it came out.
    pub value: String,
    /// The number, in the reading's unit.
    pub number: f64,
    /// Half the width of what the meter leaves open, in the same unit.
    pub margin: f64,
}

impl History {
    /// What the jobs tell of an equipment, the oldest job first; none where there is none.
    pub fn of(equipment: &str, jobs: &[Job]) -> Option<Self> {
        let newest = jobs.last()?;
        let mut plate: Vec<PlateEntry> = Vec::new();
        let mut plate_differs: Vec<String> = Vec::new();
        let mut readings: Vec<ReadingHistory> = Vec::new();
        for job in jobs {
            for entry in &job.plate {
                match plate.iter_mut().find(|known| known.title == entry.title) {
                    Some(known) => {
                        if known.value != entry.value && !plate_differs.contains(&entry.title) {
                            plate_differs.push(entry.title.clone());
                        }
                        known.value.clone_from(&entry.value);
                    }
                    None => plate.push(entry.clone()),
                }
            }
            add_readings(job, &mut readings);
        }
        for reading in &mut readings {
            reading.trend = trend(&reading.points);
        }
        let moved = |reading: &ReadingHistory| reading.trend.is_some_and(|trend| trend != AS_BEFORE);
        readings.sort_by_key(|reading| std::cmp::Reverse((moved(reading), reading.points.len())));
        Some(Self {
            equipment: newest
                .equipment
                .clone()
                .unwrap_or_else(|| safe(equipment).to_string()),
            calls: jobs.iter().rev().map(past).collect(),
            plate,
            plate_differs,
            readings,
        })
    }

    /// As JSON.
    pub fn json(&self) -> String {
        // It holds texts, numbers and lists only, which all have a form in JSON.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }

    /// As text of at most 78 columns, or as many as the terminal has.
    pub fn text(&self, terminal: Option<usize>) -> String {
        let room = columns_on(terminal) - 4;
        let mut text = format!("EQUIPMENT {}\n", self.equipment);
        for section in self.sections(usize::MAX, usize::MAX) {
            text.push_str(&format!("\n{}\n", section.heading.as_str().to_uppercase()));
            for line in &section.lines {
                for (at, piece) in wrap(line, room).iter().enumerate() {
                    text.push_str(if at == 0 { "  - " } else { "    " });
                    text.push_str(piece.as_str());
                    text.push('\n');
                }
            }
        }
        text
    }

    /// What a technician should know on arriving, short.
    pub fn known(&self) -> Vec<Known> {
        let mut sections = self.sections(CALLS, READINGS);
        if let Some(first) = sections.first_mut() {
            first.heading = safe(&format!("{}: {}", self.equipment, first.heading));
        }
        sections
    }

    fn sections(&self, calls: usize, readings: usize) -> Vec<Known> {
        let many = match self.calls.len() {
            1 => "1 earlier call".to_owned(),
            many => format!("{many} earlier calls"),
        };
        let mut lines: Vec<String> = self.calls.iter().take(calls).map(PastCall::words).collect();
        if self.calls.len() > calls {
            lines.push(format!("and {} before those", self.calls.len() - calls));
        }
        let mut sections = vec![section(format!("{many}, the newest first"), lines)];
        if let Some(last) = self.calls.iter().find(|call| call.ended.is_some()) {
            let open = last.left_open.iter().map(|text| format!("LEFT OPEN: {text}"));
            let passed_over = last
                .not_looked_at
                .iter()
                .map(|text| format!("NOT LOOKED AT: {text}"));
            sections.push(section(
                "Advised at the last finished call",
                open.chain(last.advised.iter().cloned())
                    .chain(passed_over)
                    .collect(),
            ));
        }
        let told = self.readings.iter().take(readings).map(ReadingHistory::words);
        sections.push(section("Readings, the newest last", told.collect()));
        let differs = self.plate_differs.iter().map(|title| {
            format!("{title}: read otherwise on an earlier call. The same furnace, and the same plate?")
        });
        let plate = self
            .plate
            .iter()
            .map(|entry| format!("{}: {}", entry.title, entry.value));
        sections.push(section("Plate, as read last", differs.chain(plate).collect()));
        sections.retain(|section| !section.lines.is_empty());
        sections
    }
}

impl PastCall {
    fn words(&self) -> String {
        let ended = self.ended.as_deref().unwrap_or("not finished");
        let mut words = format!("{}  {}: {ended}", self.day, self.complaint);
        for more in self.remedy.iter().chain(&self.noted) {
            words.push_str(&format!("; {more}"));
        }
        words
    }
}

impl ReadingHistory {
    fn words(&self) -> String {
        let told = &self.points[self.points.len().saturating_sub(POINTS)..];
        let (Some(first), Some(last)) = (self.points.first(), told.last()) else {
            return self.title.clone();
        };
        let band = self
            .band
            .as_ref()
            .map(|band| format!("; band: {band}"))
            .unwrap_or_default();
        let words = match self.trend {
            None => format!("{} ({})", last.value, last.day),
            // What has not moved is told once.
            Some(AS_BEFORE) => format!("{} ({}), {AS_BEFORE} since {}", last.value, last.day, first.day),
            Some(trend) => {
                let values: Vec<&str> = told.iter().map(|point| point.value.as_str()).collect();
                format!(
                    "{}, {trend} since {} (last {})",
                    values.join(", "),
                    first.day,
                    last.day
                )
            }
        };
        format!("{}: {words}{band}", self.title)
    }
}

fn section(heading: impl AsRef<str>, lines: Vec<String>) -> Known {
    let lines: Vec<Safe> = lines.iter().map(|line| safe(line)).collect();
    Known {
        heading: safe(heading.as_ref()),
        lines,
    }
}

fn day(job: &Job) -> String {
    job.opened.split(' ').next().unwrap_or_default().to_owned()
}

fn past(job: &Job) -> PastCall {
    let worth_telling = job.findings.iter().filter(|finding| finding.severity != "note");
    PastCall {
        session: job.session.clone(),
        day: day(job),
        complaint: job.complaint.clone(),
        ended: job.ended.clone(),
        remedy: job.remedy.clone(),
        noted: job.noted.clone(),
        advised: (job.found_on_the_way.iter())
            .map(|noted| format!("{}: {}", noted.title, noted.remedy))
            .chain(worth_telling.map(|finding| finding.text.clone()))
            .collect(),
        not_looked_at: (job.not_looked_at.iter())
            .map(|visit| format!("{}: {}", visit.tree, visit.checks.join("; ")))
            .collect(),
        left_open: (job.put_back.iter())
            .filter(|entry| entry.state != "done")
            .map(|entry| entry.text.clone())
            .collect(),
    }
}

fn add_readings(job: &Job, readings: &mut Vec<ReadingHistory>) {
    for entry in job.readings.iter().filter(|entry| !entry.worked_into) {
        let Some(last) = entry.takings.last() else {
            continue;
        };
        let point = ReadingPoint {
            day: day(job),
            value: last.value.clone(),
            number: last.number,
            margin: last.margin,
        };
        let band = entry.bands.iter().find(|band| band.here && entry.has_bounds());
        let band = band.map(|band| band.words.clone());
        match readings.iter_mut().find(|known| known.reading == entry.reading) {
            Some(known) => {
                known.points.push(point);
                known.band = band;
            }
            None => readings.push(ReadingHistory {
                reading: entry.reading.clone(),
                title: entry.title.clone(),
                points: vec![point],
                trend: None,
                band,
            }),
        }
    }
}

/// Up or down only where the two meters cannot have said the same of one value.
fn trend(points: &[ReadingPoint]) -> Option<&'static str> {
    let [first, .., last] = points else { return None };
    let moved = last.number - first.number;
    Some(match moved.abs() > first.margin + last.margin {
        true if moved > 0.0 => "up",
        true => "down",
        false => AS_BEFORE,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn points(of: &[(f64, f64)]) -> Vec<ReadingPoint> {
        let point = |&(number, margin): &(f64, f64)| ReadingPoint {
            day: String::new(),
            value: String::new(),
            number,
            margin,
        };
        of.iter().map(point).collect()
    }

    #[test]
    fn only_what_both_meters_cannot_explain_is_a_trend() {
        assert_eq!(trend(&points(&[(50.0, 2.0)])), None);
        assert_eq!(trend(&points(&[(50.0, 2.0), (54.0, 2.0)])), Some(AS_BEFORE));
        assert_eq!(
            trend(&points(&[(50.0, 2.0), (48.0, 2.0), (54.1, 2.0)])),
            Some("up")
        );
        assert_eq!(trend(&points(&[(50.0, 2.0), (45.9, 2.0)])), Some("down"));
    }
}
