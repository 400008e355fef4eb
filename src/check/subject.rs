//! What the rules look at.

use std::cell::OnceCell;
use std::collections::{BTreeSet, HashMap, HashSet};

use super::sorting;
use crate::check::known::Dependence;
use crate::library::graph::Graph;
use crate::library::{Id, Library, Problem, ProblemKind, Step, What};
use crate::source::{FileId, Span};

/// A library, what was wrong with it when it was read, and its graph once a rule asks for it.
#[derive(Debug)]
pub(super) struct Subject<'a> {
    pub library: &'a Library,
    pub problems: &'a [Problem],
    graph: OnceCell<Graph>,
    dependence: OnceCell<Dependence>,
    doubtful_bands: OnceCell<Vec<Id<Step>>>,
    unresolved: OnceCell<Unresolved<'a>>,
}

/// The names that do not resolve, to be asked for one by one.
#[derive(Debug, Default)]
struct Unresolved<'a> {
    /// Where a name of a kind is not there.
    missing: HashMap<(What, FileId), BTreeSet<u32>>,
    /// What is there a second time, and was left out.
    doubled: HashSet<(What, &'a str, FileId)>,
}

impl<'a> Subject<'a> {
    pub fn new(library: &'a Library, problems: &'a [Problem]) -> Self {
        Self {
            library,
            problems,
            graph: OnceCell::new(),
            dependence: OnceCell::new(),
            doubtful_bands: OnceCell::new(),
            unresolved: OnceCell::new(),
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

    /// The steps with bands that are not plainly in order, for the rules that look at bands.
    pub fn doubtful_bands(&self) -> &[Id<Step>] {
        self.doubtful_bands
            .get_or_init(|| sorting::doubtful(self.library))
    }

    /// Whether every file has the format's shape.
    pub fn is_well_formed(&self) -> bool {
        !self
            .problems
            .iter()
            .any(|problem| matches!(problem.kind, ProblemKind::Malformed { .. }))
    }

    /// The names of steps, quoted.
    pub fn step_names(&self, steps: &[Id<Step>]) -> Vec<String> {
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
        self.unresolved().missing.keys().any(|(what, _)| *what == kind)
    }

    /// Whether every name in the plate's `order:` is there: without one, bands that lean on several fields say less.
    pub fn knows_order(&self) -> bool {
        let missing = self.unresolved().missing.keys();
        let mut in_plate = missing.filter(|(what, _)| *what == What::PlateField);
        !in_plate.any(|(_, file)| self.library.files.get(*file).name() == "registry/plate.yaml")
    }

    /// Whether an overlay lies over the layer in which something stands: what it leaves without use can be taken out by
    /// nobody who writes the overlay.
    pub fn is_overlaid(&self, at: Span) -> bool {
        let layer = |file: &crate::source::SourceFile| file.layer().number();
        let own = layer(self.library.files.get(at.file));
        self.library.files.iter().any(|(_, file)| layer(file) > own)
    }

    /// Whether what is registered at `at`, up to the next of its kind, names a thing of this kind that is not there.
    pub fn misses_within(&self, kind: What, at: Span, next: Option<Span>) -> bool {
        let end = next.filter(|next| next.file == at.file);
        let end = end.map_or(u32::MAX, |next| next.start);
        let places = self.unresolved().missing.get(&(kind, at.file));
        places.is_some_and(|places| places.range(at.start..end.max(at.start)).next().is_some())
    }

    /// Whether a second thing of this kind and name was left out of a file, with all that it says.
    pub fn is_doubled(&self, kind: What, name: &str, file: FileId) -> bool {
        self.unresolved().doubled.contains(&(kind, name, file))
    }

    fn unresolved(&self) -> &Unresolved<'a> {
        self.unresolved.get_or_init(|| {
            let mut unresolved = Unresolved::default();
            for Problem { span, kind } in self.own_problems() {
                match kind {
                    ProblemKind::UnknownName { what, .. } => {
                        let places = unresolved.missing.entry((*what, span.file)).or_default();
                        places.insert(span.start);
                    }
                    ProblemKind::DuplicateName {
                        what,
                        name,
                        look_alike: None,
                        ..
                    } => _ = unresolved.doubled.insert((*what, name, span.file)),
                    _ => {}
                }
            }
            unresolved
        })
    }
}
