//! The way through a tree, and all that it visits, that lacks least.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BinaryHeap};

use super::{Found, Goal, Needed};
use crate::bench::practice::here::Here;
use crate::library::{Datum, Id, Kind, Library, Remedy, Step, Tree};
use crate::walk::{State, inputs_of};

/// The ways through trees that were looked for, each once.
pub(super) struct Ways<'a> {
    pub library: &'a Library,
    pub state: &'a State,
    /// What the furnace shows, where that may be told.
    pub here: Option<&'a Here>,
    known: BTreeMap<(Id<Tree>, Goal), Option<Found>>,
}

/// The best way to a step so far.
struct Reached {
    cost: u32,
    /// Where it came from, and what that took.
    from: Option<Id<Step>>,
    needed: Vec<Needed>,
    /// What work on the way has made void.
    void: Vec<Datum>,
    done: bool,
}

impl<'a> Ways<'a> {
    pub fn new(library: &'a Library, state: &'a State, here: Option<&'a Here>) -> Self {
        Self {
            library,
            state,
            here,
            known: BTreeMap::new(),
        }
    }

    /// The way from the start of a tree; none where it does not come to the goal.
    pub fn through(&mut self, tree: Id<Tree>, goal: Goal) -> Option<Found> {
        if let Some(known) = self.known.get(&(tree, goal)) {
            return known.clone();
        }
        // A tree that visits itself comes no nearer by that.
        self.known.insert((tree, goal), None);
        let found = self.search(tree, goal);
        self.known.insert((tree, goal), found.clone());
        found
    }

    /// The shortest way by what its answers cost (Dijkstra, 1959).
    fn search(&mut self, tree: Id<Tree>, goal: Goal) -> Option<Found> {
        let library = self.library;
        let start = library.trees[tree].start?;
        let mut reached: BTreeMap<Id<Step>, Reached> = BTreeMap::new();
        let mut waiting = BinaryHeap::from([Reverse((0, start))]);
        reached.insert(
            start,
            Reached {
                cost: 0,
                from: None,
                needed: Vec::new(),
                void: Vec::new(),
                done: false,
            },
        );
        let mut best: Option<Found> = None;
        while let Some(Reverse((cost, at))) = waiting.pop() {
            if best.as_ref().is_some_and(|best| best.cost <= cost) {
                break;
            }
            let Some(here) = reached.get_mut(&at).filter(|here| !here.done) else {
                continue;
            };
            here.done = true;
            let void = here.void.clone();
            if let Some(last) = self.comes_to(at, goal) {
                let whole = Found {
                    cost: cost + last.cost,
                    needed: [back(&reached, at), last.needed].concat(),
                };
                if best.as_ref().is_none_or(|best| whole.cost < best.cost) {
                    best = Some(whole);
                }
            }
            for (go, taken, voids) in self.onward(at, &void) {
                let cost = cost + taken.cost;
                if reached.get(&go).is_some_and(|known| known.cost <= cost) {
                    continue;
                }
                let void = [void.as_slice(), voids.as_slice()].concat();
                reached.insert(
                    go,
                    Reached {
                        cost,
                        from: Some(at),
                        needed: taken.needed,
                        void,
                        done: false,
                    },
                );
                waiting.push(Reverse((cost, go)));
            }
        }
        best
    }

    /// What a step itself still takes to come to the goal; none where it does not.
    fn comes_to(&mut self, at: Id<Step>, goal: Goal) -> Option<Found> {
        let library = self.library;
        let here = match (&library[at].kind, goal) {
            (Kind::Verdict { fault, .. }, Goal::Verdict(named)) => *fault == named,
            (Kind::Verdict { fault, .. }, Goal::NoFault | Goal::Sound) => {
                library.faults[*fault].remedy == Remedy::None
            }
            (Kind::Return { outcome }, Goal::Return(wanted)) => *outcome == wanted,
            (Kind::Return { .. }, Goal::Sound) => true,
            (Kind::Visit { tree, .. }, Goal::Verdict(_) | Goal::NoFault) => {
                return self.through(*tree, goal);
            }
            (Kind::Visit { tree, .. }, Goal::Sound) => return self.through(*tree, Goal::NoFault),
            _ => false,
        };
        here.then(Found::default)
    }

    /// Where a step leads, what that takes, and what it makes void.
    fn onward(&mut self, at: Id<Step>, void: &[Datum]) -> Vec<(Id<Step>, Found, Vec<Datum>)> {
        let library = self.library;
        match &library[at].kind {
            Kind::Measure {
                reading,
                answers,
                unable,
                ..
            } => self.answered(Datum::Reading(*reading), answers, unable.iter(), void),
            Kind::Observe {
                sign,
                answers,
                unable,
                unsure,
                ..
            } => self.answered(Datum::Sign(*sign), answers, unable.iter().chain(unsure), void),
            Kind::Plate {
                field,
                answers,
                unable,
            } => self.answered(Datum::Field(*field), answers, unable.iter(), void),
            Kind::Do { go, voids, .. } => vec![(go.go, Found::default(), self.void_with(voids))],
            Kind::Visit { tree, returns, .. } => returns
                .iter()
                .filter_map(|(outcome, edge)| {
                    let found = self.through(*tree, Goal::Return(*outcome))?;
                    Some((edge.go, found, Vec::new()))
                })
                .collect(),
            Kind::Verdict { .. } | Kind::Return { .. } | Kind::Unresolved { .. } => Vec::new(),
        }
    }

    /// What work makes void: with a value, all that it is worked out from and all that is worked out from it.
    fn void_with(&self, voids: &[Datum]) -> Vec<Datum> {
        let library = self.library;
        let mut all = Vec::new();
        for datum in voids {
            all.push(*datum);
            all.extend(inputs_of(library, *datum));
            let readings = library.readings.iter().map(|(id, _)| Datum::Reading(id));
            all.extend(readings.filter(|reading| inputs_of(library, *reading).contains(datum)));
        }
        all
    }
}

/// What was needed on the way to a step.
fn back(reached: &BTreeMap<Id<Step>, Reached>, at: Id<Step>) -> Vec<Needed> {
    let mut at = reached.get(&at);
    let mut parts = Vec::new();
    while let Some(here) = at {
        parts.push(here.needed.as_slice());
        at = here.from.and_then(|from| reached.get(&from));
    }
    parts.into_iter().rev().flatten().cloned().collect()
}
