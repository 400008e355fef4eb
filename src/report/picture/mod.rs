//! A tree as a picture: to look at, to print, and to hang in the shop.
//!
//! [`Picture::new`] chooses the steps and puts everything in words. [`Picture::svg`] sets them out on a sheet of paper by
//! itself: steps stand below and beside one another and no line crosses another; where a line would, or would be long, it
//! ends in the number of the step at which it goes on. [`Picture::dot`] leaves the setting out to Graphviz.

mod cards;
mod dot;
mod layout;
mod lettering;
mod plan;
mod proofs;
mod svg;
mod ways;

use crate::library::{Id, Library, Severity, Step, Tree};
use crate::source::{Safe, safe};
use cards::Card;
use plan::Plan;
use proofs::Proofs;
use ways::{Way, times};

/// Which part of a tree is drawn: all of it, unless something is said here.
#[derive(Clone, Debug, Default)]
pub struct Part {
    /// The step with which the picture begins; otherwise the tree's start.
    pub from: Option<String>,
    /// How many steps it goes on from there; otherwise to every end.
    pub depth: Option<usize>,
}

/// Why a picture cannot be drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// The tree has no such step.
    NoSuchStep {
        /// What was asked for.
        name: String,
        /// What the tree's steps are called.
        steps: Vec<String>,
    },
    /// There are more steps than a sheet can hold and a person can read.
    TooLarge(TooLarge),
}

/// There are more steps than a sheet can hold and a person can read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TooLarge {
    /// Most steps that are drawn.
    pub most: usize,
}

impl From<TooLarge> for Refusal {
    fn from(too_large: TooLarge) -> Self {
        Self::TooLarge(too_large)
    }
}

/// A tree, or a part of one, in the words in which it is drawn.
pub struct Picture<'l> {
    library: &'l Library,
    tree: Id<Tree>,
    part: Part,
    /// How many errors its library has.
    errors: usize,
    plan: Plan,
    proofs: Proofs<'l>,
    /// By the numbers of the plan.
    cards: Vec<Card>,
    /// The ways that leave each of them.
    ways: Vec<Vec<Way>>,
}

impl<'l> Picture<'l> {
    /// The picture of a tree.
    ///
    /// # Errors
    ///
    /// Where no step is called as `part.from` says, or there are more steps than a sheet can hold.
    pub fn new(library: &'l Library, tree: Id<Tree>, part: Part) -> Result<Self, Refusal> {
        let plan = Plan::new(library, tree, &part)?;
        let proofs = Proofs::new(library, &plan.steps);
        let steps = plan.steps.iter();
        let ways: Vec<Vec<Way>> = steps.map(|step| ways::ways(library, &library[*step])).collect();
        let from = sources(&plan, &ways);
        let cards = (plan.steps.iter().zip(&from).enumerate())
            .map(|(number, (step, from))| Card::new(library, &proofs, *step, number + 1, from))
            .collect();
        Ok(Self {
            library,
            tree,
            part,
            errors: 0,
            plan,
            proofs,
            cards,
            ways,
        })
    }

    /// The same of a library that has errors: the picture says so, for it is not to be hung.
    pub fn with_errors(self, errors: usize) -> Self {
        Self { errors, ..self }
    }

    /// As an SVG document that needs nothing but itself, sized in millimetres for a sheet of paper.
    pub fn svg(&self) -> String {
        svg::draw(self)
    }

    /// As a graph in the DOT language, for Graphviz.
    pub fn dot(&self) -> String {
        dot::write(self)
    }

    /// The card of a step that is not on the sheet.
    fn outside(&self, step: Id<Step>) -> Card {
        Card::new(self.library, &self.proofs, step, 0, &[])
    }

    /// What stands with the answer on a way: what it means, how often it may be taken, what it puts on the job report.
    fn notes(&self, way: &Way) -> Vec<(Note, Safe)> {
        let mut notes: Vec<(Note, Safe)> = Vec::new();
        notes.extend(way.means.clone().map(|means| (Note::Means, means)));
        if let Some((at_most, then)) = way.limit {
            let then = match self.plan.number(then) {
                Some(number) => (number + 1).to_string(),
                None => self.library[then].name.clone(),
            };
            let often = format!("at most {}, then {then}", times(at_most));
            notes.push((Note::Limit, safe(&often)));
        }
        if let Some((severity, text)) = &way.finding {
            let word = severity.name().to_uppercase();
            notes.push((Note::Finding(*severity), safe(&format!("{word}: {text}"))));
        }
        notes
    }
}

/// What a line beside an answer says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Note {
    /// What the answer means.
    Means,
    /// How often its way may be taken, and what comes then.
    Limit,
    /// What it puts on the job report.
    Finding(Severity),
}

/// Which steps lead to each, counted from 1, where it is more than the one on which it hangs.
fn sources(plan: &Plan, ways: &[Vec<Way>]) -> Vec<Vec<usize>> {
    let mut sources: Vec<Vec<usize>> = vec![Vec::new(); ways.len()];
    for (number, ways) in ways.iter().enumerate() {
        for target in ways.iter().filter_map(|way| plan.number(way.go)) {
            if sources[target].last() != Some(&(number + 1)) {
                sources[target].push(number + 1);
            }
        }
    }
    for (target, sources) in sources.iter_mut().enumerate() {
        let parent = plan.parents[target].map(|parent| parent + 1);
        if sources.iter().all(|source| Some(*source) == parent) {
            sources.clear();
        }
    }
    sources
}
