//! The shortest way that a walk can really take: limits are counted, and every value is remembered that is asked for twice.

use std::collections::{HashMap, HashSet, VecDeque};
use std::hash::Hash;

use super::moves::{How, Move, moves, noted, push};
use super::script::{Act, Script};
use super::tracked::{StateId, Tracked};
use crate::library::{Edge, EdgeId, Id, Kind, Library, Remedy, Step, Tree, return_edge};

/// Where a walk stands.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
struct Place {
    step: Id<Step>,
    /// At a visit whose tree has ended: how.
    back: Option<End>,
    /// The visits around it.
    around: u32,
    /// How often each bounded edge was taken since the tree was entered.
    counts: u32,
    state: StateId,
}

#[derive(Clone, Copy, PartialEq, Eq, Hash)]
enum End {
    Returned(usize),
    Stated,
}

/// A place that was come to, from which other, and by what was done there.
struct Node<'l> {
    place: Place,
    before: Option<(usize, Act<'l>)>,
}

/// The visits around a step: the innermost, with the counts of the tree it stands in, and those around that one.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
enum Around {
    /// A call begins here; in a danger, no visit notes a verdict.
    Beginning { danger: bool },
    Visit {
        step: Id<Step>,
        counts: u32,
        around: u32,
    },
}

/// How often each bounded edge was taken, in the order of their numbers.
pub(super) type Counts = Vec<(EdgeId, u32)>;

/// Ways that a walk can take, shortest first.
pub(super) struct Walkable<'s, 'l> {
    pub tracked: &'s mut Tracked<'l>,
    steps: &'s [bool],
    around: Pool<Around>,
    counts: Pool<Counts>,
    nodes: Vec<Node<'l>>,
    seen: HashSet<Place>,
    waiting: VecDeque<usize>,
}

impl<'s, 'l> Walkable<'s, 'l> {
    /// Ways from every tree that a call can begin with, over these steps.
    pub fn new(tracked: &'s mut Tracked<'l>, steps: &'s [bool]) -> Self {
        let library = tracked.library;
        let mut walkable = Self {
            tracked,
            steps,
            around: Pool::default(),
            counts: Pool::default(),
            nodes: Vec::new(),
            seen: HashSet::new(),
            waiting: VecDeque::new(),
        };
        for (tree, danger) in beginnings(library) {
            let around = walkable.around.id(Around::Beginning { danger });
            walkable.enter(tree, around, StateId::NOTHING, None);
        }
        walkable
    }

    /// The next place, and what is known there.
    pub fn next(&mut self) -> Option<(usize, Id<Step>, StateId)> {
        loop {
            let at = self.waiting.pop_front()?;
            let place = self.nodes[at].place;
            self.follow(at, place);
            if place.back.is_none() {
                return Some((at, place.step, place.state));
            }
        }
    }

    /// How many places were found so far.
    pub fn found(&self) -> usize {
        self.nodes.len()
    }

