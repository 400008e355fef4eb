//! Every way through a tree, from its start to an end, with what is taken and done on it.
//!
//! A way is a list of answers: a band, or a value of a sign or of the plate. It is walked as a call is: what was taken
//! stands until work voids it, bounded edges are counted, visits return. What a technician cannot take or is not sure of is not
//! on any way, nor is a second taking close to a bound: a way is what happens when all goes well.
//!
//! A way that notes two different faults is left out, as one fault is there; so is a band where the number is known to lie
//! elsewhere, as far as bounds say so that do not lean on the plate.

mod scales;
mod walker;

use std::collections::BinaryHeap;
use std::rc::Rc;

use crate::library::{Datum, Fault, Id, Library, Step, Tree};
use scales::Scales;
use walker::{Next, Walker};

/// How much may be taken on all ways together: what is made of them grows with their number and their length.
const MOST_TAKINGS: usize = 50_000;

/// How a way ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum End {
    /// In a verdict; of those that are noted on the way, that one.
    Fault(Id<Fault>),
    /// In an outcome of the tree, by position.
    Outcome(usize),
}

/// A way through a tree.
#[derive(Clone, Debug)]
pub struct Way {
    /// How it ends.
    pub end: End,
    /// How likely it is, were each answer to a question as likely as another.
    pub share: f64,
    /// What was taken, in order; ways that have it in common share it.
    pub takings: Vec<Rc<Taking>>,
    /// The work that was done, in order.
    pub work: Vec<Work>,
    /// The steps that sorted a value, in order.
    pub sorted: Vec<Sorted>,
}

/// Something that was taken: a reading, a sign, a plate field.
#[derive(Clone, Debug)]
pub struct Taking {
    /// What, and after what.
    pub what: Taken,
    /// The step that asked for it.
    pub at: Id<Step>,
    /// The minutes that it took, those of what it was worked out from included.
    pub minutes: f64,
    /// How much work had been done before it.
    pub after: usize,
    /// What it showed, on each scale that it was sorted on.
    pub shown: Vec<Shown>,
}

/// What was taken. Taken anew after work that changed it, it is something else.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Taken {
    /// The reading, sign or plate field.
    pub datum: Datum,
    /// The work that has voided it so far.
    pub since: Vec<Id<Step>>,
}

/// A scale that a value was sorted on, and where it lay.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shown {
    /// The answers that there are, in the order of their text: bands with the same bands are one scale, wherever they stand.
    pub scale: Rc<[String]>,
    /// Which of them it was.
    pub answer: usize,
}

/// Work that was done.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Work {
    /// The step.
    pub at: Id<Step>,
    /// The minutes that it took.
    pub minutes: f64,
}

/// A step that sorted a value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sorted {
    /// The step.
    pub at: Id<Step>,
    /// The taking whose value it was, by position.
    pub taking: usize,
    /// Its answer, by position.
    pub answer: usize,
    /// The value was taken for it, and did not stand already.
    pub fresh: bool,
}

/// The ways of a tree.
#[derive(Clone, Debug, Default)]
pub struct Ways {
    /// Those that were followed to their end, the likeliest first.
    pub ways: Vec<Way>,
    /// Some were not followed: those that are less likely than most that were, or too long.
    pub cut: bool,
}

impl Way {
    /// The minutes that it takes.
    pub fn minutes(&self) -> f64 {
        let takings = self.takings.iter().map(|taking| taking.minutes);
        takings.chain(self.work.iter().map(|work| work.minutes)).sum()
    }
}

/// The ways of a tree, as far as there are no more than `most`; where there are more, the likeliest.
pub fn ways(library: &Library, tree: Id<Tree>, most: usize) -> Ways {
    let mut found = Ways::default();
    let Some(start) = library.trees[tree].start else {
        return found;
    };
    let scales = Scales::default();
    let mut takings = 0;
    let mut waiting = BinaryHeap::from([Walker::at(start)]);
    while let Some(walker) = waiting.pop() {
        if found.ways.len() == most || takings > MOST_TAKINGS {
            found.cut = true;
            break;
        }
        match walker.on(library, &scales) {
            Next::Branches(branches) => {
                waiting.extend(branches);
                if waiting.len() > 4 * most {
                    // A tree may have more ways than there is room for, and the likely ones come first.
                    found.cut = true;
                    let mut kept = std::mem::take(&mut waiting).into_sorted_vec();
                    waiting = kept.split_off(kept.len() - most).into();
                }
            }
            Next::End(way) => {
                takings += way.takings.len();
                found.ways.push(*way);
            }
            Next::TooLong => found.cut = true,
            Next::Nowhere => {}
        }
    }
    found
}
