//! What the rules look at.

use std::cell::OnceCell;

use crate::check::known::Dependence;
use crate::library::graph::Graph;
use crate::library::{Library, Problem, ProblemKind, Step, What};

/// A library, what was wrong with it when it was read, and its graph once a rule asks for it.
#[derive(Debug)]
pub(super) struct Subject<'a> {
    pub library: &'a Library,
    pub problems: &'a [Problem],
    graph: OnceCell<Graph>,
    dependence: OnceCell<Dependence>,
}

impl<'a> Subject<'a> {
    pub fn new(library: &'a Library, problems: &'a [Problem]) -> Self {
        Self {
            library,
            problems,
            graph: OnceCell::new(),
            dependence: OnceCell::new(),
        }
    }

    /// The library's graph.
    pub fn graph(&self) -> &Graph {
        self.graph.get_or_init(|| Graph::new(self.library))
    }

    /// Which values go when one is taken anew.
    pub fn dependence(&self) -> &Dependence {
        self.dependence.get_or_init(|| Dependence::of(self.library))
    }

    /// Whether every file has the format's shape.
    pub fn is_well_formed(&self) -> bool {
        !self
            .problems
            .iter()
            .any(|problem| matches!(problem.kind, ProblemKind::Malformed { .. }))
    }

    /// The names of steps, quoted.
    pub fn step_names(&self, steps: &[crate::library::Id<Step>]) -> Vec<String> {
        steps
            .iter()
            .map(|&step| self.library[step].name.clone())
            .collect()
    }

    /// Whether the library's own files name a thing of this kind that is not there; scenarios lead nowhere.
    pub fn misses(&self, kind: What) -> bool {
        self.problems.iter().any(|problem| {
            let missing = matches!(problem.kind, ProblemKind::UnknownName { what, .. } if what == kind);
            missing
                && !self
                    .library
                    .files
                    .get(problem.span.file)
                    .name()
                    .starts_with("scenarios/")
        })
    }
}
