//! Every text of a picture in lines, with the room it takes.

use super::super::cards::{Card, Tone};
use super::super::{Note, Picture};
use super::style::Style;
use super::{BEHIND, BOX, BUS, BUS_WORDS, CHANNEL, INSET, PAD, PAD_RIGHT, STEM, STEM_WORDS, TAG};
use crate::library::{Id, Severity, Step};
use crate::source::{Safe, safe};

/// Most lines of a paragraph.
const LINES: usize = 14;

/// Width of the words below a box, right of the line, and beside one.
const BELOW: f64 = BOX - STEM - STEM_WORDS - 8.0;
const BESIDE: f64 = CHANNEL - BUS - BUS_WORDS - 10.0;

/// Between a line and its tail.
const TAIL: f64 = 7.0;

/// A line of text.
#[derive(Debug)]
pub(in super::super) struct Line {
    pub style: Style,
    pub text: Safe,
    /// What follows on the same line in another style.
    pub tail: Option<(Style, Safe)>,
}

/// The room that lines take below one another.
pub(in super::super) fn height(lines: &[Line]) -> f64 {
    lines.iter().map(|line| line.style.leading()).sum()
}

/// Lines below one another.
#[derive(Debug, Default)]
pub(in super::super) struct Block(pub Vec<Line>);

impl Block {
    pub fn height(&self) -> f64 {
        height(&self.0)
    }

    pub fn add(&mut self, style: Style, text: &Safe, room: f64) {
        self.add_at_most(style, text, room, LINES);
    }

    /// The same, with another limit than that of a box.
    pub fn add_at_most(&mut self, style: Style, text: &Safe, room: f64, most: usize) {
        let lines = style.letters().wrap(text, room, most).into_iter();
        self.0.extend(lines.map(|text| Line {
            style,
            text,
            tail: None,
        }));
    }
}

/// Where a way leads.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in super::super) enum Target {
    /// To a step of the sheet.
    Card(usize),
    /// Off the sheet.
    Outside(Id<Step>),
}

/// One way of a branch: which of the step's ways, and the words beside its line.
#[derive(Debug)]
pub(in super::super) struct Way {
    pub way: usize,
    /// The answer, and what stands with it above the line.
    pub above: Block,
    /// What stands below the line.
    pub under: Block,
}

/// The ways of a step that lead to the same place: they share a line.
#[derive(Debug)]
pub(in super::super) struct Branch {
    pub target: Target,
    /// The step at its end hangs on it; otherwise the line ends in a number.
    pub holds: bool,
    pub ways: Vec<Way>,
    /// What stands at its end where it ends in a number.
    pub tag: Block,
}

impl Branch {
    /// Room above its line.
    pub fn above(&self) -> f64 {
        self.ways.iter().map(|way| way.above.height()).sum()
    }

    /// Room below its line.
    pub fn under(&self) -> f64 {
        self.ways.iter().map(|way| way.under.height()).sum()
    }
}

/// A step with everything that leaves it, in lines.
#[derive(Debug)]
pub(in super::super) struct Tile {
    pub block: Block,
    pub height: f64,
    pub branches: Vec<Branch>,
}

/// The tiles of a picture, by the numbers of its steps.
pub(in super::super) fn tiles(picture: &Picture<'_>) -> Vec<Tile> {
    (0..picture.cards.len()).map(|at| tile(picture, at)).collect()
}

fn tile(picture: &Picture<'_>, at: usize) -> Tile {
    let block = card_block(&picture.cards[at]);
    let mut branches: Vec<Branch> = Vec::new();
    for (number, way) in picture.ways[at].iter().enumerate() {
        let target = match picture.plan.number(way.go) {
            Some(card) => Target::Card(card),
            None => Target::Outside(way.go),
        };
        let same = branches.iter().position(|branch| branch.target == target);
        let branch = match same {
            Some(same) => &mut branches[same],
            None => {
                let holds = matches!(target, Target::Card(card) if picture.plan.parents[card] == Some(at));
                branches.push(Branch {
                    target,
                    holds,
                    ways: Vec::new(),
                    tag: tag(picture, target),
                });
                let last = branches.len() - 1;
                &mut branches[last]
            }
        };
        let joint = if branch.ways.is_empty() { "" } else { "or " };
        let room = match target {
            Target::Card(card) if picture.plan.below[at] == Some(card) => BELOW,
            _ => BESIDE,
        };
        branch.ways.push(set_way(picture, at, number, joint, room));
    }
    for branch in &mut branches {
        // Of several answers on one line, all but what stands with the last are above it.
        let last = branch.ways.len().saturating_sub(1);
        for way in &mut branch.ways[..last] {
            let under = std::mem::take(&mut way.under.0);
            way.above.0.extend(under);
        }
    }
    // The sheets behind a visit's box stand below it.
    let behind = if picture.cards[at].kind == "visit" {
        BEHIND
    } else {
        0.0
    };
    Tile {
        height: block.height() + 2.0 * INSET + behind,
        block,
        branches,
    }
}

/// The words of a way; `joint` stands before them where others are on the same line.
fn set_way(picture: &Picture<'_>, at: usize, number: usize, joint: &str, room: f64) -> Way {
    let way = &picture.ways[at][number];
    let mut set = Way {
        way: number,
        above: Block::default(),
        under: Block::default(),
    };
    set.above
        .add(Style::Answer, &safe(&format!("{joint}{}", way.answer)), room);
    for (note, text) in picture.notes(way) {
        let style = match note {
            Note::Means => Style::Means,
            Note::Limit => Style::Limit,
            Note::Finding(Severity::Danger) => Style::Danger,
            Note::Finding(_) => Style::Finding,
        };
        set.under.add(style, &text, room);
    }
    set
}

fn card_block(card: &Card) -> Block {
    let room = BOX - PAD - PAD_RIGHT;
    let mut block = Block::default();
    let kind = safe(&format!("{}  {}", card.number, card.kind.to_uppercase()));
    block.add(Style::Kind, &kind, room);
    let width = |style: Style, text: &Safe| style.letters().width(text.as_str());
    let fits = width(Style::Kind, &kind) + TAIL + width(Style::Name, &card.name) <= room;
    match block.0.first_mut() {
        Some(first) if fits => first.tail = Some((Style::Name, card.name.clone())),
        _ => block.add(Style::Name, &card.name, room),
    }
    for (tone, text) in &card.paragraphs {
        let style = match tone {
            Tone::Heading => Style::Heading,
            Tone::Text => Style::Text,
            Tone::Remedy => Style::Remedy,
            Tone::Danger => Style::Danger,
            Tone::Mark => Style::Mark,
        };
        block.add(style, text, room);
    }
    block
}

/// What a line ends in where its step stands elsewhere.
fn tag(picture: &Picture<'_>, target: Target) -> Block {
    let room = TAG - 12.0;
    let mut block = Block::default();
    match target {
        Target::Card(card) => {
            let card = &picture.cards[card];
            block.add(Style::Kind, &safe(&format!("go on at {}", card.number)), room);
            block.add_at_most(Style::Mark, card.title(), room, 2);
        }
        Target::Outside(step) => {
            block.add(Style::Kind, &safe("not on this sheet"), room);
            let card = picture.outside(step);
            block.add(Style::Name, &card.name, room);
            block.add_at_most(Style::Mark, card.title(), room, 2);
        }
    }
    block
}
