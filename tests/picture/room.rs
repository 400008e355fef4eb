//! Everything has its room: nothing overlaps, nothing is crossed, nothing is cut off.

use std::sync::LazyLock;

use crate::libraries::{built_in, picture, sump_pumps, whole};
use crate::sheet::{Area, Sheet, Stroke};

/// Looks at the sheet of every built-in tree, drawn and read once.
fn of_every_tree(look: impl Fn(&str, &Sheet)) {
    static SHEETS: LazyLock<Vec<(String, Sheet)>> = LazyLock::new(|| {
        let library = built_in();
        let sheets = (library.trees.iter())
            .map(|(id, tree)| (tree.name.clone(), Sheet::read(&picture(&library, id).svg())));
        sheets.collect()
    });
    assert!(SHEETS.len() > 20);
    for (tree, sheet) in SHEETS.iter() {
        look(tree, sheet);
    }
    look("pump", &Sheet::read(&whole(&sump_pumps(), "pump").svg()));
}

#[test]
fn no_two_boxes_overlap() {
    of_every_tree(|tree, sheet| {
        for (at, one) in sheet.boxes.iter().enumerate() {
            for other in sheet.boxes[..at].iter().filter(|other| other.id != one.id) {
                assert!(!one.area.overlaps(&other.area), "{tree}: {one:?} {other:?}");
            }
        }
    });
}

#[test]
fn text_stands_within_its_box_or_clear_of_all_boxes() {
    of_every_tree(|tree, sheet| {
        for text in &sheet.texts {
            let own = sheet
                .boxes
                .iter()
                .filter(|shape| Some(&shape.id) == text.of.as_ref() && !shape.is_behind);
            for shape in own {
                assert!(shape.area.holds(&text.area), "{tree}: {text:?} {shape:?}");
            }
            for shape in sheet
                .boxes
                .iter()
                .filter(|shape| Some(&shape.id) != text.of.as_ref())
            {
                assert!(!shape.area.overlaps(&text.area), "{tree}: {text:?} {shape:?}");
            }
        }
    });
}

#[test]
fn no_two_lines_of_text_overlap() {
    of_every_tree(|tree, sheet| {
        for (at, one) in sheet.texts.iter().enumerate() {
            for other in &sheet.texts[..at] {
                assert!(!one.area.overlaps(&other.area), "{tree}: {one:?} {other:?}");
            }
        }
    });
}

#[test]
fn no_line_runs_through_a_box_or_a_text_or_across_another_line() {
    of_every_tree(|tree, sheet| {
        for (at, stroke) in sheet.strokes.iter().enumerate() {
            let thin = area(stroke);
            for shape in &sheet.boxes {
                let inside = Area {
                    left: shape.area.left + 1.0,
                    top: shape.area.top + 1.0,
                    right: shape.area.right - 1.0,
                    bottom: shape.area.bottom - 1.0,
                };
                assert!(!thin.overlaps(&inside), "{tree}: {stroke:?} {shape:?}");
            }
            for text in &sheet.texts {
                assert!(!thin.overlaps(&text.area), "{tree}: {stroke:?} {text:?}");
            }
            for other in &sheet.strokes[..at] {
                assert!(!cross(stroke, other), "{tree}: {stroke:?} {other:?}");
            }
        }
    });
}

#[test]
fn everything_stands_on_the_sheet() {
    of_every_tree(|tree, sheet| {
        for text in &sheet.texts {
            assert!(sheet.whole.holds(&text.area), "{tree}: {text:?}");
        }
        for shape in &sheet.boxes {
            assert!(sheet.whole.holds(&shape.area), "{tree}: {shape:?}");
        }
    });
}

/// A line with the thickness of its ink.
fn area(stroke: &Stroke) -> Area {
    let (a, b) = (stroke.from, stroke.to);
    Area {
        left: a.0.min(b.0) - 0.3,
        top: a.1.min(b.1) - 0.3,
        right: a.0.max(b.0) + 0.3,
        bottom: a.1.max(b.1) + 0.3,
    }
}

/// Whether an upright and a level line cross, and do not just meet.
fn cross(one: &Stroke, other: &Stroke) -> bool {
    let upright = |stroke: &Stroke| (stroke.from.0 - stroke.to.0).abs() < 0.05;
    let (level, upright) = match (upright(one), upright(other)) {
        (true, false) => (other, one),
        (false, true) => (one, other),
        _ => return false,
    };
    let within = |at: f64, a: f64, b: f64| a.min(b) + 0.2 < at && at < a.max(b) - 0.2;
    within(upright.from.0, level.from.0, level.to.0) && within(level.from.1, upright.from.1, upright.to.1)
}
