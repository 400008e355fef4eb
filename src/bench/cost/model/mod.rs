//! A tree as a problem of sequential testing.

mod likely;

use std::collections::{BTreeMap, BTreeSet};

use super::reorder::Guard;
use super::sequence::{Case, Misfit, Problem, Scale, Test};
use super::ways::{End, Taken, Way};
use crate::library::{Datum, Fault, Id, Library, Remedy};

/// A tree's ways as cases, and what is taken on them as tests.
#[derive(Clone, Debug)]
pub struct Model {
    /// The cases, one a way, and the tests, with no answer but those on the ways.
    pub known: Problem,
    /// The same with likely answers where none is known, and with what must come first.
    pub likely: Problem,
    /// For each way its tests in the order in which they are first sorted, with the position of the taking.
    pub orders: Vec<Vec<(usize, usize)>>,
}

/// How often a fault is met, relative to the others: what the registry says, and 1 where it says nothing. What is no fault
/// has no weight.
pub fn weight(library: &Library, fault: Id<Fault>) -> f64 {
    let fault = &library.faults[fault];
    match fault.remedy {
        Remedy::None | Remedy::Unresolved => 0.0,
        _ => fault.weight.unwrap_or(1.0),
    }
}

impl Model {
    /// The problem of a tree's ways.
    ///
    /// # Errors
    ///
    /// Where no way ends in a fault that has any weight.
    pub fn of(library: &Library, guard: &Guard<'_>, ways: &[Way]) -> Result<Self, Misfit> {
        let tests = Tests::of(ways);
        let shares = shares(ways);
        let orders: Vec<_> = ways.iter().map(|way| tests.order(way)).collect();
        let cases = ways.iter().enumerate().map(|(at, way)| {
            let asked: f64 = orders[at].iter().map(|(test, _)| tests.list[*test].cost).sum();
            let (class, weight, needed) = match way.end {
                End::Fault(fault) => {
                    let share = way.share / shares.get(&fault).copied().unwrap_or(1.0);
                    (
                        fault.index(),
                        weight(library, fault) * share,
                        needed(library, fault),
                    )
                }
                End::Outcome(outcome) => (library.faults.len() + outcome, 0.0, BTreeSet::new()),
            };
            Case {
                weight,
                class,
                // What a test costs here beyond its least, and whatever was taken only to be recorded.
                fixed: (way.minutes() - asked).max(0.0),
                sunk: proving(way, &orders[at], &needed),
            }
        });
        let cases: Vec<Case> = cases.collect();
        let likely = likely::tests(guard, ways, &orders, &cases, &tests.list);
        Ok(Self {
            known: Problem::new(cases.clone(), tests.list)?,
            likely: Problem::new(cases, likely)?,
            orders,
        })
    }
}

/// Of each fault, what its ways' shares add up to.
fn shares(ways: &[Way]) -> BTreeMap<Id<Fault>, f64> {
    let mut shares = BTreeMap::new();
    for way in ways {
        if let End::Fault(fault) = way.end {
            *shares.entry(fault).or_default() += way.share;
        }
    }
    shares
}

/// What a verdict's proofs need whichever of their alternatives holds.
fn needed(library: &Library, fault: Id<Fault>) -> BTreeSet<Datum> {
    let lines = library.proofs(fault).flat_map(|proof| &proof.lines);
    let needed = lines.flat_map(|line| {
        let alternatives = line.alternatives.iter();
        let data =
            alternatives.map(|claims| claims.iter().map(|claim| claim.datum()).collect::<BTreeSet<_>>());
        data.reduce(|one, other| &one & &other).unwrap_or_default()
    });
    needed.collect()
}

/// The tests of a way that its verdict is proven by: of what was taken several times, the last.
fn proving(way: &Way, order: &[(usize, usize)], needed: &BTreeSet<Datum>) -> Vec<usize> {
    let mut last: BTreeMap<Datum, (usize, usize)> = BTreeMap::new();
    for (test, taking) in order {
        let datum = way.takings[*taking].what.datum;
        let newest = last.entry(datum).or_insert((*taking, *test));
        *newest = (*newest).max((*taking, *test));
    }
    last.retain(|datum, _| needed.contains(datum));
    last.into_values().map(|(_, test)| test).collect()
}

/// What is taken and sorted on some way.
struct Tests<'w> {
    numbers: BTreeMap<&'w Taken, usize>,
    list: Vec<Test>,
}

impl<'w> Tests<'w> {
    fn of(ways: &'w [Way]) -> Self {
        let mut tests = Self {
            numbers: BTreeMap::new(),
            list: Vec::new(),
        };
        let mut scales: Vec<Vec<&[String]>> = Vec::new();
        for (case, way) in ways.iter().enumerate() {
            for taking in way.takings.iter().filter(|taking| !taking.shown.is_empty()) {
                let number = *tests.numbers.entry(&taking.what).or_insert_with(|| {
                    tests.list.push(Test {
                        cost: taking.minutes,
                        scales: Vec::new(),
                        needs: Vec::new(),
                    });
                    scales.push(Vec::new());
                    tests.list.len() - 1
                });
                let test = &mut tests.list[number];
                // What it costs beyond the least is a way's own.
                test.cost = test.cost.min(taking.minutes);
                for shown in &taking.shown {
                    let known = scales[number].iter().position(|scale| **scale == *shown.scale);
                    let at = known.unwrap_or_else(|| {
                        scales[number].push(&shown.scale);
                        test.scales.push(Scale {
                            answers: shown.scale.len(),
                            of: vec![None; ways.len()],
                        });
                        test.scales.len() - 1
                    });
                    test.scales[at].of[case] = Some(shown.answer);
                }
            }
        }
        tests
    }

    fn order(&self, way: &Way) -> Vec<(usize, usize)> {
        let mut order: Vec<(usize, usize)> = Vec::new();
        for sorted in &way.sorted {
            let test = self.numbers.get(&way.takings[sorted.taking].what);
            if let Some(test) = test.filter(|test| order.iter().all(|(known, _)| known != *test)) {
                order.push((*test, sorted.taking));
            }
        }
        order
    }
}
