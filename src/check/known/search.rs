//! Everything that can be known at each step, along every way there.
//!
//! A tree that is visited is searched once for each thing that can be known when it is entered, and how it ends is then
//! handed to whoever visits it so: no visit returns to another's visitor, and nothing is searched twice. A bounded edge may
//! be taken or not, whatever came before. So what is found to be impossible is, and what is found possible may not be.

use std::collections::{HashMap, VecDeque};

use super::moves::{How, Move, moves, noted, push};
use super::script::{Act, Script};
use super::tracked::{StateId, Tracked};
use crate::library::graph::Graph;
use crate::library::{Edge, Id, Kind, Remedy, Step, Tree, return_edge};

/// What a search looks at.
pub(super) struct Bounds {
    /// Steps that lead where it matters, by position.
    pub steps: Vec<bool>,
    /// Trees in which something happens that matters; the others are passed by.
    pub trees: Vec<bool>,
}

/// The number of a fact.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) struct FactId(usize);

/// Something that can be known at a step, and how it is come to.
struct Fact<'l> {
    entry: usize,
    step: Id<Step>,
    state: StateId,
    from: From<'l>,
}

#[derive(Clone, Copy)]
enum From<'l> {
    /// Its tree was entered.
    Entry,
    /// By an edge of the step of another fact.
    Taken {
        at: FactId,
        how: How,
        first: &'l Edge,
        taken: &'l Edge,
        /// Where that step is a visit whose tree was searched: how that tree ended.
        through: Option<ExitId>,
    },
}

/// A tree, with what is known when it is entered.
struct Entry {
    /// The visit that entered it first; none where a call begins so.
    first: Option<FactId>,
    callers: Vec<FactId>,
    exits: Vec<ExitId>,
}

/// The number of a tree's end.
#[derive(Clone, Copy)]
struct ExitId(usize);

/// A way in which a tree can end, with what is known then.
#[derive(Clone, Copy)]
struct Exit {
    end: End,
    state: StateId,
    /// The step that ends it, or that visits the tree which does.
    at: FactId,
    /// How that tree ended.
    inside: Option<ExitId>,
}

#[derive(Clone, Copy, PartialEq, Eq, Hash)]
enum End {
    Returned(usize),
    Stated,
}

/// A search and what it has found.
pub(super) struct Search<'s, 'l> {
    pub tracked: &'s mut Tracked<'l>,
    graph: &'s Graph,
    bounds: Bounds,
    facts: Vec<Fact<'l>>,
    exits: Vec<Exit>,
    entries: Vec<Entry>,
    entry_of: HashMap<(Id<Tree>, StateId), usize>,
    /// What is known at each step, by the entry of its tree.
    known: HashMap<(usize, Id<Step>), Vec<StateId>>,
    waiting: VecDeque<FactId>,
    /// How much work is still to be done at most.
    left: usize,
}

impl<'s, 'l> Search<'s, 'l> {
    /// A search from every tree that a call can begin with, with nothing known.
    ///
    /// What can be known may grow as two to the power of what is tracked, so it ends after so much work.
    pub fn new(tracked: &'s mut Tracked<'l>, graph: &'s Graph, bounds: Bounds, work: usize) -> Self {
        let mut search = Self {
            tracked,
            graph,
            bounds,
            facts: Vec::new(),
            exits: Vec::new(),
            entries: Vec::new(),
            entry_of: HashMap::new(),
            known: HashMap::new(),
            waiting: VecDeque::new(),
            left: work,
        };
        for tree in beginnings(search.tracked.library) {
            if search.bounds.trees[tree.index()] {
                search.enter(tree, StateId::NOTHING, None);
            }
        }
        search
    }

    /// Goes on; what can be known at a step that is come to next, or nothing when all is found or no work is left.
    pub fn next(&mut self) -> Option<(FactId, Id<Step>, StateId)> {
        if self.left == 0 {
            return None;
        }
        let id = self.waiting.pop_front()?;
        let Fact { step, state, .. } = self.facts[id.0];
        self.follow(id, step, state);
        Some((id, step, state))
    }

