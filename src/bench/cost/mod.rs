//! What it takes to come to a verdict, and how much of that an order of questions could spare.
//!
//! # What is counted
//!
//! Minutes as the library gives them: of a step; where it gives none, of the reading or sign that it asks for, of a reading that is
//! worked out those of what it is worked out from. What stands already costs nothing. Plate fields, putting back, and whatever has
//! no minutes count nothing.
//!
//! # What is known
//!
//! One fault is there, and it is one that the tree can end in. Of a fault a library says what a walk to its verdict shows: every
//! way from the tree's start to that verdict, through all visits, says the answer to each question on it. A *case* is a way,
//! with the answers on it; a *test* is a reading, sign or plate field, taken anew after work that voids it being another.
//!
//! What a fault shows where no way of its own asks, the library does not say: a loaded filter shows a good igniter, but a furnace
//! whose inducer stands shows no flame either. So there are two yardsticks, and neither is a promise:
//!
//! - **known** makes nothing up: the cheapest of all orders that ask a question only where each case that is left has an answer
//!   to it. The tree is one of them. Most trees are as cheap as this: where each way asks what no other asks, nothing else is
//!   known;
//! - **least** takes it that a question shows, for a fault that no way asks it of, what it shows for most of those that are
//!   asked, and lets it be asked before others only as far as [`reorder`] lets it pass them. Again the tree is one of these orders.
//!
//! Both are found by dynamic programming ([`sequence::optimum()`]). The **floor** ([`sequence::floor()`]) is what none of the
//! orders of the second kind can come below. Work on a way, what proves its verdict, and what must be asked before that are paid
//! for in any order. The gate and the dangers have an order for safety's sake: it has no yardstick.
//!
//! # What is weighed
//!
//! A fault counts by its `weight` in the registry, 1 where it has none. A fault that several ways lead to counts on each by
//! how likely the way is among them, were each answer to a question as likely as another; so a way that goes round once more
//! counts less. Returns, and verdicts that nothing is wrong, count nothing, but must be told from the faults all the same.
//!
//! # What may change places
//!
//! See [`reorder`].

mod calls;
mod isolated;
mod model;
pub mod reorder;
pub mod sequence;
mod ways;

use std::collections::{BTreeMap, BTreeSet};

pub use calls::Calls;
pub use isolated::Isolated;
pub use reorder::{Basis, Guard, Proposal};

use crate::library::{Datum, Fault, Id, Kind, Library, Remedy, Tree};
use model::{Model, weight};
use sequence::{Problem, floor, groups, optimum};
use ways::{End, Way, Ways};

/// How many ways of a tree are followed.
const MOST_WAYS: usize = 1_000;

/// How often a case may be looked at in the search for the least.
const PATIENCE: usize = 2_000_000;

/// What the trees of a library cost.
#[derive(Debug)]
pub struct Cost<'l> {
    /// The library.
    pub library: &'l Library,
    /// How many of its faults have a weight of their own.
    pub weighted: usize,
    /// Each tree that ends in a fault, in the author's order.
    pub trees: Vec<TreeCost>,
    /// The trees that end in none.
    pub without: Vec<Id<Tree>>,
    /// The fraction of its faults, by weight, that some tree ends in; none where it has no faults.
    pub detected: Option<f64>,
    /// How far those are isolated that some way ends in.
    pub isolated: Isolated,
    /// Those that no tree ends in.
    pub unmet: Vec<Id<Fault>>,
    /// Those that a tree ends in, but on no way that was followed: they are detected, and nothing else is known of them.
    pub unfollowed: Vec<Id<Fault>>,
    /// What some way takes and nothing says the minutes of: it counts as nothing.
    pub unpriced: BTreeSet<Datum>,
}

/// What a tree costs.
#[derive(Clone, Debug)]
pub struct TreeCost {
    /// Which.
    pub tree: Id<Tree>,
    /// How many ways were followed.
    pub ways: usize,
    /// There are more, less likely than those: then all figures are of those that were followed.
    pub cut: bool,
    /// The minutes to a verdict, expected.
    pub minutes: f64,
    /// The least with known answers; none where there are too many ways, and of the gate and the dangers.
    pub known: Option<f64>,
    /// The least with likely answers and with what must come first; none as before.
    pub least: Option<f64>,
    /// What no order can come below; none of the gate and the dangers.
    pub floor: Option<f64>,
    /// Its faults, in the order of the registry.
    pub faults: Vec<FaultCost>,
    /// Faults that no question of it tells apart, in groups of two and more.
    pub ambiguous: Vec<Vec<Id<Fault>>>,
    /// How far its faults are isolated.
    pub isolated: Isolated,
    /// What could change places, the greatest gain first.
    pub proposals: Vec<Proposal>,
    /// The worked calls that begin here and end in a fault.
    pub calls: Calls,
}

