//! The longest way that a walk may go, by what its steps weigh.

use std::collections::hash_map::Entry;
use std::collections::{BTreeMap, HashMap};

use super::event::Role;
use super::possible::Search;
use super::state::{Frame, Moment};
use crate::library::{Edge, EdgeId, Id, Kind, Library, Step, Tree};

/// What has a length: from a step to the end of its tree, and through a whole tree.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
enum Node {
    Step(Id<Step>),
    Tree(Id<Tree>),
}

/// A bounded edge: which, how often it may be taken, and where it leads.
#[derive(Clone, Copy)]
struct Bounded {
    id: EdgeId,
    at_most: u32,
    go: Id<Step>,
}

/// Lengths of the longest ways, each worked out once, and without recursion: a tree may be 100,000 steps deep.
pub(super) struct Longest<'a> {
    library: &'a Library,
    search: &'a Search<'a>,
    weight: &'a dyn Fn(Id<Step>) -> usize,
    /// The bounded edges of each tree.
    bounded: BTreeMap<Id<Tree>, Vec<Bounded>>,
    lengths: HashMap<Node, usize>,
}

impl<'a> Longest<'a> {
    pub fn new(library: &'a Library, search: &'a Search<'a>, weight: &'a dyn Fn(Id<Step>) -> usize) -> Self {
        let mut bounded: BTreeMap<Id<Tree>, Vec<_>> = BTreeMap::new();
        for step in &search.reached {
            for edge in search.open_edges(&library[*step]) {
                if let Some(limit) = &edge.limit {
                    bounded.entry(library[*step].tree).or_default().push(Bounded {
                        id: edge.id,
                        at_most: limit.at_most,
                        go: edge.go,
                    });
                }
            }
        }
        Self {
            library,
            search,
            weight,
            bounded,
            lengths: HashMap::new(),
        }
    }

    /// From where a walk stands to its end.
    pub fn from(mut self, moment: &Moment) -> usize {
        let mut total: usize = 0;
        let mut above: Option<&Frame> = None;
        for frame in moment.frames.iter().rev() {
            let here = match above.map(|above| above.role) {
                Some(Role::Visit) => self.after(frame.step),
                _ => self.length(Node::Step(frame.step)),
            };
            total = total
                .saturating_add(here)
                .saturating_add(self.bounded(frame.tree, Some(frame)));
            above = Some(frame);
        }
        if let (Some(Role::Gate), Some(tree)) = (above.map(|frame| frame.role), moment.complaint) {
            total = total.saturating_add(self.length(Node::Tree(tree)));
        }
        total
    }

    /// The longest way on from a visit that is being made.
    fn after(&mut self, visit: Id<Step>) -> usize {
        let ways: Vec<Id<Step>> = self.unlimited(visit).map(|edge| edge.go).collect();
        ways.into_iter()
            .map(|step| self.length(Node::Step(step)))
            .max()
            .unwrap_or_default()
    }

    fn unlimited(&self, step: Id<Step>) -> impl Iterator<Item = &'a Edge> + use<'a> {
        let search = self.search;
        let edges = search.open_edges(&self.library[step]).into_iter();
        edges.filter(|edge| edge.limit.is_none() && search.has_reached(edge.go))
    }

    /// What the bounded edges of a tree may add, less what a walk in it has taken already.
    fn bounded(&mut self, tree: Id<Tree>, frame: Option<&Frame>) -> usize {
        let edges = self.bounded.get(&tree).cloned().unwrap_or_default();
        let lengths = edges.into_iter().map(|Bounded { id, at_most, go }| {
            let taken = frame
                .and_then(|frame| frame.counts.get(&id))
                .copied()
                .unwrap_or_default();
            let left = at_most.saturating_sub(taken) as usize;
            left.saturating_mul(self.length(Node::Step(go)))
        });
        lengths.fold(0, usize::saturating_add)
    }

    fn length(&mut self, node: Node) -> usize {
        let mut waiting = vec![(node, false)];
        while let Some((node, entered)) = waiting.pop() {
            if entered {
                let length = self.add_up(node);
                self.lengths.insert(node, length);
            } else if let Entry::Vacant(length) = self.lengths.entry(node) {
                // A circle has no length; the checker refuses a library with one.
                length.insert(0);
                waiting.push((node, true));
                waiting.extend(self.below(node).into_iter().map(|node| (node, false)));
            }
        }
        self.known(node)
    }

    fn known(&self, node: Node) -> usize {
        self.lengths.get(&node).copied().unwrap_or_default()
    }

    fn below(&self, node: Node) -> Vec<Node> {
        match node {
            Node::Step(step) => {
                let inside = match &self.library[step].kind {
                    Kind::Visit { tree, .. } => Some(Node::Tree(*tree)),
                    _ => None,
                };
                self.unlimited(step)
                    .map(|edge| Node::Step(edge.go))
                    .chain(inside)
                    .collect()
            }
            Node::Tree(tree) => {
                let bounded = self.bounded.get(&tree).into_iter().flatten().map(|edge| edge.go);
                self.library.trees[tree]
                    .start
                    .into_iter()
                    .chain(bounded)
                    .map(Node::Step)
                    .collect()
            }
        }
    }

    fn add_up(&self, node: Node) -> usize {
        match node {
            Node::Step(step) => {
                let on = self
                    .unlimited(step)
                    .map(|edge| self.known(Node::Step(edge.go)))
                    .max();
                let inside = match &self.library[step].kind {
                    Kind::Visit { tree, .. } => self.known(Node::Tree(*tree)),
                    _ => 0,
                };
                (self.weight)(step)
                    .saturating_add(inside)
                    .saturating_add(on.unwrap_or_default())
            }
            Node::Tree(tree) => {
                let first = self.library.trees[tree]
                    .start
                    .map_or(0, |step| self.known(Node::Step(step)));
                let bounded = self.bounded.get(&tree).into_iter().flatten();
                let again = bounded
                    .map(|edge| (edge.at_most as usize).saturating_mul(self.known(Node::Step(edge.go))));
                again.fold(first, usize::saturating_add)
            }
        }
    }
}
