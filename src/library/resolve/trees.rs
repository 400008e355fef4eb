//! Trees.

use super::super::problem::What;
use super::super::raw;
use super::super::table::Id;
use super::super::tree::{Outcome, Status, Step, Tree};
use super::super::yaml::Keyed;
use super::Resolver;
use super::edges::Within;
use super::lookup::{Owner, Whose};
use super::scope::{Names, Registered, Taken};
use crate::source::{FileId, Span};

type RawTree = Registered<(FileId, Keyed<raw::TreeFile>)>;

/// A tree whose outcomes and steps have their names, and whose steps are still to be resolved.
struct Opened {
    name: String,
    at: Span,
    file: FileId,
    raw: raw::TreeFile,
    steps: Vec<Registered<Box<Keyed<raw::Step>>>>,
    names: Names<Step>,
    outcomes: Vec<Outcome>,
    status_at: Span,
    first: usize,
}

impl Resolver<'_> {
    /// Names first: a visit must know the outcomes of a tree that comes later.
    pub(super) fn trees(&mut self, trees: Vec<RawTree>) {
        let mut first = 0;
        let mut opened = Vec::with_capacity(trees.len());
        for tree in trees {
            let tree = self.open_tree(tree, first);
            first += tree.steps.len();
            let outcomes = tree.outcomes.iter().map(|outcome| outcome.name.clone());
            self.scope.outcomes.push(outcomes.collect());
            opened.push(tree);
        }
        self.library.steps.reserve_exact(first);
        for (index, tree) in opened.into_iter().enumerate() {
            self.tree(Id::new(index), tree);
        }
    }

    fn open_tree(&mut self, tree: RawTree, first: usize) -> Opened {
        let Registered {
            name,
            at,
            raw: (file, keyed),
        } = tree;
        self.stray(&keyed, file);
        let key = |name| keyed.key(name, file);
        let status_at = key("status").or_else(|| key("tree")).unwrap_or(at);
        let mut raw = keyed.value;
        let outcomes = self.tree_outcomes(raw.outcomes.take(), file);
        let (names, steps) = self.register(What::Step, vec![(file, raw.steps.take())]);
        if steps.is_empty() {
            self.missing(at, Whose::Named(What::Tree, &name), "steps");
        }
        Opened {
            name,
            at,
            file,
            raw,
            steps,
            names,
            outcomes,
            status_at,
            first,
        }
    }

    fn tree_outcomes(&mut self, names: Option<raw::Texts>, file: FileId) -> Vec<Outcome> {
        let names = names.unwrap_or_default();
        let mut taken = Taken::default();
        let mut outcomes = Vec::new();
        for name in &names {
            let at = name.span(file);
            if self.claim(What::Outcome, &mut taken, &name.value, at) {
                let name = name.value.clone();
                outcomes.push(Outcome { name, at });
            }
        }
        outcomes
    }

    fn tree(&mut self, id: Id<Tree>, opened: Opened) {
        let Opened {
            name,
            at,
            file,
            raw,
            steps,
            names,
            outcomes,
            status_at,
            first,
        } = opened;
        let owner = Owner {
            file,
            at,
            name: Whose::Named(What::Tree, &name),
        };
        let within = Within {
            file,
            steps: &names,
            first,
        };
        let start = match &raw.start {
            Some(start) => self.step(&start.value, start.span(file), &within),
            None => {
                self.missing(at, owner.name, "start");
                None
            }
        };
        let tree = Tree {
            title: self.text(raw.title, &owner, "title"),
            status: self.status(raw.status.as_ref(), file),
            status_at,
            complaint: raw.complaint.map(|text| text.value),
            outcomes,
            start,
            steps: first..first + steps.len(),
            edition: raw.edition.map(|text| text.value),
            changed: raw.changed.map(|text| text.value),
        };
        for step in steps {
            let step = self.resolve_step(id, step, &within);
            self.library.steps.push(step);
        }
        self.library.trees.push(name, at, tree);
    }

    fn status(&mut self, name: Option<&raw::Text>, file: FileId) -> Status {
        let Some(name) = name else {
            return Status::default();
        };
        let found = Status::ALL.into_iter().find(|status| status.name() == name.value);
        found.unwrap_or_else(|| {
            self.malformed(
                name.span(file),
                format!("`{}` is no status", name.value),
                "write draft, field-trial or approved",
            );
            Status::default()
        })
    }
}