/// What a fault costs in a tree.
#[derive(Clone, Debug)]
pub struct FaultCost {
    /// Which.
    pub fault: Id<Fault>,
    /// How often it is met, relative to the others.
    pub weight: f64,
    /// How many ways lead to it.
    pub ways: usize,
    /// The minutes to its verdict, expected.
    pub minutes: f64,
    /// How many parts or faults are left when its verdict is stated; none where it is handed on.
    pub left: Option<usize>,
    /// The worked calls from this tree to it.
    pub calls: Calls,
}

/// What a tree costs in the order it asks.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    /// Which.
    pub tree: Id<Tree>,
    /// The minutes to a verdict, expected.
    pub minutes: f64,
    /// Its faults, each with the minutes to its verdict, expected.
    pub faults: Vec<(Id<Fault>, f64)>,
}

/// What the trees of a library cost. The library is to be one without an error.
pub fn cost(library: &Library) -> Cost<'_> {
    let calls = calls::calls(library);
    let mut cost = Cost {
        library,
        weighted: (library.faults.iter())
            .filter(|(_, fault)| fault.weight.is_some())
            .count(),
        trees: Vec::new(),
        without: Vec::new(),
        detected: None,
        isolated: Isolated::default(),
        unmet: Vec::new(),
        unfollowed: Vec::new(),
        unpriced: BTreeSet::new(),
    };
    let guard = Guard::of(library);
    for (tree, _) in library.trees.iter() {
        let ways = ways::ways(library, tree, MOST_WAYS);
        cost.unpriced.extend(unpriced(library, &ways));
        // Where the order is one of safety, it is not for sale.
        let stays = library.gate == Some(tree) || library.dangers.iter().any(|danger| danger.tree == tree);
        let Ok(model) = Model::of(library, &guard, &ways.ways) else {
            cost.without.push(tree);
            continue;
        };
        let mut priced = priced(library, tree, &ways, &model, &calls);
        if !stays {
            priced.known = least(&ways, &model.known);
            priced.least = least(&ways, &model.likely);
            priced.floor = Some(floor(&model.likely));
            priced.proposals = reorder::proposals(library, &guard, tree, &ways, &model);
        }
        cost.trees.push(priced);
    }
    let mut found: BTreeMap<Id<Fault>, Option<usize>> = BTreeMap::new();
    for fault in cost.trees.iter().flat_map(|tree| &tree.faults) {
        // Where one tree leaves more than another, the worse counts.
        let left = found.entry(fault.fault).or_insert(fault.left);
        *left = (*left).max(fault.left);
    }
    let stated = stated(library);
    let (mut all, mut met) = (0.0, 0.0);
    for (fault, _) in library
        .faults
        .iter()
        .filter(|(_, fault)| fault.remedy != Remedy::None)
    {
        all += weight(library, fault);
        if !stated.contains(&fault) {
            cost.unmet.push(fault);
            continue;
        }
        met += weight(library, fault);
        if !found.contains_key(&fault) {
            cost.unfollowed.push(fault);
        }
    }
    cost.detected = (all > 0.0).then(|| met / all);
    let faults: Vec<_> = found
        .iter()
        .map(|(fault, left)| (weight(library, *fault), *left))
        .collect();
    cost.isolated = Isolated::of(&faults);
    cost
}

/// The faults that some step is a verdict of.
fn stated(library: &Library) -> BTreeSet<Id<Fault>> {
    let verdicts = library.steps.iter().filter_map(|step| match step.kind {
        Kind::Verdict { fault, .. } => Some(fault),
        _ => None,
    });
    verdicts.collect()
}

/// What the trees cost in the order they ask, for those that end in a fault. No better order is looked for, which takes nearly all
/// of the time of [`cost()`].
pub fn as_asked(library: &Library) -> Vec<Asked> {
    let trees = library.trees.iter().filter_map(|(tree, _)| {
        let ways = ways::ways(library, tree, MOST_WAYS).ways;
        let minutes = |cases: Vec<usize>| {
            // A fault's ways share its weight, whatever that is.
            let of_ways = cases
                .iter()
                .map(|case| (ways[*case].share, ways[*case].minutes()));
            mean(of_ways)
        };
        let faults: Vec<(Id<Fault>, f64)> = (by_fault(library, &ways).into_iter())
            .map(|(fault, cases)| (fault, minutes(cases)))
            .collect();
        let minutes = mean((faults.iter()).map(|(fault, minutes)| (weight(library, *fault), *minutes)));
        minutes.is_finite().then_some(Asked {
            tree,
            minutes,
            faults,
        })
    });
    trees.collect()
}

