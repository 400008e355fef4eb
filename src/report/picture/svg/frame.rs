//! What stands around the steps: the head above them, and below them what their marks refer to.

use super::super::Picture;
use super::super::layout::{Block, Line, Paper, Style, height};
use super::foot::foot;
use super::head::head;
use super::legend;
use super::xml::Xml;

/// Width of a column of the foot, and what lies between two.
pub(super) const COLUMN: f64 = 330.0;
const GUTTER: f64 = 24.0;

/// Shortest column of the foot that is broken.
const SHORTEST: f64 = 120.0;

/// Between head, legend, steps and foot.
const GAP: f64 = 14.0;

/// Head and foot of a sheet.
pub(super) struct Frame<'p> {
    picture: &'p Picture<'p>,
    /// The foot as one long column.
    foot: Block,
}

impl<'p> Frame<'p> {
    pub fn new(picture: &'p Picture<'p>) -> Self {
        Self {
            picture,
            foot: foot(picture),
        }
    }

    /// From the top of a sheet of this width to the steps.
    pub fn head_height(&self, width: f64) -> f64 {
        head(self.picture, None, width).height() + GAP + legend::height(width) + GAP
    }

    /// Of all but the steps.
    pub fn height(&self, width: f64) -> f64 {
        let columns = columns(&self.foot.0, width);
        let longest = columns.into_iter().map(height).fold(0.0, f64::max);
        let foot = if longest > 0.0 { 3.0 * GAP + longest } else { 0.0 };
        self.head_height(width) + foot
    }

    /// Draws the head of a sheet that is to be printed on this paper.
    pub fn draw_head(&self, xml: &mut Xml, width: f64, paper: Option<Paper>) {
        let head = head(self.picture, paper, width);
        xml.open("g", &[("role", "group")]);
        xml.block(&head.0, 0.0, 0.0);
        xml.close("g");
        let top = head.height() + GAP;
        legend::draw(xml, width, top);
        rule(xml, width, top + legend::height(width) + GAP / 2.0);
    }

    /// Draws the foot from `top` down.
    pub fn draw_foot(&self, xml: &mut Xml, width: f64, top: f64) {
        if self.foot.0.is_empty() {
            return;
        }
        let line = top + 2.0 * GAP;
        rule(xml, width, line);
        xml.open("g", &[("role", "group")]);
        for (number, column) in columns(&self.foot.0, width).into_iter().enumerate() {
            xml.block(column, number as f64 * (COLUMN + GUTTER), line + GAP / 2.0);
        }
        xml.close("g");
    }
}

fn rule(xml: &mut Xml, width: f64, y: f64) {
    xml.shape("rule", &format!("M0,{y:.1} L{width:.1},{y:.1}"));
}

/// Breaks a long column into as many as fit beside one another, of about the same length.
fn columns(long: &[Line], width: f64) -> Vec<&[Line]> {
    let room = (((width + GUTTER) / (COLUMN + GUTTER)) as usize).max(1);
    // A few lines are not worth a second column.
    let target = (height(long) / room as f64).max(SHORTEST);
    let mut columns = Vec::new();
    let (mut from, mut filled) = (0, 0.0);
    for (at, line) in long.iter().enumerate() {
        let leading = line.style.leading();
        let starts = matches!(line.style, Style::Section | Style::Entry);
        let full = filled >= target || (starts && filled + 2.0 * leading > target);
        if full && columns.len() + 1 < room {
            columns.push(&long[from..at]);
            (from, filled) = (at, 0.0);
        }
        filled += leading;
    }
    columns.push(&long[from..]);
    columns
}
