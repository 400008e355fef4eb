//! A reading among its bands: a strip from the lowest bound to the highest, with a mark where the reading lay.

use maud::{Markup, html};

use super::readings::{BandEntry, ReadingEntry, TakingEntry};

const WIDTH: f64 = 200.0;
const TOP: f64 = 4.0;
const STRIP: f64 = 9.0;
const HEIGHT: f64 = 15.0;

/// The strip of a reading; none where it has no bands with an end, since there is nothing to set it against.
///
/// It holds no numbers: they stand beside it, where they are as large as all other text.
pub(super) fn strip(entry: &ReadingEntry) -> Option<Markup> {
    let scale = Scale::of(entry)?;
    let last = entry.takings.last()?;
    let first = (entry.takings.len() > 1).then(|| entry.takings.first()).flatten();
    let words = in_words(entry);
    Some(html! {
        svg viewBox={ "0 0 " (WIDTH) " " (HEIGHT) } role="img" aria-label=(words) {
            title { (words) }
            @for band in entry.bands.iter().filter(|band| !band.here) { (drawn(&scale, band)) }
            // The outline of the band that it lay in is not to be drawn over.
            @for band in entry.bands.iter().filter(|band| band.here) { (drawn(&scale, band)) }
            @if let Some(first) = first {
                circle class="before" cx=(tenth(scale.at(first.number))) cy=(TOP + STRIP / 2.0) r="3" {}
            }
            (mark(&scale, last))
        }
    })
}

fn drawn(scale: &Scale, band: &BandEntry) -> Markup {
    let from = scale.at(band.low.unwrap_or(scale.low));
    let to = scale.at(band.high.unwrap_or(scale.high));
    html! {
        rect class=(if band.here { "here" } else { "band" })
            x=(tenth(from)) y=(TOP) width=(tenth((to - from).max(1.0))) height=(STRIP) {}
    }
}

/// A filled mark at a taking, with what its meter leaves open as a bar.
fn mark(scale: &Scale, taking: &TakingEntry) -> Markup {
    let at = scale.at(taking.number);
    let (from, to) = (
        scale.at(taking.number - taking.margin),
        scale.at(taking.number + taking.margin),
    );
    let middle = TOP + STRIP / 2.0;
    let (tip, back) = (TOP + 5.0, TOP - 3.0);
    let points = format!(
        "{},{tip} {},{back} {},{back}",
        tenth(at),
        tenth(at - 4.0),
        tenth(at + 4.0)
    );
    html! {
        line class="margin" x1=(tenth(from)) x2=(tenth(to)) y1=(tenth(middle)) y2=(tenth(middle)) {}
        polygon class="mark" points=(points) {}
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
        ((number - self.low) / (self.high - self.low)).clamp(0.0, 1.0) * (WIDTH - 8.0) + 4.0
    }
}

fn tenth(number: f64) -> f64 {
    (number * 10.0).round() / 10.0
}
