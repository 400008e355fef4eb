//! How far a step is from a goal: which of several answers leads there most plainly.

use std::collections::{BTreeMap, VecDeque};

use super::parting::Goal;
use crate::library::{Id, Kind, Library, Step, Tree};

/// How many steps a walk takes at least from a step to a goal, whatever it knows; the most there are where none leads there.
///
/// A return may lead to every visit of its tree, wherever the walk came from.
pub(super) fn nearness(library: &Library, from: Id<Step>, goal: Goal) -> usize {
    let visits = visits(library);
    let mut seen = vec![false; library.steps.len()];
    let mut waiting = VecDeque::from([(from, 0)]);
    while let Some((id, steps)) = waiting.pop_front() {
        if std::mem::replace(&mut seen[id.index()], true) {
            continue;
        }
        let step = &library[id];
        if goal.is_met_by(library, step) {
            return steps;
        }
        waiting.extend(
            next(library, step, &visits)
                .into_iter()
                .map(|next| (next, steps + 1)),
        );
    }
    usize::MAX
}

/// The steps that may come next.
fn next(library: &Library, step: &Step, visits: &BTreeMap<Id<Tree>, Vec<Id<Step>>>) -> Vec<Id<Step>> {
    match &step.kind {
        Kind::Visit { tree, .. } => library.trees[*tree].start.into_iter().collect(),
        Kind::Return { outcome } => {
            let back = visits.get(&step.tree).into_iter().flatten();
            back.filter_map(|visit| match &library[*visit].kind {
                Kind::Visit { returns, .. } => returns.iter().find(|(position, _)| position == outcome),
                _ => None,
            })
            .map(|(_, edge)| edge.go)
            .collect()
        }
        _ => step.edges().map(|edge| edge.go).collect(),
    }
}

fn visits(library: &Library) -> BTreeMap<Id<Tree>, Vec<Id<Step>>> {
    let mut visits: BTreeMap<_, Vec<_>> = BTreeMap::new();
    for (at, step) in library.steps.iter().enumerate() {
        if let Kind::Visit { tree, .. } = step.kind {
            visits.entry(tree).or_default().push(Id::new(at));
        }
    }
    visits
}
