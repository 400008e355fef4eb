//! A look back from one step at whether something may be missing there.
//!
//! A tree that takes what it needs takes it shortly before it is needed. So most questions are settled a few steps back: on
//! every way it was shown, or on one it was not. Where a look back would come out of a tree that was visited, or go on for
//! long, it gives up, and whoever asked looks at the whole library.

use super::dependence::Dependence;
use super::question::Question;
use crate::library::graph::Graph;
use crate::library::{Answers, Datum, Edge, Id, Kind, Library, Step, Tree};

/// What a look back shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fate {
    /// It is there on every way.
    Never,
    /// On some way it may be missing.
    May,
    /// Not to be seen from here.
    Unclear,
}

/// How many edges are looked at for one question, and for each step of the library to all of them.
const EDGES: usize = 400;
const EDGES_A_STEP: usize = 16;

/// Everything that every look back needs.
pub(super) struct Hindsight<'s, 'l> {
    library: &'l Library,
    dependence: &'l Dependence,
    graph: &'s Graph,
    /// The trees that a call can begin with.
    begins: Vec<bool>,
    /// By step, the last question that came to it.
    seen: Vec<u32>,
    asked: u32,
    waiting: Vec<Id<Step>>,
    /// How many edges may still be looked at.
    left: usize,
}

/// What becomes of a question along the edges from one step to another.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Passes {
    /// It was shown there, on each of them.
    Shown,
    /// On one of them it is as it was before.
    Unchanged,
    /// On one of them it may be missing from there on.
    Missing,
    Unclear,
}

impl<'s, 'l> Hindsight<'s, 'l> {
    pub fn new(
        library: &'l Library,
        dependence: &'l Dependence,
        graph: &'s Graph,
        beginnings: &[Id<Tree>],
    ) -> Self {
        let mut begins = vec![false; library.trees.len()];
        for tree in beginnings {
            begins[tree.index()] = true;
        }
        Self {
            library,
            dependence,
            graph,
            begins,
            seen: vec![0; library.steps.len()],
            asked: 0,
            waiting: Vec::new(),
            left: EDGES + EDGES_A_STEP * library.steps.len(),
        }
    }

    /// Whether something may be missing as a step is come to.
    pub fn look(&mut self, question: Question<'l>, from: Id<Step>) -> Fate {
        self.asked += 1;
        self.waiting.clear();
        self.come_to(from);
        let enough = self.left.saturating_sub(EDGES);
        while let Some(step) = self.waiting.pop() {
            if self.left <= enough {
                return Fate::Unclear;
            }
            let tree = self.library[step].tree;
            if self.library.trees[tree].start == Some(step) {
                if self.begins[tree.index()] {
                    return Fate::May;
                }
                for visit in self.graph.visitors(tree) {
                    self.come_to(visit);
                }
            }
            for before in self.graph.before(step) {
                match self.passes(question, before, step) {
                    Passes::Shown => {}
                    Passes::Unchanged => self.come_to(before),
                    Passes::Missing if self.is_come_to(before) => return Fate::May,
                    Passes::Missing => {}
                    Passes::Unclear => return Fate::Unclear,
                }
            }
        }
        Fate::Never
    }

    fn come_to(&mut self, step: Id<Step>) {
        // The work that a step costs is counted, where it was come to before as well.
        self.left = self.left.saturating_sub(1);
        if std::mem::replace(&mut self.seen[step.index()], self.asked) != self.asked {
            self.waiting.push(step);
        }
    }

    fn is_come_to(&self, step: Id<Step>) -> bool {
        self.graph.is_reached_from_start(step) && self.graph.is_entered(self.library[step].tree)
    }

    fn passes(&mut self, question: Question<'l>, step: Id<Step>, to: Id<Step>) -> Passes {
        let library = self.library;
        let leads = |edge: Option<&Edge>| edge.is_some_and(|edge| edge.chain().any(|edge| edge.go == to));
        match &library[step].kind {
            Kind::Measure {
                reading,
                answers,
                unable,
                ..
            } => {
                let datum = Datum::Reading(*reading);
                match !leads(unable.as_ref()) && self.shows(question, datum, answers, to) {
                    true => Passes::Shown,
                    false => Passes::Unchanged,
                }
            }
            Kind::Observe {
                sign,
                answers,
                unsure,
                unable,
                ..
            } => {
                let passed_by = leads(unsure.as_ref()) || leads(unable.as_ref());
                match !passed_by && self.shows(question, Datum::Sign(*sign), answers, to) {
                    true => Passes::Shown,
                    false => Passes::Unchanged,
                }
            }
            Kind::Plate {
                field,
                answers,
                unable,
            } => match !leads(unable.as_ref()) && self.shows(question, Datum::Field(*field), answers, to) {
                true => Passes::Shown,
                false => Passes::Unchanged,
            },
            Kind::Do { voids, .. } => match question.is_voided(self.dependence, voids) {
                true => Passes::Missing,
                false => Passes::Unchanged,
            },
            Kind::Visit { .. } | Kind::Unresolved { .. } => Passes::Unclear,
            Kind::Verdict { .. } | Kind::Return { .. } => Passes::Shown,
        }
    }

    /// Whether every answer that leads to a step shows it.
    fn shows(&mut self, question: Question<'l>, taken: Datum, answers: &'l Answers, to: Id<Step>) -> bool {
        if question.is_standing(self.dependence, taken) {
            return true;
        }
        if question.datum() != taken {
            return false;
        }
        let leads = |edge: &Edge| edge.chain().any(|edge| edge.go == to);
        match answers {
            Answers::Go(_) => false,
            Answers::Bands(bands) => {
                self.left = self.left.saturating_sub(bands.len());
                let mut leading = bands.iter().filter(|answer| leads(&answer.edge));
                leading.all(|answer| question.is_shown_in(self.library, taken, &answer.band))
            }
            Answers::Choices(choices) => {
                self.left = self.left.saturating_sub(choices.len());
                let mut leading = choices.iter().filter(|answer| leads(&answer.edge));
                leading.all(|answer| question.is_shown_as(taken, answer.value))
            }
        }
    }
}
