//! Worked calls: given these answers, the walk must end so.

use super::registry::{Fault, PlateField, Reading, Restore, Sign};
use super::table::Id;
use super::tree::{Severity, Tree};
use crate::source::Span;

/// A worked call.
#[derive(Clone, Debug)]
pub struct Scenario {
    /// What it shows.
    pub title: String,
    /// The name of its file without the ending.
    pub name: String,
    /// Where its title stands.
    pub at: Span,
    /// The tree it starts in.
    pub tree: Id<Tree>,
    /// Answers for the plate; each in turn, the last repeats.
    pub plate: Vec<(Id<PlateField>, Vec<String>)>,
    /// Answers for readings, as a technician would type them; each in turn, the last repeats.
    pub readings: Vec<(Id<Reading>, Vec<String>)>,
    /// Answers for signs, by the value's position; each in turn, the last repeats.
    pub signs: Vec<(Id<Sign>, Vec<usize>)>,
    /// Readings, signs and plate fields that cannot be taken.
    pub unable: Vec<super::registry::Datum>,
    /// Signs of which the technician is not sure.
    pub unsure: Vec<Id<Sign>>,
    /// How it must end.
    pub expect: Expect,
}

/// How a worked call must end.
#[derive(Clone, Debug, Default)]
pub struct Expect {
    /// The end, if one is demanded.
    pub end: Option<ExpectedEnd>,
    /// What the walk must have asked for.
    pub asked: Vec<super::registry::Datum>,
    /// What it must have left to be put back.
    pub put_back: Vec<Id<Restore>>,
    /// The severities on the job report, in order.
    pub findings: Option<Vec<Severity>>,
}

/// The end that is demanded.
#[derive(Clone, Debug, PartialEq)]
pub enum ExpectedEnd {
    /// In this verdict; of several noted ones, the last.
    Verdict(Id<Fault>),
    /// In this outcome of its tree, by position.
    Outcome(usize),
    /// Without a verdict.
    Unproven,
}
