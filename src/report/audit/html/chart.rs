//! What charts are made of: a frame with two axes, and shapes in it.

use maud::{Markup, html};

use crate::report::audit::figures::{number, percent};

/// The size of a chart, in its own units: a text of twelve is read on a telephone and on paper.
pub(super) const WIDTH: f64 = 460.0;
const HEIGHT: f64 = 280.0;

const LEFT: f64 = 52.0;
const RIGHT: f64 = 14.0;
const TOP: f64 = 14.0;
const BOTTOM: f64 = 44.0;

/// The least that may be across: a second, in days, is ten times as much.
const LEAST: f64 = 1e-6;

/// Most marks on an axis.
const MARKS: usize = 6;

/// A frame: what is across, from nothing to something, and what is up, a share from nothing to something.
pub(super) struct Frame {
    across: f64,
    up: f64,
}

impl Frame {
    /// A frame that holds so much across and such a share.
    pub fn new(across: f64, up: f64) -> Self {
        Self {
            across: across.max(LEAST),
            up: rounded_up(up.clamp(0.01, 1.0)).min(1.0),
        }
    }

    pub fn x(&self, value: f64) -> f64 {
        LEFT + (value / self.across) * (WIDTH - LEFT - RIGHT)
    }

    pub fn y(&self, share: f64) -> f64 {
        let height = HEIGHT - TOP - BOTTOM;
        TOP + height * (1.0 - (share / self.up).clamp(0.0, 1.0))
    }

    /// Whether a share lies above all that is shown.
    pub fn is_beyond(&self, share: f64) -> bool {
        share > self.up + 1e-9
    }

    /// The chart: axes with marks, what is across named below, and what is drawn in between.
    pub fn draw(&self, id: &str, title: &str, told: &str, across: &Across<'_>, drawn: &Markup) -> Markup {
        let (title_id, told_id) = (format!("{id}-title"), format!("{id}-told"));
        let labelled = format!("{title_id} {told_id}");
        let (left, right, foot) = (LEFT, WIDTH - RIGHT, HEIGHT - BOTTOM);
        html! {
            svg viewBox=(format!("0 0 {WIDTH} {HEIGHT}")) role="img" aria-labelledby=(labelled) {
                title id=(title_id) { (title) }
                desc id=(told_id) { (told) }
                @for share in marks(self.up) {
                    @let y = fine(self.y(share));
                    path.grid d=(format!("M{left} {y}H{right}")) {}
                    text.soft x=(left - 6.0) y=(fine(self.y(share) + 4.0)) text-anchor="end" { (percent_short(share)) }
                }
                (drawn)
                path.axis d=(format!("M{left} {TOP}V{foot}H{right}")) {}
                @for (value, name) in &across.marks {
                    @let x = fine(self.x(*value));
                    path.axis d=(format!("M{x} {foot}v4")) {}
                    text.soft x=(x) y=(foot + 17.0) text-anchor="middle" { (name) }
                }
                text x=((left + right) / 2.0) y=(HEIGHT - 6.0) text-anchor="middle" { (across.name) }
            }
        }
    }
}

/// What is across: its name, and where it is marked.
pub(super) struct Across<'t> {
    pub name: &'t str,
    pub marks: Vec<(f64, String)>,
}

impl<'t> Across<'t> {
    /// Marked at round numbers up to a number.
    pub fn numbers(name: &'t str, up_to: f64) -> Self {
        let marks = marks(up_to.max(LEAST)).into_iter();
        let marks = marks.map(|value| (value, number(value)));
        Self {
            name,
            marks: marks.collect(),
        }
    }
}

/// A coordinate, in tenths.
pub(super) fn fine(value: f64) -> String {
    let text = format!("{value:.1}");
    text.strip_suffix(".0").map(str::to_owned).unwrap_or(text)
}

/// A round mark: what lies within.
pub(super) fn point(class: &str, x: f64, y: f64, told: &str) -> Markup {
    html! { circle class=(class) cx=(fine(x)) cy=(fine(y)) r="4.5" { title { (told) } } }
}

/// A pointed mark: what lies outside, pointing the way it does. Only what lies above has the colour that warns.
pub(super) fn arrow(up: bool, x: f64, y: f64, told: &str) -> Markup {
    let tip = if up { -7.0 } else { 7.0 };
    let path = format!("M{} {}l6 {}h-12z", fine(x), fine(y + tip), fine(-1.7 * tip));
    html! { path class=(if up { "out" } else { "below" }) d=(path) { title { (told) } } }
}

/// An arrow head at the top edge: what it stands for lies beyond the chart.
pub(super) fn beyond(x: f64, told: &str) -> Markup {
    html! { path.on d=(format!("M{} {}l6 9h-12z", fine(x), fine(TOP - 9.0))) { title { (told) } } }
}

/// A line through points that keeps to one height until the next.
pub(super) fn steps(points: impl IntoIterator<Item = (f64, f64)>) -> String {
    let mut path = String::new();
    for (x, y) in points {
        match path.is_empty() {
            true => path = format!("M{} {}", fine(x), fine(y)),
            false => path.push_str(&format!("H{}V{}", fine(x), fine(y))),
        }
    }
    path
}

/// Round numbers from nothing up to a number, evenly apart.
fn marks(up_to: f64) -> Vec<f64> {
    let apart = distance(up_to);
    let many = (up_to / apart + 1e-9) as usize;
    (0..=many).map(|number| apart * number as f64).collect()
}

/// The next round number of a scale that ends at about a number.
pub(super) fn rounded_up(value: f64) -> f64 {
    let apart = distance(value);
    (value / apart - 1e-9).ceil() * apart
}

/// The least round distance at which few enough marks fit.
fn distance(up_to: f64) -> f64 {
    let ten = 10.0_f64.powf((up_to / MARKS as f64).log10().floor());
    let distances = [1.0, 2.0, 5.0, 10.0].map(|times| times * ten);
    let fits = |apart: &f64| up_to / apart <= MARKS as f64;
    distances.into_iter().find(fits).unwrap_or(10.0 * ten)
}

/// A share that is a round number of per cent.
fn percent_short(share: f64) -> String {
    match ((1000.0 * share).round() as i64) % 10 {
        0 => format!("{:.0} %", 100.0 * share),
        _ => percent(share),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_are_round_and_few() {
        assert_eq!(marks(90.0), [0.0, 20.0, 40.0, 60.0, 80.0]);
        assert_eq!(rounded_up(0.37), 0.4);
        assert_eq!(marks(0.4).len(), 5);
        for up_to in [0.013, 0.5, 1.0, 7.0, 365.0, 1e6] {
            assert!((2..=MARKS + 1).contains(&marks(up_to).len()), "{up_to}");
        }
    }

    #[test]
    fn a_frame_holds_what_it_was_made_for() {
        let frame = Frame::new(90.0, 0.37);
        assert_eq!((frame.x(0.0), frame.x(90.0)), (LEFT, WIDTH - RIGHT));
        assert_eq!(
            (frame.y(0.0), frame.y(0.4), frame.y(7.0)),
            (HEIGHT - BOTTOM, TOP, TOP)
        );
        assert!(frame.is_beyond(0.41) && !frame.is_beyond(0.4));
        assert_eq!(Frame::new(0.0, 0.0).up, 0.01);
    }

    #[test]
    fn a_stepped_line_keeps_its_height_until_the_next_point() {
        assert_eq!(steps([(0.0, 5.0), (2.0, 4.25)]), "M0 5H2V4.2");
    }
}
