//! What stands around the steps: the head above them, and below them what their marks refer to.

use super::super::Picture;
use super::super::cards::{self, spoken};
use super::super::layout::{Block, Style};
use super::super::proofs;
use super::legend;
use super::xml::Xml;
use crate::library::Status;
use crate::report::job_text::GOVERNS;
use crate::source::{Safe, safe};

/// Width of a column of the foot, and what lies between two.
const COLUMN: f64 = 330.0;
const GUTTER: f64 = 24.0;

/// Between head, legend, steps and foot.
const GAP: f64 = 14.0;

/// Head and foot of a sheet.
pub(super) struct Frame {
    width: f64,
    head: Block,
    /// The columns of the foot.
    foot: Vec<Block>,
}

impl Frame {
    /// For a sheet of this width inside its margins, to be printed on this paper.
    pub fn new(picture: &Picture<'_>, paper: &str, width: f64) -> Self {
        Self {
            width,
            head: head(picture, paper, width),
            foot: in_columns(foot(picture), width),
        }
    }

    /// From the top of the sheet to the steps.
    pub fn head_height(&self) -> f64 {
        self.head.height() + GAP + legend::height(self.width) + GAP
    }

    /// Of all but the steps.
    pub fn height(&self) -> f64 {
        self.head_height() + self.foot_height()
    }

    fn foot_height(&self) -> f64 {
        let longest = self.foot.iter().map(Block::height).fold(0.0, f64::max);
        if longest > 0.0 { 3.0 * GAP + longest } else { 0.0 }
    }

    pub fn draw_head(&self, xml: &mut Xml) {
        xml.open("g", &[("role", "group")]);
        xml.block(&self.head, 0.0, 0.0);
        xml.close("g");
        let top = self.head.height() + GAP;
        legend::draw(xml, self.width, top);
        let line = top + legend::height(self.width) + GAP / 2.0;
        xml.shape("rule", &format!("M0,{line:.1} L{:.1},{line:.1}", self.width));
    }

    pub fn draw_foot(&self, xml: &mut Xml, top: f64) {
        if self.foot_height() == 0.0 {
            return;
        }
        let line = top + 2.0 * GAP;
        xml.shape("rule", &format!("M0,{line:.1} L{:.1},{line:.1}", self.width));
        xml.open("g", &[("role", "group")]);
        for (number, column) in self.foot.iter().enumerate() {
            xml.block(column, number as f64 * (COLUMN + GUTTER), line + GAP / 2.0);
        }
        xml.close("g");
    }
}

fn head(picture: &Picture<'_>, paper: &str, width: f64) -> Block {
    let library = picture.library;
    let tree = &library.trees[picture.tree];
    let mut head = Block::default();
    let mut say = |style, text: &str| head.add(style, &safe(text), width);
    say(Style::Title, &tree.title);
    match &tree.complaint {
        Some(complaint) => say(Style::Head, &format!("The owner says: {complaint}")),
        None => say(Style::Head, "Visited by other trees; no complaint begins here"),
    }
    let edition = tree.edition.as_ref().map_or_else(String::new, |edition| format!(", edition {edition}"));
    let changed = tree.changed.as_ref().map_or_else(String::new, |changed| format!(" ({changed})"));
    say(
        Style::Head,
        &format!(
            "Tree {}{edition}{changed}, of {} ({}), edition {}. Prints on {paper} or larger.",
            tree.name, library.title, library.name, library.edition
        ),
    );
    match tree.status {
        Status::Approved => say(Style::Head, "Status: approved"),
        status => say(Style::Warning, &format!("Status: {}", status.name().replace('-', " ").to_uppercase())),
    }
    if let Some(part) = part(picture) {
        say(Style::Warning, &part);
    }
    if picture.errors > 0 {
        let count = picture.errors;
        let errors = if count == 1 { "1 error".to_owned() } else { format!("{count} errors") };
        say(Style::Warning, &format!("NOT TO BE WALKED: the library has {errors}; check it first"));
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
    let mut say = |style, text: &str| foot.add(style, &safe(text), COLUMN);
    if !picture.proofs.needed.is_empty() {
        say(Style::Section, "What must hold before these are named");
    }
    for (number, needed) in picture.proofs.needed.iter().enumerate() {
        say(Style::Entry, &format!("{} {}: all of this, fresh", proofs::label(number), needed.title));
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
    let cautions = cautions.iter().map(|id| (&library.cautions[*id].name, &library.cautions[*id].text));
    entries(&mut foot, "Cautions", cautions.collect());
    let opened = opened.iter().map(|id| (&library.restores[*id].name, &library.restores[*id].text));
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
        foot.add(Style::Foot, &entry(name, text), COLUMN);
    }
}

fn entry(name: &str, text: &str) -> Safe {
    safe(&format!("{}: {text}", spoken(name)))
}

/// Breaks a long column into as many as fit beside one another, of about the same length.
fn in_columns(long: Block, width: f64) -> Vec<Block> {
    let room = ((width + GUTTER) / (COLUMN + GUTTER)).floor().max(1.0);
    // A few lines are not worth a second column.
    let target = (long.height() / room).max(120.0);
    let mut columns = vec![Block::default()];
    let mut height = 0.0;
    for line in long.0 {
        let starts = matches!(line.style, Style::Section | Style::Entry);
        let full = height >= target || (starts && height + 2.0 * line.style.letters().leading() > target);
        if height > 0.0 && full && (columns.len() as f64) < room {
            columns.push(Block::default());
            height = 0.0;
        }
        height += line.style.letters().leading();
        if let Some(column) = columns.last_mut() {
            column.0.push(line);
        }
    }
    columns
}
