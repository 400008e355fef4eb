//! What stands in the box of a step.

use super::lettering::short;
use super::proofs::{self, Proofs};
use crate::library::{Caution, Datum, Fault, Id, Kind, Library, Named, Remedy, Restore, Step, Table};
use crate::source::{Safe, safe};

/// Names in a list before the rest is counted.
const NAMES: usize = 4;

/// Columns of a title that is named in a list.
const TITLE: usize = 44;

/// A step as it is drawn.
pub(super) struct Card {
    /// Counted from 1.
    pub number: usize,
    /// The word for what it does, which is also its shape.
    pub kind: &'static str,
    /// Its author's name for it.
    pub name: Safe,
    /// What it says, a paragraph each.
    pub paragraphs: Vec<(Tone, Safe)>,
}

/// How a paragraph of a card is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Tone {
    /// The heading its author gave it.
    Heading,
    /// What it asks, or has done, or ends in.
    Text,
    /// What is done about a fault.
    Remedy,
    /// The same, where the machine must not run.
    Danger,
    /// A mark beside it: a word, and what it is about.
    Mark,
}

impl Card {
    /// The card of a step; `from` are the numbers of the steps that lead to it, where that has to be said.
    pub fn new(library: &Library, proofs: &Proofs<'_>, id: Id<Step>, number: usize, from: &[usize]) -> Self {
        let step = &library[id];
        let mut card = Self {
            number,
            kind: kind(&step.kind),
            name: safe(&step.name),
            paragraphs: Vec::new(),
        };
        if let Some(title) = &step.title {
            card.say(Tone::Heading, title);
        }
        card.content(library, step);
        card.marks(library, proofs, step);
        if !from.is_empty() {
            let from: Vec<String> = from.iter().map(usize::to_string).collect();
            card.mark("from", &from, usize::MAX);
        }
        card
    }

    /// What it asks, has done or ends in, in the fewest words.
    pub fn title(&self) -> &Safe {
        let first = self.paragraphs.iter().find(|(tone, _)| *tone != Tone::Mark);
        first.map_or(&self.name, |(_, text)| text)
    }

    fn say(&mut self, tone: Tone, text: &str) {
        let lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
        let text = lines.collect::<Vec<_>>().join(" ");
        self.paragraphs.push((tone, short(&text)));
    }

    fn mark(&mut self, word: &str, names: &[String], most: usize) {
        if names.is_empty() {
            return;
        }
        let more = match names.len().checked_sub(most) {
            Some(more @ 1..) => format!(" and {more} more"),
            _ => String::new(),
        };
        let names = names[..names.len().min(most)].join(", ");
        self.say(Tone::Mark, &format!("{word}: {names}{more}"));
    }

    fn content(&mut self, library: &Library, step: &Step) {
        match &step.kind {
            Kind::Measure { reading, .. } => self.say(Tone::Text, &library.readings[*reading].title),
            Kind::Observe { sign, .. } => self.say(Tone::Text, &library.signs[*sign].ask),
            Kind::Plate { field, .. } => self.say(Tone::Text, &library.plate[*field].title),
            Kind::Do { text, .. } => self.say(Tone::Text, text),
            Kind::Visit { tree, .. } => {
                let tree = &library.trees[*tree];
                self.say(Tone::Text, &format!("walk “{}” ({})", tree.title, tree.name));
            }
            Kind::Verdict { fault, .. } => self.verdict(library, *fault),
            Kind::Return { outcome } => {
                let outcome = library.trees[step.tree].outcomes.get(*outcome);
                let name = outcome.map_or("", |outcome| &outcome.name);
                self.say(Tone::Text, &name.replace('_', " "));
            }
            Kind::Unresolved { .. } => self.say(Tone::Text, "names something that is not there"),
        }
    }