fn priced(
    library: &Library,
    tree: Id<Tree>,
    ways: &Ways,
    model: &Model,
    calls: &BTreeMap<(Id<Tree>, Id<Fault>), Calls>,
) -> TreeCost {
    let problem = &model.known;
    let ambiguous = ambiguous(library, problem, &ways.ways);
    let faults = faults(library, tree, ways, problem, &ambiguous, calls);
    let left: Vec<_> = faults.iter().map(|fault| (fault.weight, fault.left)).collect();
    let mut all = Calls::default();
    faults.iter().for_each(|fault| all += fault.calls);
    TreeCost {
        tree,
        ways: ways.ways.len(),
        cut: ways.cut,
        minutes: mean(faults.iter().map(|fault| (fault.weight, fault.minutes))),
        known: None,
        least: None,
        floor: None,
        ambiguous,
        isolated: Isolated::of(&left),
        proposals: Vec::new(),
        calls: all,
        faults,
    }
}

/// The least of all orders; where some ways were not followed, there is more to tell apart than is known.
fn least(ways: &Ways, problem: &Problem) -> Option<f64> {
    let whole = (!ways.cut).then_some(problem)?;
    optimum(whole, PATIENCE).ok().map(|found| found.cost)
}

fn mean(values: impl Iterator<Item = (f64, f64)>) -> f64 {
    let (weight, sum) = values.fold((0.0, 0.0), |(all, sum), (weight, value)| {
        (all + weight, sum + weight * value)
    });
    sum / weight
}

/// The faults that some way ends in, without verdicts that nothing is wrong.
fn faults(
    library: &Library,
    tree: Id<Tree>,
    ways: &Ways,
    problem: &Problem,
    ambiguous: &[Vec<Id<Fault>>],
    calls: &BTreeMap<(Id<Tree>, Id<Fault>), Calls>,
) -> Vec<FaultCost> {
    let cost = |(fault, cases): (Id<Fault>, Vec<usize>)| FaultCost {
        fault,
        weight: weight(library, fault),
        ways: cases.len(),
        minutes: mean(
            cases
                .iter()
                .map(|case| (problem.cases()[*case].weight, ways.ways[*case].minutes())),
        ),
        left: left(library, fault, ambiguous),
        calls: calls.get(&(tree, fault)).copied().unwrap_or_default(),
    };
    (by_fault(library, &ways.ways).into_iter().map(cost)).collect()
}

/// The ways of each fault that some way ends in, without verdicts that nothing is wrong.
fn by_fault(library: &Library, ways: &[Way]) -> BTreeMap<Id<Fault>, Vec<usize>> {
    let mut of: BTreeMap<Id<Fault>, Vec<usize>> = BTreeMap::new();
    for (at, way) in ways.iter().enumerate() {
        if let End::Fault(fault) = way.end
            && library.faults[fault].remedy != Remedy::None
        {
            of.entry(fault).or_default().push(at);
        }
    }
    of
}

/// How many parts or faults are left when a verdict is stated.
fn left(library: &Library, fault: Id<Fault>, ambiguous: &[Vec<Id<Fault>>]) -> Option<usize> {
    let alone = [fault];
    let group = ambiguous.iter().find(|group| group.contains(&fault));
    let sizes = group.map_or(&alone[..], |group| group).iter().map(|fault| {
        let fault = &library.faults[*fault];
        (fault.remedy != Remedy::Refer).then(|| fault.group.len().max(1))
    });
    sizes.sum()
}

/// Faults that no question tells apart.
fn ambiguous(library: &Library, problem: &Problem, ways: &[Way]) -> Vec<Vec<Id<Fault>>> {
    let mut found: Vec<BTreeSet<Id<Fault>>> = Vec::new();
    for group in groups(problem) {
        let ends = group.iter().filter_map(|case| match ways[*case].end {
            End::Fault(fault) if weight(library, fault) > 0.0 => Some(fault),
            _ => None,
        });
        let mut together: BTreeSet<Id<Fault>> = ends.collect();
        // A fault may be in several groups, by several ways: they are one.
        found.retain(|other| {
            let apart = together.is_disjoint(other);
            if !apart {
                together.extend(other);
            }
            apart
        });
        found.push(together);
    }
    let several = found.into_iter().filter(|group| group.len() > 1);
    several.map(|group| group.into_iter().collect()).collect()
}

/// What is taken on some way and has no minutes.
fn unpriced(library: &Library, ways: &Ways) -> BTreeSet<Datum> {
    let takings = ways.ways.iter().flat_map(|way| &way.takings);
    let data = takings
        .filter(|taking| library[taking.at].minutes.is_none())
        .map(|taking| taking.what.datum);
    let unpriced = |datum: &Datum| match datum {
        Datum::Reading(id) => {
            let reading = &library.readings[*id];
            let measured = matches!(reading.source_of_value, crate::library::Obtained::Measured(_));
            measured && reading.taking.minutes.is_none()
        }
        Datum::Sign(id) => library.signs[*id].taking.minutes.is_none(),
        Datum::Field(_) => false,
    };
    data.filter(unpriced).collect()
}
