//! The steps and the lines between them.

use super::super::Picture;
use super::super::layout::{
    BOX, BUS, BUS_WORDS, Branch, CHANNEL, INSET, LEAD, PAD, STEM, STEM_GAP, STEM_WORDS, Sheet, Spot, Style,
    TAP, Target, Tile, held, tap,
};
use super::super::ways::{Manner, Way};
use super::shapes::{Rect, outline};
use super::xml::Xml;
use crate::source::safe;

/// Draws every step with the ways that leave it.
pub(super) fn draw(picture: &Picture<'_>, tiles: &[Tile], sheet: &Sheet, xml: &mut Xml) {
    let drawing = Drawing {
        picture,
        tiles,
        sheet,
    };
    for at in 0..tiles.len() {
        drawing.lead(at, xml);
        drawing.ways(at, xml);
        drawing.step(at, xml);
    }
}

struct Drawing<'d> {
    picture: &'d Picture<'d>,
    tiles: &'d [Tile],
    sheet: &'d Sheet,
}

impl Drawing<'_> {
    /// The word above the first box of a piece.
    fn lead(&self, at: usize, xml: &mut Xml) {
        if !self.sheet.ladder.heads[at] {
            return;
        }
        let word = match self.picture.plan.parents[at] {
            Some(parent) => format!("from {}", parent + 1),
            None if at == 0 && self.begins_the_tree() => "start".to_owned(),
            None if at == 0 => "this part begins here".to_owned(),
            None => "no way leads here".to_owned(),
        };
        let Spot { x, y } = self.sheet.spots[at];
        xml.line(Style::Kind, &safe(&word), x + STEM + STEM_WORDS, y - LEAD + 1.0);
        let (stem, top) = (x + STEM, y - LEAD + 3.0);
        xml.shape("wire", &format!("M{stem:.1},{top:.1} L{stem:.1},{y:.1}"));
        xml.shape("head-of", &arrow_down(stem, y));
    }

    /// Whether the first step of the sheet is the first of the tree.
    fn begins_the_tree(&self) -> bool {
        let picture = self.picture;
        let start = picture.library.trees[picture.tree].start;
        picture.plan.steps.first().copied() == start
    }

    fn step(&self, at: usize, xml: &mut Xml) {
        let card = &self.picture.cards[at];
        let Spot { x, y } = self.sheet.spots[at];
        let id = format!("s{}", card.number);
        xml.open(
            "g",
            &[
                ("id", &id),
                ("class", &format!("step {}", card.kind)),
                ("data-step", card.name.as_str()),
                ("role", "group"),
            ],
        );
        xml.element(
            "title",
            &[],
            &safe(&format!("Step {}: {}", card.number, card.kind)),
        );
        let rect = Rect {
            x,
            y,
            width: BOX,
            height: self.tiles[at].height,
        };
        outline(xml, card.kind, rect);
        xml.block(&self.tiles[at].block.0, x + PAD, y + INSET);
        xml.close("g");
    }

    fn ways(&self, at: usize, xml: &mut Xml) {
        let Spot { x, y } = self.sheet.spots[at];
        let ladder = &self.sheet.ladder;
        let ends: Vec<(&Branch, f64, bool)> = (self.tiles[at].branches.iter().zip(&ladder.offsets[at]))
            .map(|(branch, offset)| {
                let below =
                    matches!(branch.target, Target::Card(card) if branch.holds && ladder.is_below(at, card));
                (branch, y + offset, below)
            })
            .collect();
        let taps = ends.iter().filter(|(.., below)| !below);
        let last = taps
            .map(|(branch, top, _)| top + tap(branch, &ladder.heads))
            .reduce(f64::max);
        if let Some(last) = last {
            let (side, bus, out) = (x + BOX, x + BOX + BUS, y + TAP);
            xml.shape(
                "arm",
                &format!("M{side:.1},{out:.1} L{bus:.1},{out:.1} L{bus:.1},{last:.1}"),
            );
        }
        for (branch, top, below) in ends {
            if below {
                self.below(at, branch, top, xml);
            } else {
                self.beside(at, branch, top, xml);
            }
        }
    }

    fn beside(&self, at: usize, branch: &Branch, top: f64, xml: &mut Xml) {
        let heads = &self.sheet.ladder.heads;
        let bus = self.sheet.spots[at].x + BOX + BUS;
        let (end, line) = (bus - BUS + CHANNEL, top + tap(branch, heads));
        let mut over = line - branch.above() - 3.0;
        let mut under = line + 2.0;
        let drawn = self.drawn_with(at, branch);
        for (number, set) in branch.ways.iter().enumerate() {
            let way = self.open_way(at, set.way, xml);
            if number == drawn {
                xml.shape("wire", &format!("M{bus:.1},{line:.1} L{end:.1},{line:.1}"));
                xml.shape("head-of", &arrow_right(end, line));
            }
            if way.limit.is_some() {
                let bar = bus + 4.0 + 8.0 * number as f64;
                for x in [bar, bar + 3.0] {
                    xml.shape(
                        "bound",
                        &format!("M{x:.1},{:.1} L{x:.1},{:.1}", line - 4.0, line + 4.0),
                    );
                }
            }
            xml.block(&set.above.0, bus + BUS_WORDS, over);
            xml.block(&set.under.0, bus + BUS_WORDS, under);
            over += set.above.height();
            under += set.under.height();
            if number == drawn {
                self.tag(branch, end, top, xml);
            }
            xml.close("g");
        }
    }

    fn below(&self, at: usize, branch: &Branch, top: f64, xml: &mut Xml) {
        let Spot { x, y } = self.sheet.spots[at];
        let (stem, bottom) = (x + STEM, y + self.tiles[at].height);
        let mut words = bottom + STEM_GAP;
        let drawn = self.drawn_with(at, branch);
        for (number, set) in branch.ways.iter().enumerate() {
            let way = self.open_way(at, set.way, xml);
            if number == drawn {
                xml.shape("wire", &format!("M{stem:.1},{bottom:.1} L{stem:.1},{top:.1}"));
                xml.shape("head-of", &arrow_down(stem, top));
            }
            if way.limit.is_some() {
                let bar = bottom + 4.0 + 8.0 * number as f64;
                for y in [bar, bar + 3.0] {
                    xml.shape(
                        "bound",
                        &format!("M{:.1},{y:.1} L{:.1},{y:.1}", stem - 4.0, stem + 4.0),
                    );
                }
            }
            for block in [&set.above, &set.under] {
                xml.block(&block.0, stem + STEM_WORDS, words);
                words += block.height();
            }
            if number == drawn {
                self.tag(branch, x, top, xml);
            }
            xml.close("g");
        }
    }

    /// With which of its ways a line is drawn: where one is an answer, the line is that of an answer.
    fn drawn_with(&self, at: usize, branch: &Branch) -> usize {
        let mut ways = branch.ways.iter().map(|set| &self.picture.ways[at][set.way]);
        ways.position(|way| way.manner == Manner::Answer).unwrap_or(0)
    }

    /// The number at which a way goes on, where its step stands elsewhere.
    fn tag(&self, branch: &Branch, x: f64, top: f64, xml: &mut Xml) {
        if held(branch, &self.sheet.ladder.heads).is_some() {
            return;
        }
        let bottom = top + branch.tag.height() + 4.0;
        xml.shape(
            "bar",
            &format!("M{:.1},{top:.1} L{:.1},{bottom:.1}", x + 2.0, x + 2.0),
        );
        xml.block(&branch.tag.0, x + 9.0, top + 1.0);
    }

    fn open_way(&self, at: usize, number: usize, xml: &mut Xml) -> &Way {
        let way = &self.picture.ways[at][number];
        let (library, plan) = (self.picture.library, &self.picture.plan);
        let to = plan.number(way.go);
        let title = match to {
            Some(to) => format!("From step {} to step {}", at + 1, to + 1),
            None => format!("From step {} to what is not on this sheet", at + 1),
        };
        xml.open(
            "g",
            &[
                ("id", &format!("s{}-w{}", at + 1, number + 1)),
                ("class", &format!("way {}", way.manner.name())),
                ("data-from", self.picture.cards[at].name.as_str()),
                ("data-to", safe(&library[way.go].name).as_str()),
                ("role", "group"),
            ],
        );
        xml.element("title", &[], &safe(&title));
        way
    }
}

fn arrow_right(x: f64, y: f64) -> String {
    format!(
        "M{:.1},{:.1} L{x:.1},{y:.1} L{:.1},{:.1} Z",
        x - 7.0,
        y - 3.5,
        x - 7.0,
        y + 3.5
    )
}

fn arrow_down(x: f64, y: f64) -> String {
    format!(
        "M{:.1},{:.1} L{x:.1},{y:.1} L{:.1},{:.1} Z",
        x - 3.5,
        y - 7.0,
        x + 3.5,
        y - 7.0
    )
}
