//! The bands on a line, with the reading among them.
//!
//! The line is true to scale within each band, but a narrow band gets room enough to be seen: what matters is on which
//! side of which end the reading lies.

use std::cmp::Ordering;

use ratatui::text::{Line, Span};

use super::theme::{Role, Theme};
use super::typed::Typed;
use crate::layout::letter;
use crate::measure::{Quantity, Scale};
use crate::source::safe;
use crate::walk::{Question, ShownBand};

/// Columns that every stretch between two ends has at least.
const LEAST: usize = 4;

/// Three lines: the ends, the bands, the pointer. Nothing where there is no scale to draw, or no room for it.
pub fn gauge(theme: Theme, question: &Question, typed: &Typed, width: usize) -> Option<[Line<'static>; 3]> {
    let Question::Number {
        scale,
        bands,
        plausible,
        ..
    } = question
    else {
        return None;
    };
    let rule = Rule::new(bands, *plausible, *scale, width)?;
    let (value, here, beyond) = match typed {
        Typed::Reads {
            value, band, beyond, ..
        } => (Some(*value), *band, *beyond),
        _ => (None, None, Ordering::Equal),
    };
    let pointer = value.map(|value| {
        let at = rule.column(value.number_in(*scale));
        let sign = format!("{}{}", " ".repeat(at), theme.pointer(beyond));
        Line::from(Span::styled(sign, theme.style(Role::Here)))
    });
    Some([
        Line::from(Span::styled(rule.ends(theme, *scale), theme.style(Role::Quiet))),
        rule.bands(theme, bands, here, *scale),
        pointer.unwrap_or_default(),
    ])
}

/// The ends on the line, and their columns.
struct Rule {
    stops: Vec<f64>,
    columns: Vec<usize>,
}

impl Rule {
    fn new(
        bands: &[ShownBand],
        plausible: Option<(Quantity, Quantity)>,
        scale: Scale,
        width: usize,
    ) -> Option<Self> {
        let ends = bands.iter().flat_map(|band| [band.low, band.high]).flatten();
        let mut cuts: Vec<f64> = ends.map(|end| end.at.number_in(scale)).collect();
        cuts.sort_by(f64::total_cmp);
        cuts.dedup();
        let (low, high) = match plausible {
            Some((low, high)) => (low.number_in(scale), high.number_in(scale)),
            None => around(&cuts)?,
        };
        let mut stops = vec![low];
        stops.extend(cuts.into_iter().filter(|cut| *cut > low && *cut < high));
        stops.push(high);
        let gaps = stops.len() - 1;
        let spare = width.checked_sub(1 + gaps * LEAST)?;
        if bands.is_empty() || high <= low || !(high - low).is_finite() {
            return None;
        }
        let place = |(number, stop): (usize, &f64)| {
            number * LEAST + (spare as f64 * ((stop - low) / (high - low))).round() as usize
        };
        let columns = stops.iter().enumerate().map(place).collect();
        Some(Self { stops, columns })
    }

    /// The column of a value; one that lies between two ends never stands on either.
    fn column(&self, value: f64) -> usize {
        let last = self.stops.len() - 1;
        if value >= self.stops[last] {
            return self.columns[last];
        }
        let after = self.stops.partition_point(|stop| *stop <= value);
        let Some(before) = after.checked_sub(1) else {
            return 0;
        };
        let (from, to) = (self.columns[before], self.columns[after]);
        if value == self.stops[before] {
            return from;
        }
        let share = (value - self.stops[before]) / (self.stops[after] - self.stops[before]);
        (from + (share * (to - from) as f64).round() as usize).clamp(from + 1, to - 1)
    }

    /// The numbers over their ends, as many as fit; the two outer ones first.
    fn ends(&self, theme: Theme, scale: Scale) -> String {
        let last = self.stops.len() - 1;
        let width = self.columns[last] + 1;
        let mut row = vec![' '; width];
        let inner = 1..last;
        for stop in [0, last].into_iter().chain(inner) {
            let number = Quantity::new(self.stops[stop], scale).display(scale).to_string();
            let number = if stop == last { number } else { bare(&number) };
            let number: Vec<char> = theme.words(&number).as_str().chars().collect();
            let start = match stop {
                0 => 0,
                stop if stop == last => width.saturating_sub(number.len()),
                stop => self.columns[stop].saturating_sub(number.len() / 2),
            };
            let end = start + number.len();
            let around = start.saturating_sub(1)..(end + 1).min(width);
            if end <= width && row[around].iter().all(|taken| *taken == ' ') {
                row[start..end].copy_from_slice(&number);
            }
        }
        row.into_iter().collect()
    }

