//! Where a walk stands as its log is told: the step, and the trees that were entered on the way to it.

use std::sync::Arc;

/// Most trees that are kept; a log that was made to fill memory may enter more.
const MOST: usize = 2000;

/// Where a walk stands.
#[derive(Debug, Default)]
pub(super) struct Place {
    /// The step; none while it goes on from one.
    at: Option<Arc<str>>,
    /// Every tree that was entered, and what it was entered from. None is ever taken out, so that a place in it can be gone back to.
    entered: Vec<Within>,
    /// The tree it stands in, by position there; none before the first.
    within: Option<usize>,
}

/// A tree that was entered.
#[derive(Debug)]
struct Within {
    /// The step from which it was.
    from: Option<Arc<str>>,
    /// The tree of that step, by position.
    outer: Option<usize>,
    /// How many trees the walk stands in there.
    depth: usize,
}

/// A place to go back to.
#[derive(Debug)]
pub(super) struct Spot {
    at: Option<Arc<str>>,
    within: Option<usize>,
}

impl Place {
    /// Stands at a step.
    pub fn stand(&mut self, step: Arc<str>) {
        self.at = Some(step);
    }

    /// Stands at a step, which it most often does already.
    pub fn stay_at(&mut self, step: &str) {
        if self.at.as_deref() != Some(step) {
            self.at = Some(step.into());
        }
    }

    /// Goes on from the step it stands at.
    pub fn go_on(&mut self) -> Option<Arc<str>> {
        self.at.take()
    }

    /// Enters a tree at its first step.
    pub fn enter(&mut self, start: Arc<str>) {
        if self.entered.len() < MOST {
            let depth = self.within.map_or(0, |outer| self.entered[outer].depth);
            self.entered.push(Within {
                from: self.at.take(),
                outer: self.within,
                depth: depth + 1,
            });
            self.within = Some(self.entered.len() - 1);
        }
        self.at = Some(start);
    }

    /// Steps out of a tree: the walk stands where that was entered.
    pub fn step_out(&mut self) {
        if let Some(within) = self.within {
            self.at.clone_from(&self.entered[within].from);
            self.within = self.entered[within].outer;
        }
    }

    /// Steps out until it stands in so many trees.
    pub fn leave_all_but(&mut self, depth: usize) {
        while self
            .within
            .is_some_and(|within| self.entered[within].depth > depth)
        {
            self.step_out();
        }
    }

    /// Where it stands, to go back to.
    pub fn spot(&self) -> Spot {
        Spot {
            at: self.at.clone(),
            within: self.within,
        }
    }

    /// Goes back to where it stood.
    pub fn go_back(&mut self, Spot { at, within }: Spot) {
        (self.at, self.within) = (at, within);
    }
}
