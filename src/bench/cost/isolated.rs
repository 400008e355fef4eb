//! How far faults are isolated.

use super::sequence::Isolation;

/// How far faults are isolated. A fault that is handed on is found, and not isolated.
#[derive(Clone, Debug, Default)]
pub struct Isolated {
    all: Isolation,
    named: Isolation,
}

impl Isolated {
    /// Of faults, each with its weight and how many are left.
    pub(super) fn of(faults: &[(f64, Option<usize>)]) -> Self {
        let all = faults
            .iter()
            .map(|(weight, left)| (*weight, left.unwrap_or(usize::MAX)));
        let named = faults
            .iter()
            .filter_map(|(weight, left)| Some((*weight, (*left)?)));
        Self {
            all: Isolation::of(all.collect()),
            named: Isolation::of(named.collect()),
        }
    }

    /// The fraction of all faults found, by weight, that is isolated to at most so many.
    pub fn fraction(&self, at_most: usize) -> Option<f64> {
        self.all.fraction(at_most)
    }

    /// How many are left on average where a fault is isolated.
    pub fn mean_size(&self) -> Option<f64> {
        self.named.mean_size()
    }
}
