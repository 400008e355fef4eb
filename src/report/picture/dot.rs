//! The picture in the DOT language, for Graphviz.
//!
//! Only quoted strings are written. In them a quote and a backslash are escaped for the language, and an ampersand for the
//! character entities that Graphviz reads in every label.

use std::fmt::Write;

use super::Picture;
use super::cards::Card;
use super::lettering::{Letters, short};
use super::ways::{Manner, Way};
use crate::source::{Safe, safe};

/// Room for the text of a node, and of an edge's label, in the units of [`Letters`].
const NODE: f64 = 200.0;
const LABEL: f64 = 130.0;

/// Most lines of a paragraph.
const LINES: usize = 12;

const LETTERS: Letters = Letters::plain(10.0);

/// The whole graph.
pub(super) fn write(picture: &Picture<'_>) -> String {
    let mut dot = String::new();
    let tree = &picture.library.trees[picture.tree];
    let _ = writeln!(dot, "digraph {} {{", quoted(&safe(&tree.name)));
    let title = short(&format!("{}: {}", picture.library.title, tree.title));
    let _ = writeln!(
        dot,
        "  graph [charset=\"UTF-8\", labelloc=t, fontname=\"sans-serif\", label={}];",
        quoted(&title)
    );
    dot.push_str("  node [fontname=\"sans-serif\", fontsize=10, margin=\"0.15,0.1\"];\n");
    dot.push_str("  edge [fontname=\"sans-serif\", fontsize=9];\n");
    for card in &picture.cards {
        let _ = writeln!(
            dot,
            "  s{} [{}, label={}];",
            card.number,
            shape(card.kind),
            node_label(card)
        );
    }
    let mut cut = 0;
    for (from, ways) in picture.ways.iter().enumerate() {
        for way in ways {
            let to = match picture.plan.number(way.go) {
                Some(to) => format!("s{}", to + 1),
                None => {
                    cut += 1;
                    let beyond = picture.outside(way.go);
                    let mut lines = vec![safe(&format!("goes on: {}", beyond.name))];
                    lines.extend(LETTERS.wrap(beyond.title(), LABEL, 2));
                    let label = left_aligned(&lines);
                    let _ = writeln!(dot, "  cut{cut} [shape=plaintext, label={label}];");
                    format!("cut{cut}")
                }
            };
            let _ = writeln!(
                dot,
                "  s{} -> {to} [style={}, label={}];",
                from + 1,
                line(way.manner),
                edge_label(picture, way)
            );
        }
    }
    dot.push_str("}\n");
    dot
}

/// The shape of a kind of step.
fn shape(kind: &str) -> &'static str {
    match kind {
        "measure" => "shape=box, style=solid",
        "observe" => "shape=egg, style=solid",
        "do" => "shape=octagon, style=solid",
        "plate" => "shape=box, peripheries=2, style=solid",
        "visit" => "shape=folder, style=solid",
        "verdict" => "shape=box, style=bold, penwidth=3",
        "return" => "shape=cds, style=solid",
        _ => "shape=box, style=dashed",
    }
}

fn line(manner: Manner) -> &'static str {
    match manner {
        Manner::Answer => "solid",
        Manner::Doubt => "dashed",
        Manner::After => "dotted",
    }
}

fn node_label(card: &Card) -> String {
    let mut lines = vec![safe(&format!(
        "{} {} {}",
        card.number,
        card.kind.to_uppercase(),
        card.name
    ))];
    for (_, text) in &card.paragraphs {
        lines.extend(LETTERS.wrap(text, NODE, LINES));
    }
    left_aligned(&lines)
}

fn edge_label(picture: &Picture<'_>, way: &Way) -> String {
    let mut lines = LETTERS.wrap(&way.answer, LABEL, LINES);
    for note in picture.notes(way) {
        lines.extend(LETTERS.wrap(&note.1, LABEL, LINES));
    }
    left_aligned(&lines)
}

/// A quoted string of one line.
fn quoted(text: &Safe) -> String {
    format!("\"{}\"", escaped(text))
}

/// A quoted string of several lines, each aligned to the left.
fn left_aligned(lines: &[Safe]) -> String {
    let lines: String = lines.iter().map(|line| escaped(line) + "\\l").collect();
    format!("\"{lines}\"")
}

fn escaped(text: &Safe) -> String {
    let mut escaped = String::with_capacity(text.as_str().len());
    for character in text.as_str().chars() {
        match character {
            '"' => escaped.push_str("\\\""),
            '\\' => escaped.push_str("\\\\"),
            '&' => escaped.push_str("&amp;"),
            other => escaped.push(other),
        }
    }
    escaped
}
