//! Many calls at many furnaces, each verdict held against the truth.
//!
//! A call is drawn by its fault's name and its own seed, so that one call out of thousands can be played again: call `k` of a
//! run with seed `s` has the seed `s + k`.

mod call;
mod complaint;
mod judge;
mod occasion;
mod play;
mod run;
mod tally;

pub use call::{Door, Walked, cost, walk};
pub use complaint::complaint;
pub use judge::{Ending, Outcome, ending, judge, judge_verdict};
pub use occasion::Occasion;
pub use play::{Drawn, Played, Subject, draw, play};
pub use run::{Plan, Stopped, run};
pub use tally::{Shown, Tally};

/// What a plan came to.
#[derive(Clone, Debug, Default)]
pub struct Trials {
    /// Each subject of the plan with its calls, in the plan's order.
    pub by_fault: Vec<(Subject, Tally)>,
}

impl Trials {
    /// All calls together.
    pub fn sum(&self) -> Tally {
        self.sum_of(|_| true)
    }

    /// The calls of some of the subjects together.
    pub fn sum_of(&self, which: impl Fn(&Subject) -> bool) -> Tally {
        let mut sum = Tally::default();
        for (_, tally) in self.by_fault.iter().filter(|(subject, _)| which(subject)) {
            sum.add(tally);
        }
        sum
    }
}