    /// The way to a place.
    pub fn way_to(&self, at: usize) -> Script<'l> {
        let mut script = vec![(self.nodes[at].place.step, Act::End)];
        let mut node = &self.nodes[at];
        while let Some((before, act)) = node.before {
            node = &self.nodes[before];
            script.push((node.place.step, act));
        }
        script.reverse();
        script
    }

    fn enter(&mut self, tree: Id<Tree>, around: u32, state: StateId, before: Option<(usize, Act<'l>)>) {
        if let Some(step) = self.tracked.library.trees[tree].start {
            let place = Place {
                step,
                back: None,
                around,
                counts: self.counts.id(Vec::new()),
                state,
            };
            self.come_to(place, before);
        }
    }

    fn come_to(&mut self, place: Place, before: Option<(usize, Act<'l>)>) {
        if self.steps[place.step.index()] && self.seen.insert(place) {
            self.waiting.push_back(self.nodes.len());
            self.nodes.push(Node { place, before });
        }
    }

    fn follow(&mut self, at: usize, place: Place) {
        let library = self.tracked.library;
        match &library[place.step].kind {
            Kind::Visit {
                tree,
                returns,
                on_verdict,
            } => match place.back {
                None => {
                    let around = self.around.id(Around::Visit {
                        step: place.step,
                        counts: place.counts,
                        around: place.around,
                    });
                    self.enter(*tree, around, place.state, Some((at, Act::Enter)));
                }
                Some(End::Returned(outcome)) => {
                    let edge = return_edge(returns, outcome);
                    self.take_first(at, place, How::Returned(outcome), edge);
                }
                Some(End::Stated) => self.take_first(at, place, How::Noted, on_verdict.as_ref()),
            },
            Kind::Return { outcome } => {
                if let Around::Visit { .. } = self.around[place.around] {
                    self.come_back(at, End::Returned(*outcome), place.around, place.state);
                }
            }
            Kind::Verdict { fault, .. } => {
                if library.faults[*fault].remedy != Remedy::ShutDown
                    && let Some(around) = self.noting(place.around)
                {
                    for state in noted(self.tracked, *fault, place.state) {
                        self.come_back(at, End::Stated, around, state);
                    }
                }
            }
            Kind::Measure { .. } | Kind::Observe { .. } | Kind::Do { .. } | Kind::Plate { .. } => {
                for way in moves(self.tracked, place.step, place.state) {
                    self.take(at, place, way);
                }
            }
            Kind::Unresolved { .. } => {}
        }
    }

    fn take_first(&mut self, at: usize, place: Place, how: How, edge: Option<&'l Edge>) {
        let mut ways = Vec::new();
        push(&mut ways, how, edge, place.state);
        for way in ways {
            self.take(at, place, way);
        }
    }

    /// Takes a way, if it is the one that the counts leave.
    fn take(&mut self, at: usize, place: Place, way: Move<'l>) {
        let mut counts = self.counts[place.counts].clone();
        if !count(&mut counts, way.first, way.taken) {
            return;
        }
        let act = Act::Take(way.how, way.first, way.taken);
        let place = Place {
            step: way.taken.go,
            back: None,
            counts: self.counts.id(counts),
            state: way.state,
            ..place
        };
        self.come_to(place, Some((at, act)));
    }

    fn come_back(&mut self, at: usize, end: End, around: u32, state: StateId) {
        let Around::Visit { step, counts, around } = self.around[around] else {
            return;
        };
        let place = Place {
            step,
            back: Some(end),
            around,
            counts,
            state,
        };
        self.come_to(place, Some((at, Act::End)));
    }

    /// The nearest visit that notes a verdict and goes on.
    fn noting(&self, mut around: u32) -> Option<u32> {
        let mut nearest = None;
        loop {
            match self.around[around] {
                Around::Beginning { danger } => return nearest.filter(|_| !danger),
                Around::Visit {
                    step, around: outer, ..
                } => {
                    let kind = &self.tracked.library[step].kind;
                    let notes = matches!(
                        kind,
                        Kind::Visit {
                            on_verdict: Some(_),
                            ..
                        }
                    );
                    if nearest.is_none() && notes {
                        nearest = Some(around);
                    }
                    around = outer;
                }
            }
        }
    }
}

/// Counts an edge that is taken; whether it is the one that is left after the limits before it.
pub(super) fn count(counts: &mut Counts, first: &Edge, taken: &Edge) -> bool {
    let mut edge = first;
    while let Some(limit) = &edge.limit {
        let place = counts.binary_search_by_key(&edge.id, |(id, _)| *id);
        let so_far = place.map_or(0, |at| counts[at].1);
        if so_far < limit.at_most {
            match place {
                Ok(at) => counts[at].1 += 1,
                Err(at) => counts.insert(at, (edge.id, 1)),
            }
            break;
        }
        edge = &limit.then;
    }
    edge.id == taken.id
}

/// The trees that a call can begin with, and whether as a danger.
fn beginnings(library: &Library) -> impl Iterator<Item = (Id<Tree>, bool)> + '_ {
    let complaints = library.trees.iter().filter(|(_, tree)| tree.complaint.is_some());
    let calls = complaints.map(|(id, _)| id);
    let others = library.standing_by_themselves();
    let others = others.filter(|id| library.trees[*id].complaint.is_none());
    let dangers = library.dangers.iter().map(|danger| danger.tree);
    calls
        .chain(others)
        .map(|tree| (tree, false))
        .chain(dangers.map(|tree| (tree, true)))
}

/// Every value once, by number.
struct Pool<V> {
    ids: HashMap<V, u32>,
    values: Vec<V>,
}

impl<V> Default for Pool<V> {
    fn default() -> Self {
        Self {
            ids: HashMap::new(),
            values: Vec::new(),
        }
    }
}

impl<V: Hash + Eq + Clone> Pool<V> {
    fn id(&mut self, value: V) -> u32 {
        if let Some(&known) = self.ids.get(&value) {
            return known;
        }
        let id = self.values.len() as u32;
        self.ids.insert(value.clone(), id);
        self.values.push(value);
        id
    }
}

impl<V> std::ops::Index<u32> for Pool<V> {
    type Output = V;

    fn index(&self, id: u32) -> &V {
        &self.values[id as usize]
    }
}
