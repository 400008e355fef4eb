//! What no test tells apart.
//!
//! The terms are those of IEEE Std 1522, *Testability and Diagnosability Characteristics and Metrics* (from memory): an
//! *ambiguity group* is a set of faults that the tests do not tell apart; the *fraction of faults isolated* to groups of at
//! most so many is weighed by how often each fault is met.

use super::problem::Problem;
use super::set::Set;

/// The cases in groups: two that no test tells apart are in one, and whatever hangs together so.
///
/// Where answers are unknown, a case may be told from neither of two that are told apart: then all three are one group. So
/// groups may be too large, never too small.
pub fn groups(problem: &Problem) -> Vec<Vec<usize>> {
    let mut found = Vec::new();
    let mut waiting = vec![problem.everything()];
    while let Some(among) = waiting.pop() {
        // Cases that a test sorts apart are told apart: only within a part must pair be compared with pair.
        let mut splits = (0..problem.tests().len()).filter_map(|test| problem.split(&among, test));
        match splits.find(|parts| parts.len() > 1) {
            Some(parts) => waiting.extend(parts),
            None => found.extend(hanging_together(problem, &among)),
        }
    }
    found.sort();
    found
}

fn hanging_together(problem: &Problem, among: &Set) -> Vec<Vec<usize>> {
    let mut left: Vec<usize> = among.iter().collect();
    let mut found = Vec::new();
    while let Some(first) = left.pop() {
        let mut group = vec![first];
        let mut at = 0;
        while let Some(case) = group.get(at).copied() {
            let (apart, alike): (Vec<_>, Vec<_>) = left
                .into_iter()
                .partition(|other| problem.tells_apart(case, *other));
            left = apart;
            group.extend(alike);
            at += 1;
        }
        group.sort_unstable();
        found.push(group);
    }
    found
}

/// How far faults are isolated: each with its weight and the size of the group that it is isolated to.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Isolation {
    faults: Vec<(f64, usize)>,
}

impl Isolation {
    /// Of faults, each with its weight and the size of its group.
    pub fn of(faults: Vec<(f64, usize)>) -> Self {
        Self { faults }
    }

    /// The fraction that is isolated to at most so many, by weight; none where nothing has any weight.
    pub fn fraction(&self, at_most: usize) -> Option<f64> {
        let isolated = self.faults.iter().filter(|(_, size)| *size <= at_most);
        self.share(isolated.map(|(weight, _)| weight).sum())
    }

    /// How many are in a group, on the average over what is met; none where nothing has any weight.
    pub fn mean_size(&self) -> Option<f64> {
        self.share(
            self.faults
                .iter()
                .map(|(weight, size)| weight * *size as f64)
                .sum(),
        )
    }

    fn share(&self, part: f64) -> Option<f64> {
        let all: f64 = self.faults.iter().map(|(weight, _)| weight).sum();
        (all > 0.0).then(|| part / all)
    }
}
