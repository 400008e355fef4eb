//! What the shapes and lines mean.

use super::super::layout::{Block, Style};
use super::shapes::{Rect, outline};
use super::xml::Xml;
use crate::source::safe;

/// Size of a cell, and of the sample in it.
const CELL: f64 = 238.0;
const ROW: f64 = 42.0;
const SAMPLE: f64 = 56.0;
const SAMPLE_HEIGHT: f64 = 30.0;

/// What each kind of step is for.
const SHAPES: [(&str, &str); 7] = [
    ("measure", "a number is measured or worked out"),
    ("observe", "something is seen, heard, felt or smelled"),
    ("do", "something is done"),
    ("plate", "the rating plate is read"),
    ("visit", "another tree is walked and comes back"),
    ("verdict", "what is wrong, and what is done about it"),
    ("return", "back to the tree that visits this one"),
];

/// What each kind of line is for.
const LINES: [(&str, &str); 3] = [
    ("answer", "this answer leads there; two strokes: only so often"),
    (
        "doubt",
        "no answer can be had; without such a line the walk ends unproven",
    ),
    ("after", "taken once its answer was taken so often"),
];

/// What the marks mean.
const MARKS: [(&str, &str); 2] = [
    ("P1", "a proof: what must hold stands at the foot"),
    ("go on at 7", "the line goes on at the step of that number"),
];

fn per_row(width: f64) -> usize {
    ((width / CELL) as usize).max(1)
}

/// Its height on a sheet of this width.
pub(super) fn height(width: f64) -> f64 {
    let cells = SHAPES.len() + LINES.len() + MARKS.len();
    cells.div_ceil(per_row(width)) as f64 * ROW
}

/// Draws it from `top` down.
pub(super) fn draw(xml: &mut Xml, width: f64, top: f64) {
    let per_row = per_row(width);
    let mut number = 0;
    let mut place = || {
        let (column, row) = (number % per_row, number / per_row);
        number += 1;
        (column as f64 * CELL, top + row as f64 * ROW)
    };
    xml.open("g", &[("class", "legend"), ("role", "group")]);
    for (kind, meaning) in SHAPES {
        let (x, y) = place();
        xml.open("g", &[("class", kind)]);
        let rect = Rect {
            x,
            y,
            width: SAMPLE,
            height: SAMPLE_HEIGHT,
        };
        outline(xml, kind, rect);
        xml.close("g");
        words(xml, &kind.to_uppercase(), meaning, x, y);
    }
    for (manner, meaning) in LINES {
        let (x, y) = place();
        let line = y + SAMPLE_HEIGHT / 2.0;
        xml.open("g", &[("class", manner)]);
        xml.shape("wire", &format!("M{x:.1},{line:.1} L{:.1},{line:.1}", x + SAMPLE));
        xml.close("g");
        words(xml, "", meaning, x, y);
    }
    for (mark, meaning) in MARKS {
        let (x, y) = place();
        xml.line(Style::Kind, &safe(mark), x, y + 8.0);
        words(xml, "", meaning, x, y);
    }
    xml.close("g");
}

fn words(xml: &mut Xml, word: &str, meaning: &str, x: f64, y: f64) {
    let room = CELL - SAMPLE - 18.0;
    let mut block = Block::default();
    if !word.is_empty() {
        block.add(Style::Kind, &safe(word), room);
    }
    block.add(Style::Mark, &safe(meaning), room);
    xml.block(&block.0, x + SAMPLE + 8.0, y);
}