    fn bands(&self, theme: Theme, bands: &[ShownBand], here: Option<usize>, scale: Scale) -> Line<'static> {
        let mut spans = Vec::new();
        for gap in 0..self.stops.len() - 1 {
            let middle = f64::midpoint(self.stops[gap], self.stops[gap + 1]);
            let band = bands
                .iter()
                .position(|band| band.takes(Quantity::new(middle, scale)));
            let chosen = band.is_some() && band == here;
            let stroke = if chosen { theme.heavy() } else { theme.stroke() };
            let room = self.columns[gap + 1] - self.columns[gap] - 1;
            let before = (room - 1) / 2;
            let mut text = stroke.to_string().repeat(before);
            text.push(band.map_or(stroke, letter));
            text.push_str(&stroke.to_string().repeat(room - before - 1));
            spans.push(Span::raw(theme.cut_mark().to_string()));
            let role = if chosen { Role::Here } else { Role::Plain };
            spans.push(Span::styled(text, theme.style(role)));
        }
        spans.push(Span::raw(theme.cut_mark().to_string()));
        Line::from(spans)
    }
}

/// A stretch around the ends, where nothing says what is plausible.
fn around(cuts: &[f64]) -> Option<(f64, f64)> {
    let (first, last) = (*cuts.first()?, *cuts.last()?);
    let spread = last - first;
    let margin = if spread > 0.0 {
        spread / 2.0
    } else {
        (first.abs() / 2.0).max(1.0)
    };
    Some((first - margin, last + margin))
}

/// A shown quantity without its unit.
fn bare(shown: &str) -> String {
    let shown = safe(shown);
    shown.as_str().split(' ').next().unwrap_or_default().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Unit;
    use crate::tui::Look;
    use crate::walk::BandEnd as End;

    const VOLT: Scale = Scale::of(Unit::Volt);

    fn band(low: Option<f64>, high: Option<f64>) -> ShownBand {
        let end = |at: f64, included| End {
            at: Quantity::new(at, VOLT),
            included,
        };
        ShownBand {
            words: safe("band"),
            written: None,
            low: low.map(|at| end(at, true)),
            high: high.map(|at| end(at, false)),
            means: None,
            finding: None,
        }
    }

    fn question(plausible: Option<(f64, f64)>) -> Question {
        let volts = |number| Quantity::new(number, VOLT);
        Question::Number {
            datum: crate::library::Datum::Reading(crate::library::Id::new(0)),
            title: safe("voltage"),
            scale: VOLT,
            works_out: None,
            bands: vec![
                band(None, Some(18.0)),
                band(Some(18.0), Some(30.0)),
                band(Some(30.0), None),
            ],
            plausible: plausible.map(|(low, high)| (volts(low), volts(high))),
            accuracy: None,
        }
    }

    fn drawn(question: &Question, text: &str, width: usize) -> [String; 3] {
        let theme = Theme::new(Look {
            colour: false,
            unicode: false,
        });
        let typed = super::super::typed::typed(text, question);
        let lines = gauge(theme, question, &typed, width).expect("a gauge");
        lines.map(|line| line.to_string())
    }

    #[test]
    fn the_pointer_stands_under_the_band_that_takes_the_value() {
        let question = question(Some((0.0, 40.0)));
        assert_eq!(
            drawn(&question, "24", 41),
            [
                "0               18          30       40 V",
                "+-------a--------+=====b=====+----c-----+",
                "                       ^",
            ]
        );
        assert_eq!(drawn(&question, "17.99", 41)[2], "                ^");
        assert_eq!(drawn(&question, "18", 41)[2], "                 ^");
    }

    #[test]
    fn beyond_what_is_plausible_it_points_out() {
        let question = question(Some((0.0, 40.0)));
        assert_eq!(
            drawn(&question, "240", 21)[1..],
            ["+---a---+--b--+==c==+", "                    >"]
        );
        assert_eq!(drawn(&question, "-5", 21)[2], "<");
    }

    #[test]
    fn without_a_plausible_range_the_line_reaches_around_the_ends() {
        assert_eq!(
            drawn(&question(None), "", 30)[..2],
            ["12     18           30    36 V", "+---a---+-----b------+---c---+"]
        );
    }

    #[test]
    fn a_line_too_short_for_its_bands_is_not_drawn() {
        let theme = Theme::new(Look {
            colour: false,
            unicode: false,
        });
        assert!(gauge(theme, &question(None), &Typed::Nothing, 12).is_none());
    }
}