    /// Whether there is more than was found.
    pub fn is_cut_short(&self) -> bool {
        self.left == 0 && !self.waiting.is_empty()
    }

    /// How much work is left.
    pub fn left(&self) -> usize {
        self.left
    }

    fn work(&mut self, done: usize) {
        self.left = self.left.saturating_sub(done);
    }

    fn follow(&mut self, id: FactId, at: Id<Step>, state: StateId) {
        let library = self.tracked.library;
        let step = &library[at];
        match &step.kind {
            Kind::Visit { tree, .. } if self.bounds.trees[tree.index()] => {
                self.enter(*tree, state, Some(id));
            }
            Kind::Visit {
                tree,
                returns,
                on_verdict,
            } => {
                // Nothing that matters happens there.
                let ends = self.graph.ends(*tree);
                let mut ways = Vec::new();
                for (outcome, edge) in returns {
                    if ends.can_return(*outcome) {
                        push(&mut ways, How::Returned(*outcome), Some(edge), state);
                    }
                }
                if ends.verdict {
                    push(&mut ways, How::Noted, on_verdict.as_ref(), state);
                    if on_verdict.is_none() {
                        self.end(id, End::Stated, state, None);
                    }
                }
                self.take(id, ways, None);
            }
            Kind::Return { outcome } => self.end(id, End::Returned(*outcome), state, None),
            Kind::Verdict { fault, .. } => {
                if library.faults[*fault].remedy != Remedy::ShutDown {
                    for state in noted(self.tracked, *fault, state) {
                        self.end(id, End::Stated, state, None);
                    }
                }
            }
            Kind::Measure { .. } | Kind::Observe { .. } | Kind::Do { .. } | Kind::Plate { .. } => {
                let ways = moves(self.tracked, at, state);
                self.take(id, ways, None);
            }
            Kind::Unresolved { .. } => {}
        }
    }

    fn take(&mut self, at: FactId, ways: Vec<Move<'l>>, through: Option<ExitId>) {
        let entry = self.facts[at.0].entry;
        for Move {
            how,
            first,
            taken,
            state,
        } in ways
        {
            let from = From::Taken {
                at,
                how,
                first,
                taken,
                through,
            };
            self.learn(entry, taken.go, state, from);
        }
    }

    fn learn(&mut self, entry: usize, step: Id<Step>, state: StateId, from: From<'l>) {
        if !self.bounds.steps[step.index()] {
            return;
        }
        let known = self.known.entry((entry, step)).or_default();
        self.left = self.left.saturating_sub(1 + known.len());
        if known
            .iter()
            .any(|&known| self.tracked.knows_no_more(known, state))
        {
            return;
        }
        known.push(state);
        self.left = self.left.saturating_sub(self.tracked.count());
        self.waiting.push_back(FactId(self.facts.len()));
        self.facts.push(Fact {
            entry,
            step,
            state,
            from,
        });
    }

    fn enter(&mut self, tree: Id<Tree>, state: StateId, caller: Option<FactId>) {
        let library = self.tracked.library;
        let Some(start) = library.trees[tree].start else {
            return;
        };
        let entry = *self.entry_of.entry((tree, state)).or_insert_with(|| {
            self.entries.push(Entry {
                first: caller,
                callers: Vec::new(),
                exits: Vec::new(),
            });
            self.entries.len() - 1
        });
        self.entries[entry].callers.extend(caller);
        self.learn(entry, start, state, From::Entry);
        if let Some(caller) = caller {
            self.work(self.entries[entry].exits.len());
            for exit in self.entries[entry].exits.clone() {
                self.come_back(caller, exit);
            }
        }
    }

