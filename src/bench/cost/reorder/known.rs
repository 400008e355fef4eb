//! Questions that could be asked earlier, as the tree's own ways answer for it.

use std::collections::BTreeMap;

use super::guard::Guard;
use super::{Basis, Proposal};
use crate::bench::cost::model::Model;
use crate::bench::cost::sequence::Set;
use crate::bench::cost::ways::Way;
use crate::library::{Id, Library, Step, Tree};

/// The questions of a tree that could be asked before another of it, wherever the other is come to.
pub(super) fn proposals(
    library: &Library,
    guard: &Guard<'_>,
    tree: Id<Tree>,
    ways: &[Way],
    model: &Model,
) -> Vec<Proposal> {
    let mut look = Look {
        library,
        guard,
        tree,
        ways,
        model,
        met: BTreeMap::new(),
        gains: BTreeMap::new(),
    };
    look.at(&model.known.everything(), &[]);
    let met = look.met;
    let everywhere = look.gains.into_iter().filter(|((before, _), (times, _))| met.get(before) == Some(times));
    everywhere
        .map(|((before, asked), (_, gain))| Proposal {
            now: vec![before, asked],
            then: vec![asked, before],
            gain: gain / model.known.weight(),
            basis: Basis::Known,
        })
        .collect()
}

struct Look<'a> {
    library: &'a Library,
    guard: &'a Guard<'a>,
    tree: Id<Tree>,
    ways: &'a [Way],
    model: &'a Model,
    /// How often each question was come to, with different cases left.
    met: BTreeMap<Id<Step>, usize>,
    /// By a question and one to be asked before it: at how many of those places, and the gain at them all, by weight.
    gains: BTreeMap<(Id<Step>, Id<Step>), (usize, f64)>,
}

impl Look<'_> {
    /// Goes down the tree's own order, and at each question tries those that come later.
    fn at(&mut self, among: &Set, asked: &[usize]) {
        let Some((test, parts, asked_here)) = self.next(among, asked) else { return };
        if parts.len() > 1 {
            self.try_earlier(among, asked, test);
        }
        for part in parts {
            self.at(&part, &asked_here);
        }
    }

    fn try_earlier(&mut self, among: &Set, asked: &[usize], first: usize) {
        let Some(before) = self.step(among, first).filter(|step| self.library[*step].tree == self.tree) else {
            return;
        };
        *self.met.entry(before).or_default() += 1;
        let now = self.cost(among, asked);
        let later = among.iter().next().map(|case| self.model.orders[case].as_slice()).unwrap_or_default();
        for (test, _) in later.iter().filter(|(test, _)| *test != first && !asked.contains(test)) {
            let parts = self.model.known.split(among, *test).filter(|parts| parts.len() > 1);
            let step = self.step(among, *test).filter(|step| self.library[*step].tree == self.tree);
            let (Some(parts), Some(step)) = (parts, step) else { continue };
            if !among.iter().all(|case| self.may_come_first(case, *test, first)) {
                continue;
            }
            let asked: Vec<usize> = asked.iter().copied().chain([*test]).collect();
            let then: f64 = parts.iter().map(|part| self.cost(part, &asked)).sum();
            let gain = self.gains.entry((before, step)).or_default();
            gain.0 += 1;
            gain.1 += now - self.model.known.extra(among, *test) - then;
        }
    }

    /// What the tree's own order costs from here, by weight, beyond what every order pays: without the questions that
    /// decide nothing any more.
    fn cost(&self, among: &Set, asked: &[usize]) -> f64 {
        if self.model.known.is_settled(among) {
            return 0.0;
        }
        let Some((test, parts, asked_here)) = self.next(among, asked) else { return 0.0 };
        let extra = match parts.len() > 1 && !asked.contains(&test) {
            true => self.model.known.extra(among, test),
            false => 0.0,
        };
        extra + parts.iter().map(|part| self.cost(part, &asked_here)).sum::<f64>()
    }

    /// The tree's next question for some cases, and how it sorts them. A value that stands is sorted once more, where that
    /// sorts them further.
    fn next(&self, among: &Set, asked: &[usize]) -> Option<(usize, Vec<Set>, Vec<usize>)> {
        let problem = &self.model.known;
        let again = asked.iter().filter(|test| problem.tests()[**test].scales.len() > 1);
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

    /// The step that takes a test on all these ways; none where it is not one.
    fn step(&self, among: &Set, test: usize) -> Option<Id<Step>> {
        let mut steps = among.iter().map(|case| Some(self.taking(case, test)?.at));
        let first = steps.next()?;
        first.filter(|_| steps.all(|step| step == first))
    }

    fn taking(&self, case: usize, test: usize) -> Option<&super::super::ways::Taking> {
        let (_, taking) = self.model.orders[case].iter().find(|(known, _)| *known == test)?;
        self.ways[case].takings.get(*taking)
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
            && takings.into_iter().all(|other| other.after == taking.after && self.guard.may_pass(taking.at, other.at))
    }
}