    fn verdict(&mut self, library: &Library, fault: Id<Fault>) {
        let title = |part: &Id<crate::library::Part>| library.parts[*part].title.as_str();
        let fault = &library.faults[fault];
        self.say(Tone::Text, &fault.title);
        let (tone, remedy) = match fault.remedy {
            Remedy::Replace(_) if !fault.group.is_empty() => {
                let parts: Vec<&str> = fault.group.iter().map(title).collect();
                (
                    Tone::Remedy,
                    format!("replace one of these: {}", parts.join(", ")),
                )
            }
            Remedy::Replace(part) => (Tone::Remedy, format!("replace {}", title(&part))),
            Remedy::Correct => (Tone::Remedy, "set right".to_owned()),
            Remedy::ShutDown => (Tone::Danger, "SHUT DOWN".to_owned()),
            Remedy::Refer => (Tone::Remedy, "refer to others".to_owned()),
            Remedy::None => (Tone::Remedy, "nothing to do".to_owned()),
            Remedy::Unresolved => (Tone::Remedy, "remedy not known".to_owned()),
        };
        match &fault.text {
            Some(text) => self.say(tone, &format!("{remedy}: {text}")),
            None => self.say(tone, &remedy),
        }
    }

    fn marks(&mut self, library: &Library, proofs: &Proofs<'_>, step: &Step) {
        if let Kind::Verdict { fault, .. } = step.kind {
            let needed: Vec<String> = proofs.of(fault).into_iter().map(proofs::label).collect();
            self.mark("must hold", &needed, usize::MAX);
        }
        if let Some(datum) = datum(step) {
            let helped = proofs.helped_by(datum).iter();
            let helped: Vec<String> = helped
                .map(|at| format!("{} {}", proofs::label(*at), proofs.needed[*at].title.cut(TITLE)))
                .collect();
            self.mark("proves", &helped, NAMES);
        }
        self.mark(
            "caution",
            &names(&library.cautions, &cautions(library, step)),
            usize::MAX,
        );
        self.mark(
            "opens",
            &names(&library.restores, &leaves(library, step)),
            usize::MAX,
        );
        if let Kind::Do { voids, restores, .. } = &step.kind {
            self.mark("puts back", &names(&library.restores, restores), usize::MAX);
            let voided = voids.iter().map(|datum| spoken(library.name_of(*datum)));
            self.mark("voids", &voided.collect::<Vec<_>>(), usize::MAX);
        }
    }
}

fn kind(kind: &Kind) -> &'static str {
    match kind {
        Kind::Measure { .. } => "measure",
        Kind::Observe { .. } => "observe",
        Kind::Do { .. } => "do",
        Kind::Plate { .. } => "plate",
        Kind::Visit { .. } => "visit",
        Kind::Verdict { .. } => "verdict",
        Kind::Return { .. } => "return",
        Kind::Unresolved { .. } => "unresolved",
    }
}

fn datum(step: &Step) -> Option<Datum> {
    match step.kind {
        Kind::Measure { reading, .. } => Some(Datum::Reading(reading)),
        Kind::Observe { sign, .. } => Some(Datum::Sign(sign)),
        Kind::Plate { field, .. } => Some(Datum::Field(field)),
        _ => None,
    }
}

/// What answering a step opens.
pub(super) fn leaves(library: &Library, step: &Step) -> Vec<Id<Restore>> {
    let mut leaves = match &step.kind {
        Kind::Do { leaves, .. } => leaves.clone(),
        _ => Vec::new(),
    };
    for taking in takings(library, step) {
        leaves.extend(&taking.leaves);
    }
    once(leaves)
}

/// What can hurt at a step.
pub(super) fn cautions(library: &Library, step: &Step) -> Vec<Id<Caution>> {
    let mut cautions = step.cautions.clone();
    for taking in takings(library, step) {
        cautions.extend(&taking.cautions);
    }
    once(cautions)
}

fn takings<'l>(library: &'l Library, step: &Step) -> Vec<&'l crate::library::Taking> {
    let data = datum(step).map_or_else(Vec::new, |datum| proofs::with_inputs(library, datum));
    let takings = data.into_iter().filter_map(|datum| match datum {
        Datum::Reading(reading) => Some(&library.readings[reading].taking),
        Datum::Sign(sign) => Some(&library.signs[sign].taking),
        Datum::Field(_) => None,
    });
    takings.collect()
}

fn once<T: PartialEq>(mut list: Vec<T>) -> Vec<T> {
    let mut kept = Vec::with_capacity(list.len());
    for item in list.drain(..) {
        if !kept.contains(&item) {
            kept.push(item);
        }
    }
    kept
}

fn names<T>(table: &Table<T>, ids: &[Id<T>]) -> Vec<String> {
    let name = |named: &Named<T>| spoken(&named.name);
    ids.iter().map(|id| name(&table[*id])).collect()
}

/// A registered name as it is spoken.
pub(super) fn spoken(name: &str) -> String {
    name.replace('_', " ")
}
