//! What a practice call has cost so far.

use crate::library::{Id, Reading};

/// What a practice call has cost so far.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Score {
    /// Minutes, by what the registry says that each answer takes.
    pub minutes: f64,
    /// Probes that were put elsewhere than asked.
    pub misplaced: Vec<Misplaced>,
    /// The gate was left out.
    pub gate_skipped: bool,
}

/// A probe that was put elsewhere than asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Misplaced {
    /// What was asked for.
    pub asked: Id<Reading>,
    /// What is measured there.
    pub put: Id<Reading>,
    /// Minutes that it took.
    pub minutes: f64,
}

impl Score {
    /// Minutes that misplaced probes took.
    pub fn minutes_misplaced(&self) -> f64 {
        self.misplaced.iter().map(|misplaced| misplaced.minutes).sum()
    }
}
