//! The picture as an SVG document.

mod foot;
mod frame;
mod head;
mod legend;
mod look;
mod shapes;
mod steps;
mod xml;

use super::Picture;
use super::layout::{MARGIN, fit, tiles};
use super::lettering::short;
use crate::source::safe;
use frame::Frame;
use xml::Xml;

/// The whole document.
pub(super) fn draw(picture: &Picture<'_>) -> String {
    let tiles = tiles(picture);
    let frame = Frame::new(picture);
    let around = |width: f64| frame.height(width);
    let sheet = fit(&tiles, &picture.plan.parents, &picture.plan.below, &around);
    let inner = sheet.width - 2.0 * MARGIN;
    let head = frame.head_height(inner);

    let mut xml = Xml::default();
    let (width, height) = (sheet.width, sheet.height);
    xml.open(
        "svg",
        &[
            ("xmlns", "http://www.w3.org/2000/svg"),
            ("width", &format!("{:.1}mm", width * sheet.scale)),
            ("height", &format!("{:.1}mm", height * sheet.scale)),
            ("viewBox", &format!("0 0 {width:.1} {height:.1}")),
            ("role", "graphics-document document"),
            ("aria-labelledby", "sheet-title sheet-desc"),
        ],
    );
    let tree = &picture.library.trees[picture.tree];
    xml.element("title", &[("id", "sheet-title")], &short(&tree.title));
    xml.element("desc", &[("id", "sheet-desc")], &description(picture));
    xml.style(&look::style_sheet());
    xml.shape(
        "paper",
        &format!("M0,0 L{width:.1},0 L{width:.1},{height:.1} L0,{height:.1} Z"),
    );
    xml.open("g", &[("transform", &format!("translate({MARGIN},{MARGIN})"))]);
    frame.draw_head(&mut xml, inner, sheet.paper);
    xml.open("g", &[("transform", &format!("translate(0,{head:.1})"))]);
    steps::draw(picture, &tiles, &sheet, &mut xml);
    xml.close("g");
    frame.draw_foot(&mut xml, inner, head + sheet.drawing_height);
    xml.close("g");
    xml.close("svg");
    xml.finish()
}

fn description(picture: &Picture<'_>) -> crate::source::Safe {
    let steps = picture.cards.len();
    let ways: usize = picture.ways.iter().map(Vec::len).sum();
    safe(&format!(
        "A fault tree as a chart of {steps} numbered steps and {ways} ways between them. What goes on stands below its step, \
         what ends beside it; a way that goes on elsewhere says at which number."
    ))
}
