//! The outline of each kind of step, known by its form in black and white.
//!
//! Paths have absolute points only.

use super::super::layout::{BEHIND, TAP};
use super::xml::Xml;

/// A box on the sheet.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rect {
    pub x: f64,
    pub y: f64,
    pub width: f64,
    pub height: f64,
}

/// Draws the outline of a kind of step.
pub(super) fn outline(xml: &mut Xml, kind: &str, rect: Rect) {
    let Rect { x, y, width, height } = rect;
    let (right, bottom) = (x + width, y + height);
    let middle = y + height / 2.0;
    match kind {
        // A scale along the side.
        "measure" => {
            xml.shape(
                "box",
                &polygon(&[(x, y), (right, y), (right, bottom), (x, bottom)]),
            );
            xml.shape("trim", &scale(x, y, height));
        }
        // Round like an eye, with a ring for its pupil.
        "observe" => {
            let (across, down) = (14.0, (TAP - 3.0).min(height / 2.0));
            xml.shape(
                "box",
                &format!(
                    "M{:.1},{y:.1} L{:.1},{y:.1} Q{right:.1},{y:.1} {right:.1},{:.1} L{right:.1},{:.1} \
                     Q{right:.1},{bottom:.1} {:.1},{bottom:.1} L{:.1},{bottom:.1} Q{x:.1},{bottom:.1} {x:.1},{:.1} \
                     L{x:.1},{:.1} Q{x:.1},{y:.1} {:.1},{y:.1} Z",
                    x + across,
                    right - across,
                    y + down,
                    bottom - down,
                    right - across,
                    x + across,
                    bottom - down,
                    y + down,
                    x + across,
                ),
            );
            xml.shape("trim", &ring(x + 12.0, y + TAP, 5.5));
            xml.shape("rivet", &ring(x + 12.0, y + TAP, 2.0));
        }
        // A block with its corners off.
        "do" => {
            let cut = 10.0;
            xml.shape(
                "box",
                &polygon(&[
                    (x + cut, y),
                    (right - cut, y),
                    (right, y + cut),
                    (right, bottom - cut),
                    (right - cut, bottom),
                    (x + cut, bottom),
                    (x, bottom - cut),
                    (x, y + cut),
                ]),
            );
        }
        // A plate with a rivet in each corner.
        "plate" => {
            xml.shape(
                "box",
                &polygon(&[(x, y), (right, y), (right, bottom), (x, bottom)]),
            );
            let (left, top) = (x + 7.0, y + 7.0);
            let (far, low) = (right - 7.0, bottom - 7.0);
            for (x, y) in [(left, top), (far, top), (left, low), (far, low)] {
                xml.shape("rivet", &ring(x, y, 2.5));
            }
        }
        // A sheet with others behind it.
        "visit" => {
            let (far, low) = (right, bottom);
            let (right, bottom) = (right - BEHIND, bottom - BEHIND);
            let (left, top) = (x + BEHIND, y + BEHIND);
            xml.shape(
                "behind",
                &format!(
                    "M{left:.1},{bottom:.1} L{left:.1},{low:.1} L{far:.1},{low:.1} L{far:.1},{top:.1} L{right:.1},{top:.1}"
                ),
            );
            xml.shape(
                "box",
                &polygon(&[(x, y), (right, y), (right, bottom), (x, bottom)]),
            );
        }
        // A tag tied to the line that leads to it.
        "verdict" => {
            let cut = 12.0;
            xml.shape(
                "box",
                &polygon(&[
                    (x + cut, y),
                    (right, y),
                    (right, bottom),
                    (x + cut, bottom),
                    (x, bottom - cut),
                    (x, y + cut),
                ]),
            );
            xml.shape("hole", &ring(x + 11.0, y + TAP, 4.0));
        }
        // A ribbon with a notch.
        "return" => xml.shape(
            "box",
            &polygon(&[
                (x, y),
                (right, y),
                (right - 12.0, middle),
                (right, bottom),
                (x, bottom),
            ]),
        ),
        _ => xml.shape(
            "box unknown",
            &polygon(&[(x, y), (right, y), (right, bottom), (x, bottom)]),
        ),
    }
}

fn polygon(points: &[(f64, f64)]) -> String {
    let points: Vec<String> = points.iter().map(|(x, y)| format!("{x:.1},{y:.1}")).collect();
    format!("M{} Z", points.join(" L"))
}

/// The strokes of a scale down the left side of a box, every fifth longer.
fn scale(x: f64, y: f64, height: f64) -> String {
    let count = ((height - 8.0) / 6.0) as usize;
    let strokes = (0..=count).map(|number| {
        let at = y + 4.0 + 6.0 * number as f64;
        let length = if number % 5 == 0 { 13.0 } else { 7.0 };
        format!("M{x:.1},{at:.1} L{:.1},{at:.1}", x + length)
    });
    strokes.collect::<Vec<_>>().join(" ")
}

/// A circle of four arcs' worth of curves, near enough at this size.
fn ring(x: f64, y: f64, radius: f64) -> String {
    let (left, right, top, bottom) = (x - radius, x + radius, y - radius, y + radius);
    // Cubic curves with this share of the radius stay within 0.03 % of a circle.
    let bend = radius * 0.5523;
    format!(
        "M{right:.1},{y:.1} C{right:.1},{:.1} {:.1},{bottom:.1} {x:.1},{bottom:.1} \
         C{:.1},{bottom:.1} {left:.1},{:.1} {left:.1},{y:.1} \
         C{left:.1},{:.1} {:.1},{top:.1} {x:.1},{top:.1} \
         C{:.1},{top:.1} {right:.1},{:.1} {right:.1},{y:.1} Z",
        y + bend,
        x + bend,
        x - bend,
        y + bend,
        y - bend,
        x - bend,
        x + bend,
        y - bend
    )
}
