//! What a noted verdict cut short: checks of its visit that were not made on the whole call.
//!
//! A verdict that is noted leaves the trees of its visit at once, so what they would have asked next is not asked there. Who
//! reads the report must not take that for looked at and found in order.

use std::collections::BTreeSet;

use super::route::{answers_of, leads_to, own_datum};
use super::state::{Frame, Noted, State, What};
use crate::library::{Datum, Edge, Fault, Id, Kind, Library, PlateField, Step, Tree};

/// A visit that a noted verdict cut short.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unchecked {
    /// The visited tree.
    pub tree: Id<Tree>,
    /// The verdict that was noted.
    pub because: Id<Fault>,
    /// What lay ahead on the ways to the end of the visit and was not looked at anywhere, in the order of the trees.
    pub checks: Vec<Datum>,
}

/// The visits that were cut short and left something out that nothing else on the call has asked for.
pub fn unchecked(library: &Library, state: &State) -> Vec<Unchecked> {
    let mut known: BTreeSet<Datum> = state.moment.values.keys().copied().collect();
    for answered in &state.trail {
        known.extend(answered.worked_out.iter().map(|came_out| came_out.datum));
        if let What::Datum(datum) = answered.what {
            known.insert(datum);
        }
    }
    let mut cut_short = Vec::new();
    for noted in &state.moment.noted {
        let mut ahead = Ahead {
            library,
            state,
            known: &mut known,
            visited: BTreeSet::new(),
            checks: Vec::new(),
        };
        ahead.after(noted);
        let checks = ahead.checks;
        if let (Some(visit), false) = (noted.left.first(), checks.is_empty()) {
            cut_short.push(Unchecked {
                tree: visit.tree,
                because: noted.fault,
                checks,
            });
        }
    }
    cut_short
}

/// Gathers what a visit would still have asked.
struct Ahead<'a> {
    library: &'a Library,
    state: &'a State,
    /// What was looked at, or is told already.
    known: &'a mut BTreeSet<Datum>,
    visited: BTreeSet<Id<Tree>>,
    checks: Vec<Datum>,
}

impl Ahead<'_> {
    fn after(&mut self, noted: &Noted) {
        let library = self.library;
        for (depth, frame) in noted.left.iter().enumerate().rev() {
            let steps = if depth + 1 == noted.left.len() {
                self.beside(frame)
            } else if let Kind::Visit { returns, .. } = &library[frame.step].kind {
                self.to_a_return(returns.iter().map(|(_, edge)| edge))
            } else {
                Vec::new()
            };
            self.gather(steps);
        }
    }

    /// What the other answers would have led to: those of the last question before the verdict that could still have led
    /// to a return.
    fn beside(&self, frame: &Frame) -> Vec<Id<Step>> {
        let library = self.library;
        let taken = |edge: &Edge| frame.counts.contains_key(&edge.id);
        let steps = library.trees[frame.tree].steps.clone().map(Id::new);
        let mut seen = BTreeSet::from([frame.step]);
        let mut nearest = vec![frame.step];
        while !nearest.is_empty() {
            let before: Vec<Id<Step>> = (steps.clone())
                .filter(|step| {
                    library[*step]
                        .edges()
                        .any(|edge| taken(edge) && nearest.contains(&edge.go))
                })
                .filter(|step| seen.insert(*step))
                .collect();
            let others = (before.iter())
                .flat_map(|step| library[*step].edges())
                .filter(|edge| !taken(edge));
            let ahead = self.to_a_return(others);
            if !ahead.is_empty() {
                return ahead;
            }
            nearest = before;
        }
        Vec::new()
    }

    /// The steps on the ways from some edges to a return of their tree.
    fn to_a_return<'e>(&self, edges: impl Iterator<Item = &'e Edge>) -> Vec<Id<Step>> {
        let library = self.library;
        let mut reached: Vec<Id<Step>> = Vec::new();
        let mut seen = BTreeSet::new();
        let mut waiting: Vec<Id<Step>> = edges.flat_map(Edge::chain).map(|edge| edge.go).collect();
        while let Some(step) = waiting.pop() {
            if seen.insert(step) {
                reached.push(step);
                waiting.extend(self.onward(&library[step]).into_iter().map(|edge| edge.go));
            }
        }
        let is_return = |step: &Id<Step>| matches!(library[*step].kind, Kind::Return { .. });
        let mut leading: BTreeSet<Id<Step>> = reached.iter().copied().filter(is_return).collect();
        loop {
            let leads = |step: &Id<Step>| {
                (self.onward(&library[*step]).iter()).any(|edge| leading.contains(&edge.go))
            };
            let more: Vec<Id<Step>> = (reached.iter().copied())
                .filter(|step| !leading.contains(step) && leads(step))
                .collect();
            if more.is_empty() {
                return leading.into_iter().collect();
            }
            leading.extend(more);
        }
    }

    /// The edges that leave a step; of a question whose answer stands, the one that it leads to.
    fn onward<'s>(&self, step: &'s Step) -> Vec<&'s Edge> {
        let field = |id: Id<PlateField>| self.state.field(id);
        let standing = own_datum(step).and_then(|datum| self.state.value(datum));
        let settled = standing.and_then(|standing| leads_to(answers_of(step)?, standing.value, &field));
        match settled {
            Some(edge) => edge.chain().collect(),
            None => step.edges().collect(),
        }
    }

    fn gather(&mut self, steps: Vec<Id<Step>>) {
        let library = self.library;
        for step in steps {
            match &library[step].kind {
                Kind::Measure { .. } | Kind::Observe { .. } => {
                    if let Some(datum) = own_datum(&library[step]).filter(|datum| self.known.insert(*datum)) {
                        self.checks.push(datum);
                    }
                }
                Kind::Visit { tree, .. } => self.whole(*tree),
                _ => {}
            }
        }
    }

    /// What a tree asks that was not come to. A tree that visits itself is refused by the check; here it is entered once.
    fn whole(&mut self, tree: Id<Tree>) {
        let library = self.library;
        if let (Some(start), true) = (library.trees[tree].start, self.visited.insert(tree)) {
            let mut steps = self.to_a_return(self.onward(&library[start]).into_iter());
            steps.insert(0, start);
            self.gather(steps);
        }
    }
}
