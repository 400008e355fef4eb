//! The cheapest order of tests, found by looking at every set of cases that can be left.

use std::collections::HashMap;
use std::fmt;

use super::problem::Problem;
use super::set::Set;

/// The cheapest order.
#[derive(Clone, Debug, PartialEq)]
pub struct Optimum {
    /// What it costs on average over the cases, with all that every order pays.
    pub cost: f64,
    /// The order; of several that cost the same, one.
    pub plan: Plan,
}

/// What to ask, and what to ask then.
#[derive(Clone, Debug, PartialEq)]
pub enum Plan {
    /// Nothing more: these cases are left.
    Stop(Vec<usize>),
    /// A test, and how to go on by what it shows.
    Ask {
        /// Which.
        test: usize,
        /// For each answer that one of the cases gives.
        then: Vec<Plan>,
    },
}

/// Why the cheapest order was not found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoOptimum {
    /// There are more sets of cases than there was patience for.
    TooLarge,
    /// With what is known, no order tells apart all that could be told apart.
    Unsettled,
}

impl fmt::Display for NoOptimum {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::TooLarge => "too many sets of cases can be left to look at them all",
            Self::Unsettled => "no order tells all cases apart with the answers that are known",
        })
    }
}

impl std::error::Error for NoOptimum {}

/// The cheapest order, exactly: dynamic programming over the sets of cases that can be left, for tests of any number of
/// answers and any costs.
///
/// It ends where all that is left is of one class, or is what no test tells apart. A test is asked only among cases whose
/// answers to it are all known, and when what it needs was asked. `patience` is how often a case may be looked at before it gives up.
///
/// # Errors
///
/// Where that does not suffice, or where what is known does not.
pub fn optimum(problem: &Problem, patience: usize) -> Result<Optimum, NoOptimum> {
    let mut needed = Set::none(problem.tests().len());
    let needs = problem.tests().iter().flat_map(|test| &test.needs);
    needs.for_each(|need| needed.insert(need.test));
    let mut search = Search {
        problem,
        needed,
        known: HashMap::new(),
        left: patience,
    };
    let all = problem.everything();
    let nothing = Set::none(problem.tests().len());
    let cost = search.cost(&all, &nothing).ok_or(NoOptimum::TooLarge)?;
    if cost.is_infinite() {
        return Err(NoOptimum::Unsettled);
    }
    Ok(Optimum {
        cost: problem.unavoidable() + cost / problem.weight(),
        plan: search.plan(&all, &nothing),
    })
}

/// The cases that are left, and the tests that were asked, as far as it matters that they were.
type Left = (Set, Set);

struct Search<'p> {
    problem: &'p Problem,
    /// The tests that others need.
    needed: Set,
    /// What it costs to go on from there, and with which test.
    known: HashMap<Left, (f64, Option<usize>)>,
    left: usize,
}

impl Search<'_> {
    /// What it costs to go on, by weight, beyond what every order pays; infinite where it cannot be settled, none where the
    /// patience is at an end.
    fn cost(&mut self, among: &Set, asked: &Set) -> Option<f64> {
        if self.problem.is_settled(among) {
            return Some(0.0);
        }
        let key = (among.clone(), asked.clone());
        if let Some((cost, _)) = self.known.get(&key) {
            return Some(*cost);
        }
        let (cost, test) = self.best(among, asked)?;
        self.known.insert(key, (cost, test));
        Some(cost)
    }

    fn best(&mut self, among: &Set, asked: &Set) -> Option<(f64, Option<usize>)> {
        let mut offers = Vec::new();
        for test in 0..self.problem.tests().len() {
            self.left = self.left.checked_sub(among.len())?;
            if !self.problem.may_ask(among, asked, test) {
                continue;
            }
            let again = asked.contains(test);
            let parts = self.problem.split(among, test);
            // What others need is of use though it decides nothing, but only once.
            let of_use = |parts: &Vec<Set>| parts.len() > 1 || (self.is_needed(test) && !again);
            let Some(parts) = parts.filter(of_use) else {
                continue;
            };
            let extra = if again {
                0.0
            } else {
                self.problem.extra(among, test)
            };
            if extra == 0.0 {
                // Whatever goes on from here goes on from each part as well, for no more: what is free is asked at once.
                let cost = self.all(&parts, &self.asked_with(asked, test))?;
                return Some((cost, Some(test)));
            }
            offers.push((extra, test, parts));
        }
        let splits = offers.iter().any(|(.., parts)| parts.len() > 1);
        if offers.is_empty() || (!splits && self.stuck(among) == 0.0) {
            return Some((self.stuck(among), None));
        }
        offers.sort_by(|(one, ..), (other, ..)| one.total_cmp(other));
        let mut best = (f64::INFINITY, None);
        for (extra, test, parts) in offers {
            if extra < best.0 {
                let cost = extra + self.all(&parts, &self.asked_with(asked, test))?;
                if cost < best.0 {
                    best = (cost, Some(test));
                }
            }
        }
        Some(best)
    }

    fn all(&mut self, parts: &[Set], asked: &Set) -> Option<f64> {
        let mut sum = 0.0;
        for part in parts {
            sum += self.cost(part, asked)?;
        }
        Some(sum)
    }

    fn asked_with(&self, asked: &Set, test: usize) -> Set {
        let mut asked = asked.clone();
        // A test with one scale that nothing needs is of no use any more: that it was asked need not be remembered.
        if self.is_needed(test) || self.problem.tests()[test].scales.len() > 1 {
            asked.insert(test);
        }
        asked
    }

    fn is_needed(&self, test: usize) -> bool {
        self.needed.contains(test)
    }

    /// Nothing more can be asked: that is an end only where no test tells the classes apart that are left.
    fn stuck(&self, among: &Set) -> f64 {
        let cases: Vec<usize> = among.iter().collect();
        let class = |case: &usize| self.problem.cases()[*case].class;
        let apart =
            |one: &usize, other: &usize| class(one) != class(other) && self.problem.tells_apart(*one, *other);
        let mut pairs = cases.iter().enumerate();
        match pairs.any(|(at, one)| cases[at + 1..].iter().any(|other| apart(one, other))) {
            true => f64::INFINITY,
            false => 0.0,
        }
    }

    fn plan(&self, among: &Set, asked: &Set) -> Plan {
        let known = self.known.get(&(among.clone(), asked.clone()));
        let Some(test) = known.and_then(|(_, test)| *test) else {
            return Plan::Stop(among.iter().collect());
        };
        let parts = self.problem.split(among, test).unwrap_or_default();
        let asked = self.asked_with(asked, test);
        Plan::Ask {
            test,
            then: parts.iter().map(|part| self.plan(part, &asked)).collect(),
        }
    }
}
