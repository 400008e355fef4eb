//! What can be said of counts and waiting times, and how surely: pure functions, one file each.
//!
//! Each file says what its number means, its equation, where it holds, an example and where it comes from. A rate is a
//! count of a number of calls; an interval is of 95 % unless a function takes its level. What is too small to say
//! anything of says so rather than giving a number.

mod beta;
pub(super) mod binomial;
mod normal;

pub mod apart;
pub mod digits;
pub mod dispersion;
pub mod exact;
pub mod false_discovery;
pub mod funnel;
pub mod jeffreys;
pub mod p_chart;
pub mod partial_pooling;
pub mod shrinkage;
pub mod survival;
pub mod trend;
pub mod weights;
pub mod wilson;

#[cfg(test)]
mod tests;

pub use wilson::wilson;

/// The level of an interval where none is asked for.
pub const LEVEL: f64 = 0.95;

/// A number of calls, and how many of them had what is counted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Count {
    /// Calls that had it.
    pub count: u64,
    /// All calls of the group.
    pub of: u64,
}

impl Count {
    /// So many of so many; a count above all is all.
    pub fn new(count: u64, of: u64) -> Self {
        Self {
            count: count.min(of),
            of,
        }
    }

    /// The share; nothing where there were no calls.
    pub fn rate(self) -> Option<f64> {
        (self.of > 0).then(|| self.count as f64 / self.of as f64)
    }

    /// All of several groups together.
    pub fn sum(groups: &[Self]) -> Self {
        Self {
            count: groups.iter().map(|group| group.count).sum(),
            of: groups.iter().map(|group| group.of).sum(),
        }
    }
}
