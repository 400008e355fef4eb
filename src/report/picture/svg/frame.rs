//! What stands around the steps: the head above them, and below them what their marks refer to.

use super::super::Picture;
use super::super::cards::{self, spoken};
use super::super::layout::{Block, Line, Style, height};
use super::super::lettering::short;
use super::super::proofs;
use super::legend;
use super::xml::Xml;
use crate::library::Status;
use crate::report::job_text::GOVERNS;
use crate::source::{Safe, safe};

/// Width of a column of the foot, and what lies between two.
const COLUMN: f64 = 330.0;
const GUTTER: f64 = 24.0;

/// Most lines of a paragraph of the foot: a proof is not cut off for its length.
const LINES: usize = 60;

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
        head(self.picture, "", width).height() + GAP + legend::height(width) + GAP
    }

    /// Of all but the steps.
    pub fn height(&self, width: f64) -> f64 {
        let columns = columns(&self.foot.0, width);
        let longest = columns.into_iter().map(height).fold(0.0, f64::max);
        let foot = if longest > 0.0 { 3.0 * GAP + longest } else { 0.0 };
        self.head_height(width) + foot
    }

    /// Draws the head of a sheet that is to be printed on this paper.
    pub fn draw_head(&self, xml: &mut Xml, width: f64, paper: &str) {
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

fn head(picture: &Picture<'_>, paper: &str, width: f64) -> Block {
    let library = picture.library;
    let tree = &library.trees[picture.tree];
    let mut head = Block::default();
    let mut say = |style, text: &str| head.add(style, &short(text), width);
    say(Style::Title, &tree.title);
    match &tree.complaint {
        Some(complaint) => say(Style::Head, &format!("The owner says: {complaint}")),
        None => say(Style::Head, "Visited by other trees; no complaint begins here"),
    }
    let edition = tree
        .edition
        .as_ref()
        .map_or_else(String::new, |edition| format!(", edition {edition}"));
    let changed = tree
        .changed
        .as_ref()
        .map_or_else(String::new, |changed| format!(" ({changed})"));
    say(
        Style::Head,
        &format!(
            "Tree {}{edition}{changed}, of {} ({}), edition {}",
            tree.name, library.title, library.name, library.edition
        ),
    );
    // A short line, which the paper's name cannot break: the paper turns on the height of the head.
    let (style, status) = match tree.status {
        Status::Approved => (Style::Head, "approved".to_owned()),
        status => (Style::Warning, status.name().replace('-', " ").to_uppercase()),
    };
    say(style, &format!("Status: {status}. Prints on {paper}, or larger."));
    if let Some(part) = part(picture) {
        say(Style::Warning, &part);
    }
    if picture.errors > 0 {
        let count = picture.errors;
        let errors = if count == 1 {
            "1 error".to_owned()
        } else {
            format!("{count} errors")
        };
        say(
            Style::Warning,
            &format!("NOT TO BE WALKED: the library has {errors}; check it first"),
        );
    }
    say(Style::Warning, GOVERNS);
    let cautions = library.standing_cautions.iter();
    let cautions: Vec<&str> = cautions.map(|id| library.cautions[*id].text.as_str()).collect();
    say(Style::Head, &cautions.join(" "));
    head
}

/// Which part of the tree is drawn, where it is not all of it.
fn part(picture: &Picture<'_>) -> Option<String> {
    let from = picture.part.from.as_ref().map(|from| format!("from {from}"));
    let depth = picture.part.depth.map(|depth| match depth {
        1 => "1 step on".to_owned(),
        depth => format!("{depth} steps on"),
    });
    let words: Vec<String> = from.into_iter().chain(depth).collect();
    (!words.is_empty()).then(|| format!("A part of the tree: {}", words.join(", ")))
}

/// What the marks of the steps refer to, as one long column.
fn foot(picture: &Picture<'_>) -> Block {
    let library = picture.library;
    let mut foot = Block::default();
    let mut say = |style, text: &str| foot.add_at_most(style, &short(text), COLUMN, LINES);
    if !picture.proofs.needed.is_empty() {
        say(Style::Section, "What must hold before these are named");
    }
    for (number, needed) in picture.proofs.needed.iter().enumerate() {
        say(
            Style::Entry,
            &format!("{} {}: all of this, fresh", proofs::label(number), needed.title),
        );
        for line in needed.lines(library) {
            match line.as_slice() {
                [only] => say(Style::Foot, &format!("– {only}")),
                several => {
                    say(Style::Foot, "– one of these:");
                    for alternative in several {
                        say(Style::Foot, &format!("   · {alternative}"));
                    }
                }
            }
        }
    }
    let mut steps = picture.plan.steps.iter().map(|step| &library[*step]);
    let mut cautions = Vec::new();
    let mut opened = Vec::new();
    for step in steps.by_ref() {
        cautions.extend(cards::cautions(library, step));
        opened.extend(cards::leaves(library, step));
    }
    let cautions = cautions
        .iter()
        .map(|id| (&library.cautions[*id].name, &library.cautions[*id].text));
    entries(&mut foot, "Cautions", cautions.collect());
    let opened = opened
        .iter()
        .map(|id| (&library.restores[*id].name, &library.restores[*id].text));
    entries(&mut foot, "What is opened is put back", opened.collect());
    foot
}

/// A section of the foot with an entry for each name, each once.
fn entries(foot: &mut Block, title: &str, entries: Vec<(&String, &String)>) {
    let mut told: Vec<&String> = Vec::new();
    for (name, text) in entries {
        if told.contains(&name) {
            continue;
        }
        if told.is_empty() {
            foot.add(Style::Section, &safe(title), COLUMN);
        }
        told.push(name);
        foot.add_at_most(Style::Foot, &entry(name, text), COLUMN, LINES);
    }
}

fn entry(name: &str, text: &str) -> Safe {
    short(&format!("{}: {text}", spoken(name)))
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
