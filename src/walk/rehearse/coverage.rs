//! Which steps and edges of a library its scenarios have walked.

use crate::library::graph::Graph;
use crate::library::{By, Exit, Id, Kind, Library, Step, Tree};
use crate::walk::event::Event;

/// What the scenarios have walked so far.
#[derive(Debug)]
pub struct Coverage<'l> {
    library: &'l Library,
    graph: Graph,
    steps: Vec<bool>,
    /// By the edge's number.
    edges: Vec<bool>,
}

/// How much of something was walked.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Walked at least once.
    pub covered: usize,
    /// That a walk can come to.
    pub total: usize,
}

/// How much of a tree was walked.
#[derive(Clone, Debug)]
pub struct TreeCoverage<'l> {
    /// Its steps.
    pub steps: Tally,
    /// Its edges.
    pub edges: Tally,
    /// The steps that were not.
    pub missed_steps: Vec<(Id<Step>, bool)>,
    /// The edges that were not, in the order of the file.
    pub missed_edges: Vec<Missed<'l>>,
}

/// An edge that was not walked.
#[derive(Clone, Copy, Debug)]
pub struct Missed<'l> {
    /// The step it leaves.
    pub step: Id<Step>,
    /// The edge, with the answer that takes it.
    pub exit: Exit<'l>,
    /// A walk can take it; where it cannot, no scenario ever will.
    pub reachable: bool,
}

impl Tally {
    fn count(&mut self, covered: bool, reachable: bool) {
        self.covered += usize::from(covered);
        // What was walked can be reached, whatever the graph says.
        self.total += usize::from(covered || reachable);
    }

    /// Whether nothing is left.
    pub fn is_whole(self) -> bool {
        self.covered == self.total
    }
}

impl std::ops::AddAssign for Tally {
    fn add_assign(&mut self, other: Self) {
        self.covered += other.covered;
        self.total += other.total;
    }
}

impl<'l> Coverage<'l> {
    /// Nothing walked yet.
    pub fn new(library: &'l Library) -> Self {
        Self {
            library,
            graph: Graph::new(library),
            steps: vec![false; library.steps.len()],
            edges: Vec::new(),
        }
    }

    /// Adds what a walk came to.
    pub fn add(&mut self, events: &[Event]) {
        for event in events {
            match event {
                Event::Entered { tree, .. } => {
                    let tree = self.library.trees.find(tree);
                    if let Some(start) = tree.and_then(|tree| self.library.trees[tree].start) {
                        self.steps[start.index()] = true;
                    }
                }
                Event::Took { edge, .. } => {
                    let edge = *edge as usize;
                    if self.edges.len() <= edge {
                        self.edges.resize(edge + 1, false);
                    }
                    self.edges[edge] = true;
                }
                _ => {}
            }
        }
    }

    /// What was walked of a tree.
    pub fn of(&self, tree: Id<Tree>) -> TreeCoverage<'l> {
        let mut found = TreeCoverage {
            steps: Tally::default(),
            edges: Tally::default(),
            missed_steps: Vec::new(),
            missed_edges: Vec::new(),
        };
        let steps = self.library.trees[tree].steps.clone();
        let mut reached = vec![false; steps.len()];
        for at in steps.clone() {
            let step = &self.library.steps[at];
            for exit in step.exits() {
                let covered = self.is_walked(&exit);
                let reachable = self.can_take(Id::new(at), step, &exit);
                found.edges.count(covered, reachable);
                match covered {
                    true => reached[exit.edge.go.index() - steps.start] = true,
                    false => found.missed_edges.push(Missed {
                        step: Id::new(at),
                        exit,
                        reachable,
                    }),
                }
            }
        }
        for at in steps.clone() {
            let covered = self.steps[at] || reached[at - steps.start];
            let reachable = self.graph.is_reached_from_start(Id::new(at));
            found.steps.count(covered, reachable);
            if !covered {
                found.missed_steps.push((Id::new(at), reachable));
            }
        }
        found.missed_edges.sort_by_key(|missed| missed.exit.at().start);
        found
    }

    fn is_walked(&self, exit: &Exit<'_>) -> bool {
        let edge = exit.edge.id.0 as usize;
        self.edges.get(edge).copied().unwrap_or_default()
    }

    /// Whether a walk can take an edge: its step is reached, and a visited tree can end so.
    fn can_take(&self, id: Id<Step>, step: &Step, exit: &Exit<'_>) -> bool {
        let visited = match step.kind {
            Kind::Visit { tree, .. } => Some(self.graph.ends(tree)),
            _ => None,
        };
        let ends = match (exit.by, visited) {
            (By::Outcome(outcome), Some(ends)) => ends.can_return(outcome),
            (By::Verdict, Some(ends)) => ends.verdict,
            _ => true,
        };
        ends && self.graph.is_reached_from_start(id)
    }
}
