//! Stretches of questions that each end in a verdict or go on to the next.

use std::collections::{BTreeMap, BTreeSet};

use super::guard::{Guard, Question, needs, verdict};
use super::{Basis, LEAST_GAIN, Proposal};
use crate::bench::cost::model::Model;
use crate::bench::cost::sequence::{Trial, best_order, expected_cost};
use crate::bench::cost::ways::Way;
use crate::library::{Id, Library, Step, Tree};

/// How many questions of a stretch are looked at together: the orders of one question put forward grow with the square.
const LONGEST: usize = 40;

/// The stretches of a tree that another order would make cheaper, were each question to show its own fault and no other.
pub(super) fn proposals(
    library: &Library,
    guard: &Guard<'_>,
    tree: Id<Tree>,
    ways: &[Way],
    model: &Model,
) -> Vec<Proposal> {
    let met: BTreeSet<Id<Step>> = ways
        .iter()
        .flat_map(|way| &way.sorted)
        .map(|sorted| sorted.at)
        .collect();
    let stretches = stretches(library, tree);
    let pieces = stretches.iter().flat_map(|stretch| stretch.chunks(LONGEST));
    let is_met = |piece: &&[Id<Step>]| piece.first().is_some_and(|step| met.contains(step));
    let found = pieces
        .filter(is_met)
        .filter_map(|piece| best(library, guard, piece, ways, model));
    found.collect()
}

/// Every stretch of two questions and more, as long as it goes.
fn stretches(library: &Library, tree: Id<Tree>) -> Vec<Vec<Id<Step>>> {
    let steps = || library.trees[tree].steps.clone().map(Id::<Step>::new);
    let mut incoming: BTreeMap<Id<Step>, usize> = BTreeMap::new();
    for edge in steps().flat_map(|step| library[step].edges().map(|edge| edge.go).collect::<Vec<_>>()) {
        *incoming.entry(edge).or_default() += 1;
    }
    // A question that something else leads to as well does not belong to what comes before it.
    let next: BTreeMap<Id<Step>, Id<Step>> = steps()
        .filter_map(|step| {
            let on = onward(library, step)?;
            (incoming.get(&on) == Some(&1) && onward(library, on).is_some()).then_some((step, on))
        })
        .collect();
    let goes_on: BTreeSet<Id<Step>> = next.values().copied().collect();
    let firsts = next.keys().filter(|step| !goes_on.contains(step));
    let follow =
        |first: &Id<Step>| std::iter::successors(Some(*first), |step| next.get(step).copied()).collect();
    firsts.map(follow).collect()
}

/// Where a question goes on to that otherwise ends in verdicts.
fn onward(library: &Library, step: Id<Step>) -> Option<Id<Step>> {
    let question = Question::of(&library[step])?;
    let mut on = None;
    for edge in question.answers.edges() {
        let ends = verdict(library, edge.go).is_some();
        let plain = edge.limit.is_none() && edge.finding.is_none();
        match (ends, on) {
            (true, _) if plain => {}
            (false, None) if plain => on = Some(edge.go),
            (false, Some(known)) if plain && known == edge.go => {}
            _ => return None,
        }
    }
    on
}

/// The best order of a stretch: by chance over cost where all may change places, else the best single question put
/// forward.
fn best(
    library: &Library,
    guard: &Guard<'_>,
    stretch: &[Id<Step>],
    ways: &[Way],
    model: &Model,
) -> Option<Proposal> {
    let (trials, met) = trials(library, stretch, ways, model)?;
    let now: Vec<usize> = (0..stretch.len()).collect();
    let free = |order: &[usize]| {
        let before = |at: usize| order[at + 1..].iter().filter(move |later| **later < order[at]);
        (0..order.len())
            .all(|at| before(at).all(|passed| passes(library, guard, stretch[order[at]], stretch[*passed])))
    };
    let mut orders = vec![best_order(&trials)];
    for to in now.clone() {
        orders.extend((to + 1..now.len()).map(|from| {
            let mut order = now.clone();
            let moved = order.remove(from);
            order.insert(to, moved);
            order
        }));
    }
    orders.retain(|order| free(order));
    let costs = orders
        .into_iter()
        .map(|order| (expected_cost(&trials, &order), order));
    let (cost, order) = costs.min_by(|(one, _), (other, _)| one.total_cmp(other))?;
    let gain = met * (expected_cost(&trials, &now) - cost) / model.known.weight();
    // What stays where it is at either end need not be named.
    let first = order.iter().zip(&now).position(|(then, now)| then != now)?;
    let last = order.iter().zip(&now).rposition(|(then, now)| then != now)?;
    (gain > LEAST_GAIN).then(|| Proposal {
        now: stretch[first..=last].to_vec(),
        then: order[first..=last].iter().map(|at| stretch[*at]).collect(),
        gain,
        basis: Basis::ToJudge,
    })
}

/// A question passes another, and no verdict that it ends in needs what the other shows.
fn passes(library: &Library, guard: &Guard<'_>, question: Id<Step>, before: Id<Step>) -> bool {
    let Some(passed) = Question::of(&library[before]) else {
        return false;
    };
    let asked = Question::of(&library[question]).into_iter();
    let mut ends = asked
        .flat_map(|asked| asked.answers.edges())
        .filter_map(|edge| verdict(library, edge.go));
    guard.may_pass(question, before) && !ends.any(|fault| needs(library, fault, passed.datum))
}

/// For each question of a stretch its chance to end there and its minutes, among the weight that comes to the first.
fn trials(library: &Library, stretch: &[Id<Step>], ways: &[Way], model: &Model) -> Option<(Vec<Trial>, f64)> {
    let mut met = vec![0.0; stretch.len()];
    let mut minutes = vec![0.0; stretch.len()];
    let mut ended = vec![0.0; stretch.len()];
    for (way, case) in ways.iter().zip(model.known.cases()) {
        for sorted in &way.sorted {
            let Some(at) = stretch.iter().position(|step| *step == sorted.at) else {
                continue;
            };
            met[at] += case.weight;
            if sorted.fresh {
                minutes[at] += case.weight * way.takings[sorted.taking].minutes;
            }
            let answers = Question::of(&library[sorted.at])?.answers;
            let to = answers.edges().nth(sorted.answer)?.go;
            if verdict(library, to).is_some() {
                ended[at] += case.weight;
            }
        }
    }
    let all = *met.first().filter(|met| **met > 0.0)?;
    // A question that no weight comes to has no average; it stays, as its chance is nothing.
    let cost = |at: usize| if met[at] > 0.0 { minutes[at] / met[at] } else { 0.0 };
    let trial = |at: usize| Trial {
        chance: ended[at] / all,
        cost: cost(at),
    };
    Some(((0..stretch.len()).map(trial).collect(), all))
}
