//! Rates with their intervals on one scale: each drawn in its row of a table, beside the figures that it stands for.

use maud::{Markup, html};

use super::chart::{self, fine, rounded_up};
use super::table::Cell;
use crate::audit::Rate;
use crate::report::audit::figures::{Place, percent};
use crate::source::Safe;

/// The size of what is drawn in a row, and where its scale begins and ends: a mark at either end has its place.
const WIDTH: f64 = 200.0;
const HEIGHT: f64 = 18.0;
const LEFT: f64 = 8.0;
const RIGHT: f64 = WIDTH - 12.0;

/// Where the figures of the scale stand.
const FOOT: f64 = 13.0;

/// One rate.
pub(super) struct Interval<'n> {
    pub name: &'n Safe,
    pub rate: Rate,
    /// Where in the funnel, where it is held against others.
    pub place: Place,
}

/// The scale of all rows of a table, with the rate of all where that is drawn across.
pub(super) struct Scale {
    most: f64,
    all: Option<f64>,
}

impl Scale {
    /// A scale that shows the intervals whole; but a group of three calls has one as wide as the table, and would flatten all
    /// others, where there are some. Such a line goes on beyond the scale.
    pub fn of(intervals: &[Interval<'_>], all: Option<f64>) -> Self {
        let has_large = intervals.iter().any(|interval| !interval.rate.too_small);
        let shown = intervals
            .iter()
            .filter(|interval| interval.rate.of > 0 && !(has_large && interval.rate.too_small));
        let most = shown.map(|interval| interval.rate.high);
        let most = most.fold((2.0 * all.unwrap_or(0.0)).max(0.05), f64::max);
        Self {
            most: rounded_up(most).min(1.0),
            all,
        }
    }

    /// The head of its column: where it begins and ends, and the rate of all.
    pub fn head(&self) -> Cell {
        Cell::Drawn(html! {
            span.told { "Drawn, from 0 to " (percent(self.most)) }
            svg.bar viewBox=(format!("0 0 {WIDTH} {HEIGHT}")) aria-hidden="true" {
                text x=(LEFT) y=(FOOT) text-anchor="start" { "0" }
                text x=(RIGHT) y=(FOOT) text-anchor="end" { (percent(self.most)) }
                path.axis d=(format!("M{LEFT} {HEIGHT}H{RIGHT}")) {}
            }
        })
    }

    /// A rate: its line, its mark, and an arrow head where the line goes on. The figures stand in the same row.
    pub fn draw(&self, interval: &Interval<'_>) -> Cell {
        let Rate {
            rate, low, high, of, ..
        } = interval.rate;
        let y = HEIGHT / 2.0;
        Cell::Drawn(html! {
            svg.bar viewBox=(format!("0 0 {WIDTH} {HEIGHT}")) aria-hidden="true" {
                path.grid d=(format!("M{LEFT} {y}H{RIGHT}")) {}
                @if let Some(all) = self.all { path.all d=(format!("M{} 0V{HEIGHT}", fine(self.x(all)))) {} }
                @if of > 0 {
                    path.line d=(format!("M{} {y}H{}", fine(self.x(low).min(RIGHT - 8.0)), fine(self.x(high)))) {}
                    @if self.is_beyond(high) { path.on d=(format!("M{} {}l9 5l-9 5z", RIGHT, y - 5.0)) {} }
                    @if !self.is_beyond(rate) { (mark(interval, self.x(rate), y)) }
                }
            }
        })
    }

    /// What the signs of the column mean.
    pub fn legend(&self) -> Markup {
        html! {
            p.note {
                "Drawn in each row: the line is the 95 % interval, that is, the rates that so many calls fit; the mark on it is the rate, hollow where it "
                "is of under 20"
                @if self.all.is_some() { ", a triangle where more or less came back than chance gives a group of that size" }
                ". An arrow head at the right end: the line goes on beyond the scale, and a mark that is missing lies there; the figures beside it "
                "tell how far."
                @if let Some(all) = self.all { " The broken line is the rate of all, " (percent(all)) "." }
            }
        }
    }

    fn is_beyond(&self, share: f64) -> bool {
        share > self.most + 1e-9
    }

    fn x(&self, share: f64) -> f64 {
        LEFT + (RIGHT - LEFT) * (share / self.most).min(1.0)
    }
}

fn mark(interval: &Interval<'_>, x: f64, y: f64) -> Markup {
    let Rate { count, of, .. } = interval.rate;
    let told = format!("{}: {count} of {of}", interval.name);
    match interval.place {
        _ if interval.rate.too_small => chart::point("hollow", x, y, &told),
        Place::TooFew | Place::Within => chart::point("point", x, y, &told),
        Place::High | Place::VeryHigh => chart::arrow(true, x, y, &told),
        Place::Low | Place::VeryLow => chart::arrow(false, x, y, &told),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::safe;

    fn drawn(cell: Cell) -> String {
        match cell {
            Cell::Drawn(drawn) => drawn.into_string(),
            Cell::Text(text) | Cell::Words(text) => text,
        }
    }

    #[test]
    fn a_line_that_goes_on_beyond_the_scale_ends_in_an_arrow_head() {
        let name = safe("valve");
        let interval = |count, of| Interval {
            name: &name,
            rate: Rate::new(count, of),
            place: Place::Within,
        };
        let intervals = [interval(20, 100), interval(2, 4), interval(9, 9)];
        let scale = Scale::of(&intervals, Some(0.2));
        let [large, small, beyond] = intervals.map(|one| drawn(scale.draw(&one)));
        assert!(
            large.contains("class=\"point\"") && !large.contains("class=\"on\""),
            "{large}"
        );
        assert!(small.contains("class=\"on\""), "{small}");
        // A mark at the edge would be read as a rate.
        assert!(
            beyond.contains("class=\"on\"") && !beyond.contains("<circle"),
            "{beyond}"
        );
        assert!(scale.legend().into_string().contains("goes on beyond the scale"));
    }
}
