//! The foot of a sheet: what the marks of its steps refer to.

use super::super::Picture;
use super::super::cards::{self, spoken};
use super::super::layout::{Block, Style};
use super::super::lettering::short;
use super::super::proofs;
use super::frame::COLUMN;
use crate::source::{Safe, safe};

/// Most lines of a paragraph: a proof is not cut off for its length.
const LINES: usize = 60;

/// What the marks of the steps refer to, as one long column.
pub(super) fn foot(picture: &Picture<'_>) -> Block {
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