    fn end(&mut self, at: FactId, end: End, state: StateId, inside: Option<ExitId>) {
        let entry = self.facts[at.0].entry;
        self.work(1 + self.entries[entry].exits.len());
        let known = self.entries[entry].exits.iter().any(|exit| {
            let exit = self.exits[exit.0];
            exit.end == end && self.tracked.knows_no_more(exit.state, state)
        });
        if known {
            return;
        }
        let exit = ExitId(self.exits.len());
        self.exits.push(Exit {
            end,
            state,
            at,
            inside,
        });
        self.entries[entry].exits.push(exit);
        self.work(self.entries[entry].callers.len());
        for caller in self.entries[entry].callers.clone() {
            self.come_back(caller, exit);
        }
    }

    fn come_back(&mut self, caller: FactId, id: ExitId) {
        let exit = self.exits[id.0];
        let library = self.tracked.library;
        let Kind::Visit {
            returns, on_verdict, ..
        } = &library[self.facts[caller.0].step].kind
        else {
            return;
        };
        let mut ways = Vec::new();
        match (exit.end, on_verdict) {
            (End::Returned(outcome), _) => {
                let edge = return_edge(returns, outcome);
                push(&mut ways, How::Returned(outcome), edge, exit.state);
            }
            (End::Stated, Some(edge)) => push(&mut ways, How::Noted, Some(edge), exit.state),
            // A verdict that a visit does not note goes on to whoever visits its tree.
            (End::Stated, None) => self.end(caller, End::Stated, exit.state, Some(id)),
        }
        self.take(caller, ways, Some(id));
    }

    /// The way to a fact, from where a call begins.
    pub fn way_to(&self, id: FactId) -> Script<'l> {
        let mut script = vec![(self.facts[id.0].step, Act::End)];
        let mut todo = vec![Todo::Before(id, true)];
        while let Some(next) = todo.pop() {
            match next {
                Todo::Ended(exit) => {
                    let Exit { at, inside, .. } = self.exits[exit.0];
                    let step = self.facts[at.0].step;
                    todo.push(Todo::Before(at, false));
                    match inside {
                        None => script.push((step, Act::End)),
                        Some(exit) => {
                            todo.push(Todo::Entered(step));
                            todo.push(Todo::Ended(exit));
                        }
                    }
                }
                Todo::Entered(step) => script.push((step, Act::Enter)),
                Todo::Before(id, outward) => match self.facts[id.0].from {
                    From::Entry if outward => {
                        if let Some(caller) = self.entries[self.facts[id.0].entry].first {
                            script.push((self.facts[caller.0].step, Act::Enter));
                            todo.push(Todo::Before(caller, true));
                        }
                    }
                    From::Entry => {}
                    From::Taken {
                        at,
                        how,
                        first,
                        taken,
                        through,
                    } => {
                        let step = self.facts[at.0].step;
                        script.push((step, Act::Take(how, first, taken)));
                        todo.push(Todo::Before(at, outward));
                        if let Some(exit) = through {
                            todo.push(Todo::Entered(step));
                            todo.push(Todo::Ended(exit));
                        }
                    }
                },
            }
        }
        script.reverse();
        script
    }
}

/// What is still to be written of a way, which is written from its end.
enum Todo {
    /// How a tree that was visited ended.
    Ended(ExitId),
    /// The visit itself.
    Entered(Id<Step>),
    /// What came before a fact; also before its tree was entered.
    Before(FactId, bool),
}

/// The trees that a call can begin with.
pub(super) fn beginnings(library: &crate::library::Library) -> Vec<Id<Tree>> {
    let complaints = library.trees.iter().filter(|(_, tree)| tree.complaint.is_some());
    let complaints = complaints.map(|(id, _)| id);
    let dangers = library.dangers.iter().map(|danger| danger.tree);
    let mut trees: Vec<_> = complaints
        .chain(library.standing_by_themselves())
        .chain(dangers)
        .collect();
    trees.sort_unstable();
    trees.dedup();
    trees
}

/// How much work a search may be: what a number or two at every step take, many times over.
pub(super) fn work(library: &crate::library::Library) -> usize {
    1_000_000 + 64 * library.steps.len()
}
