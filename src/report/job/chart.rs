//! A reading among its bands: a strip from the lowest bound to the highest, with a mark where the reading lay.

use maud::{Markup, html};

use super::readings::{ReadingEntry, TakingEntry};

const WIDTH: f64 = 640.0;
const TOP: f64 = 20.0;
const STRIP: f64 = 22.0;
const HEIGHT: f64 = 60.0;

/// The strip of a reading; none where it has no bands with an end, since there is nothing to set it against.
pub(super) fn strip(entry: &ReadingEntry) -> Option<Markup> {
    let scale = Scale::of(entry)?;
    let last = entry.takings.last()?;
    let first = (entry.takings.len() > 1).then(|| entry.takings.first()).flatten();
    Some(html! {
        svg viewBox={ "0 0 " (WIDTH) " " (HEIGHT) } role="img" aria-label=(in_words(entry)) {
            @for band in &entry.bands {
                @let from = scale.at(band.low.unwrap_or(scale.low));
                @let to = scale.at(band.high.unwrap_or(scale.high));
                rect class=(if band.here { "here" } else { "band" })
                    x=(tenth(from)) y=(TOP) width=(tenth((to - from).max(1.0))) height=(STRIP) {}
            }
            @for bound in scale.bounds(entry) {
                text x=(tenth(scale.at(bound))) y=(HEIGHT - 4.0) text-anchor=(anchor(scale.at(bound))) {
                    (short(bound)) " " (entry.unit)
                }
            }
            @if let Some(first) = first {
                circle class="before" cx=(tenth(scale.at(first.number))) cy=(TOP + STRIP / 2.0) r="5" {}
            }
            (mark(&scale, last))
        }
    })
}

/// A filled mark at a taking, with what its meter leaves open as a bar.
fn mark(scale: &Scale, taking: &TakingEntry) -> Markup {
    let at = scale.at(taking.number);
    let (from, to) = (
        scale.at(taking.number - taking.margin),
        scale.at(taking.number + taking.margin),
    );
    let middle = TOP + STRIP / 2.0;
    let points = format!(
        "{},{} {},{} {},{}",
        tenth(at),
        tenth(TOP + 8.0),
        tenth(at - 6.0),
        tenth(TOP - 4.0),
        tenth(at + 6.0),
        tenth(TOP - 4.0)
    );
    html! {
        line class="margin" x1=(tenth(from)) x2=(tenth(to)) y1=(tenth(middle)) y2=(tenth(middle)) {}
        polygon class="mark" points=(points) {}
        text x=(tenth(at)) y="12" text-anchor=(anchor(at)) font-weight="700" { (taking.value) }
    }
}

/// What the strip shows, for who cannot see it.
fn in_words(entry: &ReadingEntry) -> String {
    let takings: Vec<&str> = entry.takings.iter().map(|taking| taking.value.as_str()).collect();
    let here = entry.bands.iter().find(|band| band.here);
    let lies = here
        .map(|band| format!(", which is {}", band.words))
        .unwrap_or_default();
    format!("{}: {}{lies}", entry.title, takings.join(", then "))
}

/// From a reading's numbers to places on the strip.
struct Scale {
    low: f64,
    high: f64,
}

impl Scale {
    fn of(entry: &ReadingEntry) -> Option<Self> {
        let bounds = || {
            entry
                .bands
                .iter()
                .flat_map(|band| [band.low, band.high])
                .flatten()
        };
        bounds().next()?;
        let numbers = || bounds().chain(entry.takings.iter().map(|taking| taking.number));
        let (low, high) = (
            numbers().fold(f64::INFINITY, f64::min),
            numbers().fold(f64::NEG_INFINITY, f64::max),
        );
        let room = if high > low {
            (high - low) * 0.25
        } else {
            high.abs().max(1.0) * 0.25
        };
        // Nothing is read below nothing where everything lies above it.
        let floor = if low >= 0.0 { 0.0 } else { f64::NEG_INFINITY };
        Some(Self {
            low: (low - room).max(floor),
            high: high + room,
        })
    }

    fn at(&self, number: f64) -> f64 {
        ((number - self.low) / (self.high - self.low)).clamp(0.0, 1.0) * (WIDTH - 2.0) + 1.0
    }

    /// The bounds between the bands, each once, left out where it would stand on the one before.
    fn bounds(&self, entry: &ReadingEntry) -> Vec<f64> {
        let mut bounds: Vec<f64> = entry
            .bands
            .iter()
            .flat_map(|band| [band.low, band.high])
            .flatten()
            .collect();
        bounds.sort_by(f64::total_cmp);
        let mut shown: Vec<f64> = Vec::new();
        for bound in bounds {
            if shown
                .last()
                .is_none_or(|last| self.at(bound) - self.at(*last) > 90.0)
            {
                shown.push(bound);
            }
        }
        shown
    }
}

fn tenth(number: f64) -> f64 {
    (number * 10.0).round() / 10.0
}

/// A bound in four digits, which is more than any plate has.
fn short(number: f64) -> String {
    let digits = match number.abs() {
        size if size >= 1000.0 => 0,
        size if size >= 100.0 => 1,
        size if size >= 1.0 => 2,
        _ => 3,
    };
    let text = format!("{number:.digits$}");
    match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        false => text,
    }
}

fn anchor(at: f64) -> &'static str {
    match at {
        at if at < 50.0 => "start",
        at if at > WIDTH - 50.0 => "end",
        _ => "middle",
    }
}
