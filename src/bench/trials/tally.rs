//! What many calls came to, added up.

use std::collections::BTreeMap;

use super::judge::Outcome;

/// A call that was wrong or missed, to be shown again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shown {
    /// The seed that plays it again.
    pub seed: u64,
    /// What it came to.
    pub outcome: Outcome,
    /// What it ended in.
    pub ended: String,
}

/// Most calls of a fault that are kept to be shown.
const KEPT: usize = 5;

/// The calls of one fault, or of several.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tally {
    /// How many.
    pub calls: usize,
    /// Right ones.
    pub right: usize,
    /// Referred ones.
    pub referred: usize,
    /// Missed ones.
    pub missed: usize,
    /// Wrong ones.
    pub wrong: usize,
    /// Minutes of all.
    pub minutes: f64,
    /// Minutes of the longest.
    pub most_minutes: f64,
    /// Steps of all.
    pub steps: usize,
    /// Steps of the longest.
    pub most_steps: usize,
    /// What they ended in, and how often.
    pub ended: BTreeMap<String, usize>,
    /// What they put the blame on, and how often: a part, a condition, or nothing.
    pub blamed: BTreeMap<String, usize>,
    /// The first that were wrong or missed, the wrong ones first.
    pub shown: Vec<Shown>,
}

impl Tally {
    /// Counts an outcome.
    pub fn count(&mut self, outcome: Outcome) {
        self.calls += 1;
        match outcome {
            Outcome::Right => self.right += 1,
            Outcome::Referred => self.referred += 1,
            Outcome::Missed => self.missed += 1,
            Outcome::Wrong => self.wrong += 1,
        }
    }

    /// Keeps a call to be shown: the wrong ones before the missed, of each the lowest seeds.
    pub fn keep(&mut self, shown: Shown) {
        self.shown.push(shown);
        self.shown
            .sort_by_key(|shown| (std::cmp::Reverse(shown.outcome), shown.seed));
        self.shown.truncate(KEPT);
    }

    /// Adds what other calls came to.
    pub fn add(&mut self, other: &Self) {
        self.calls += other.calls;
        self.right += other.right;
        self.referred += other.referred;
        self.missed += other.missed;
        self.wrong += other.wrong;
        self.minutes += other.minutes;
        self.most_minutes = self.most_minutes.max(other.most_minutes);
        self.steps += other.steps;
        self.most_steps = self.most_steps.max(other.most_steps);
        for (ended, count) in &other.ended {
            *self.ended.entry(ended.clone()).or_default() += count;
        }
        for (blamed, count) in &other.blamed {
            *self.blamed.entry(blamed.clone()).or_default() += count;
        }
        for shown in &other.shown {
            self.keep(shown.clone());
        }
    }

    /// Mean minutes of a call.
    pub fn mean_minutes(&self) -> f64 {
        self.minutes / self.calls.max(1) as f64
    }

    /// Mean steps of a call.
    pub fn mean_steps(&self) -> f64 {
        self.steps as f64 / self.calls.max(1) as f64
    }
}
