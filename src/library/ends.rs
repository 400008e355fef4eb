//! How each tree can end, and which of its steps its start leads to: each asks for the other, so both are found together.

use super::Library;
use super::registry::Remedy;
use super::table::Id;
use super::tree::{Edge, Kind, Step, Tree, return_edge};

/// How a tree can end, as far as its start leads there.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Ends {
    /// Whether it can return each of its outcomes, by position.
    returns: Vec<bool>,
    /// Whether it can end in a verdict that a visit's `on_verdict` notes.
    pub verdict: bool,
    /// Whether it can end in a shut-down, which ends the walk whoever visits.
    pub shut_down: bool,
}

impl Ends {
    /// Whether it can return an outcome.
    pub fn can_return(&self, outcome: usize) -> bool {
        self.returns.get(outcome).copied().unwrap_or_default()
    }
}

/// One way in which a tree was found to end.
#[derive(Clone, Copy)]
enum End {
    Return(usize),
    Verdict,
    ShutDown,
}

/// A flood from every tree's start that takes a visit's edges as soon as its tree is known to end so.
pub(super) struct Flow<'a> {
    library: &'a Library,
    /// The steps that their tree's start leads to.
    pub reached: Vec<bool>,
    pub ends: Vec<Ends>,
    /// The visits of each tree that were reached.
    visitors: Vec<Vec<Id<Step>>>,
    /// The trees with a step that may end in anything, and those with one that may lead to any step.
    open_ended: Vec<bool>,
    flooded: Vec<bool>,
    steps: Vec<Id<Step>>,
    news: Vec<(Id<Tree>, End)>,
}

impl<'a> Flow<'a> {
    pub fn through(library: &'a Library) -> Self {
        let ends = library.trees.iter().map(|(_, tree)| Ends {
            returns: vec![false; tree.outcomes.len()],
            ..Ends::default()
        });
        let mut flow = Flow {
            library,
            reached: vec![false; library.steps.len()],
            ends: ends.collect(),
            visitors: vec![Vec::new(); library.trees.len()],
            open_ended: vec![false; library.trees.len()],
            flooded: vec![false; library.trees.len()],
            steps: Vec::new(),
            news: Vec::new(),
        };
        for (id, tree) in library.trees.iter() {
            match tree.start {
                Some(start) => flow.reach(start),
                None => flow.reach_all(id),
            }
        }
        flow.run();
        flow
    }

    fn run(&mut self) {
        loop {
            if let Some(step) = self.steps.pop() {
                self.follow(step);
            } else if let Some((tree, end)) = self.news.pop() {
                for visit in self.visitors[tree.index()].clone() {
                    self.end_of_visit(visit, end);
                }
            } else {
                return;
            }
        }
    }

    fn reach(&mut self, step: Id<Step>) {
        if !std::mem::replace(&mut self.reached[step.index()], true) {
            self.steps.push(step);
        }
    }

    fn reach_all(&mut self, tree: Id<Tree>) {
        if std::mem::replace(&mut self.flooded[tree.index()], true) {
            return;
        }
        for step in self.library.trees[tree].steps.clone() {
            self.reach(Id::new(step));
        }
    }

    fn follow(&mut self, id: Id<Step>) {
        let step = &self.library[id];
        match &step.kind {
            Kind::Return { outcome } => self.learn(step.tree, End::Return(*outcome)),
            Kind::Verdict { fault, .. } => match self.library.faults[*fault].remedy {
                Remedy::ShutDown => self.learn(step.tree, End::ShutDown),
                _ => self.learn(step.tree, End::Verdict),
            },
            Kind::Visit { tree, .. } => {
                self.visitors[tree.index()].push(id);
                for end in known(&self.ends[tree.index()]) {
                    self.end_of_visit(id, end);
                }
            }
            Kind::Unresolved { lost, .. } => {
                self.learn_all(step.tree);
                if *lost {
                    self.reach_all(step.tree);
                }
                self.reach_edges(step);
            }
            Kind::Measure { .. } | Kind::Observe { .. } | Kind::Do { .. } | Kind::Plate { .. } => {
                self.reach_edges(step);
            }
        }
    }

    fn reach_edges(&mut self, step: &Step) {
        step.edges().for_each(|edge| self.reach(edge.go));
    }

    fn end_of_visit(&mut self, visit: Id<Step>, end: End) {
        let step = &self.library[visit];
        let Kind::Visit {
            returns, on_verdict, ..
        } = &step.kind
        else {
            return;
        };
        match (end, on_verdict) {
            (End::Return(outcome), _) => {
                for edge in return_edge(returns, outcome).into_iter().flat_map(Edge::chain) {
                    self.reach(edge.go);
                }
            }
            (End::Verdict, Some(edge)) => {
                for edge in edge.chain() {
                    self.reach(edge.go);
                }
            }
            (End::Verdict | End::ShutDown, _) => self.learn(step.tree, end),
        }
    }

    fn learn_all(&mut self, tree: Id<Tree>) {
        if std::mem::replace(&mut self.open_ended[tree.index()], true) {
            return;
        }
        let returns = (0..self.library.trees[tree].outcomes.len()).map(End::Return);
        for end in returns.chain([End::Verdict, End::ShutDown]) {
            self.learn(tree, end);
        }
    }

    fn learn(&mut self, tree: Id<Tree>, end: End) {
        let ends = &mut self.ends[tree.index()];
        let known = match end {
            End::Return(outcome) => match ends.returns.get_mut(outcome) {
                Some(known) => known,
                None => return,
            },
            End::Verdict => &mut ends.verdict,
            End::ShutDown => &mut ends.shut_down,
        };
        if !std::mem::replace(known, true) {
            self.news.push((tree, end));
        }
    }
}

/// All that is known of how a tree can end.
fn known(ends: &Ends) -> Vec<End> {
    let returns = (0..ends.returns.len())
        .filter(|&outcome| ends.returns[outcome])
        .map(End::Return);
    let verdict = ends.verdict.then_some(End::Verdict);
    let shut_down = ends.shut_down.then_some(End::ShutDown);
    returns.chain(verdict).chain(shut_down).collect()
}
