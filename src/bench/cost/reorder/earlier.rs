//! Questions that could be asked earlier, the rest of the tree staying in its order.

use std::collections::{BTreeMap, BTreeSet};

use super::guard::Guard;
use super::{Basis, Proposal};
use crate::bench::cost::model::Model;
use crate::bench::cost::sequence::Set;
use crate::bench::cost::ways::{Taking, Way};
use crate::library::{Id, Library, Step, Tree};

/// The questions of a tree that could be asked before another of it, wherever the other is come to, with likely answers.
pub(super) fn proposals(
    library: &Library,
    guard: &Guard<'_>,
    tree: Id<Tree>,
    ways: &[Way],
    model: &Model,
) -> Vec<Proposal> {
    let needs = model.likely.tests().iter().flat_map(|test| &test.needs);
    let mut look = Look {
        library,
        guard,
        tree,
        ways,
        model,
        needed: needs.map(|need| need.test).collect(),
        met: BTreeMap::new(),
        gains: BTreeMap::new(),
    };
    look.at(&model.likely.everything(), &[]);
    let met = look.met;
    let everywhere = look
        .gains
        .into_iter()
        .filter(|((before, _), gain)| met.get(before) == Some(&gain.places));
    everywhere
        .map(|((before, asked), gain)| Proposal {
            now: vec![before, asked],
            then: vec![asked, before],
            gain: gain.weight / model.likely.weight(),
            basis: if gain.known { Basis::Known } else { Basis::ToJudge },
        })
        .collect()
}

/// What it spares to ask a question before another.
struct Gain {
    /// At how many places where the other is come to it may be.
    places: usize,
    /// At all of them, by weight.
    weight: f64,
    /// Everywhere all ways that are left ask it anyway.
    known: bool,
}

struct Look<'a> {
    library: &'a Library,
    guard: &'a Guard<'a>,
    tree: Id<Tree>,
    ways: &'a [Way],
    model: &'a Model,
    /// The tests that must have been asked before some other.
    needed: BTreeSet<usize>,
    /// How often each question was come to, with different cases left.
    met: BTreeMap<Id<Step>, usize>,
    /// By a question and one to be asked before it.
    gains: BTreeMap<(Id<Step>, Id<Step>), Gain>,
}

impl Look<'_> {
    /// Goes down the tree's own order, and at each question tries those that come later.
    fn at(&mut self, among: &Set, asked: &[usize]) {
        let Some((test, parts, asked_here)) = self.next(among, asked) else {
            return;
        };
        if parts.len() > 1 {
            self.try_earlier(among, asked, test);
        }
        for part in parts {
            self.at(&part, &asked_here);
        }
    }

    fn try_earlier(&mut self, among: &Set, asked: &[usize], first: usize) {
        let Some(before) = self
            .step(among, first)
            .filter(|step| self.library[*step].tree == self.tree)
        else {
            return;
        };
        *self.met.entry(before).or_default() += 1;
        let now = self.cost(among, asked);
        let problem = &self.model.likely;
        let mut before_it = Set::none(problem.tests().len());
        asked.iter().for_each(|test| before_it.insert(*test));
        let later = among
            .iter()
            .flat_map(|case| self.model.orders[case].iter().map(|(test, _)| *test));
        let later: BTreeSet<usize> = later
            .filter(|test| *test != first && !asked.contains(test))
            .collect();
        for test in later {
            let parts = problem.split(among, test).filter(|parts| parts.len() > 1);
            let step = self
                .step(among, test)
                .filter(|step| self.library[*step].tree == self.tree);
            let (Some(parts), Some(step)) = (parts, step) else {
                continue;
            };
            let asking = || among.iter().filter(|case| self.taking(*case, test).is_some());
            if !problem.may_ask(among, &before_it, test)
                || !asking().all(|case| self.may_come_first(case, test, first))
            {
                continue;
            }
            let asked: Vec<usize> = asked.iter().copied().chain([test]).collect();
            let then: f64 = parts.iter().map(|part| self.cost(part, &asked)).sum();
            let known = asking().count() == among.len();
            let gain = self.gains.entry((before, step)).or_insert(Gain {
                places: 0,
                weight: 0.0,
                known: true,
            });
            gain.places += 1;
            gain.weight += now - problem.extra(among, test) - then;
            gain.known &= known;
        }
    }

    /// What the tree's own order costs from here, by weight, beyond what every order pays: without the questions that
    /// decide nothing any more, unless others need them. Infinite where the order does not tell what is left apart.
    fn cost(&self, among: &Set, asked: &[usize]) -> f64 {
        let problem = &self.model.likely;
        if problem.is_settled(among) {
            return 0.0;
        }
        let Some((test, parts, asked_here)) = self.next(among, asked) else {
            return f64::INFINITY;
        };
        let is_asked = (parts.len() > 1 || self.needed.contains(&test)) && !asked.contains(&test);
        let extra = if is_asked { problem.extra(among, test) } else { 0.0 };
        extra + parts.iter().map(|part| self.cost(part, &asked_here)).sum::<f64>()
    }

    /// The tree's next question for some cases, and how it sorts them. A value that stands is sorted once more, where that
    /// sorts them further.
    fn next(&self, among: &Set, asked: &[usize]) -> Option<(usize, Vec<Set>, Vec<usize>)> {
        let problem = &self.model.likely;
        let again = asked
            .iter()
            .filter(|test| problem.tests()[**test].scales.len() > 1);
        let mut further = again.filter_map(|test| Some((*test, problem.split(among, *test)?)));
        if let Some((test, parts)) = further.find(|(_, parts)| parts.len() > 1) {
            return Some((test, parts, asked.to_vec()));
        }
        let case = among.iter().next()?;
        let mut order = self.model.orders[case].iter().map(|(test, _)| *test);
        let test = order.find(|test| !asked.contains(test))?;
        let parts = problem.split(among, test)?;
        Some((test, parts, asked.iter().copied().chain([test]).collect()))
    }

    /// The step that takes a test on all ways that take it; none where it is not one.
    fn step(&self, among: &Set, test: usize) -> Option<Id<Step>> {
        let mut steps = among.iter().filter_map(|case| Some(self.taking(case, test)?.at));
        let first = steps.next()?;
        steps.all(|step| step == first).then_some(first)
    }

    fn taking(&self, case: usize, test: usize) -> Option<&Taking> {
        let (_, taking) = self.model.orders[case].iter().find(|(known, _)| *known == test)?;
        self.ways[case].takings.get(*taking).map(|taking| &**taking)
    }

    /// On this way a test may be asked before another that now comes first: no work lies between, and it may pass each
    /// question on the way back.
    fn may_come_first(&self, case: usize, test: usize, first: usize) -> bool {
        let order = &self.model.orders[case];
        let at = |test| order.iter().position(|(known, _)| *known == test);
        let (Some(from), Some(to), Some(taking)) = (at(first), at(test), self.taking(case, test)) else {
            return false;
        };
        let passed = order.get(from..to).unwrap_or_default();
        let takings = passed.iter().map(|(_, number)| &self.ways[case].takings[*number]);
        to > from
            && takings
                .into_iter()
                .all(|other| other.after == taking.after && self.guard.may_pass(taking.at, other.at))
    }
}
