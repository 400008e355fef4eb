//! What the rules look at.

use std::cell::OnceCell;

use crate::library::graph::Graph;
use crate::library::{Library, Problem, ProblemKind, Step, What};
use crate::source::{FileId, Span};

/// A library, what was wrong with it when it was read, and its graph once a rule asks for it.
#[derive(Debug)]
pub(super) struct Subject<'a> {
    pub library: &'a Library,
    pub problems: &'a [Problem],
    graph: OnceCell<Graph>,
}

impl<'a> Subject<'a> {
    pub fn new(library: &'a Library, problems: &'a [Problem]) -> Self {
        Self {
            library,
            problems,
            graph: OnceCell::new(),
        }
    }

    /// The library's graph.
    pub fn graph(&self) -> &Graph {
        self.graph.get_or_init(|| Graph::new(self.library))
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

    /// What is wrong in the library's own files; scenarios lead nowhere.
    pub fn own_problems(&self) -> impl Iterator<Item = &'a Problem> + use<'a> {
        let files = &self.library.files;
        self.problems
            .iter()
            .filter(|problem| !files.get(problem.span.file).name().starts_with("scenarios/"))
    }

    /// Whether the library's own files name a thing of this kind that is not there.
    pub fn misses(&self, kind: What) -> bool {
        self.own_problems()
            .any(|problem| matches!(problem.kind, ProblemKind::UnknownName { what, .. } if what == kind))
    }

    /// Whether what is registered at `at`, up to the next of its kind, names a thing of this kind that is not there.
    pub fn misses_within(&self, kind: What, at: Span, next: Option<Span>) -> bool {
        let end = next
            .filter(|next| next.file == at.file)
            .map_or(u32::MAX, |next| next.start);
        self.own_problems().any(|problem| {
            matches!(problem.kind, ProblemKind::UnknownName { what, .. } if what == kind)
                && problem.span.file == at.file
                && (at.start..end).contains(&problem.span.start)
        })
    }

    /// Whether a second thing of this kind and name was left out of a file, with all that it says.
    pub fn is_doubled(&self, kind: What, name: &str, file: FileId) -> bool {
        self.own_problems().any(|problem| {
            matches!(&problem.kind, ProblemKind::DuplicateName { what, name: second, look_alike: None, .. }
                if *what == kind && second == name && problem.span.file == file)
        })
    }
}
