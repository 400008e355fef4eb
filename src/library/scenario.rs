//! Worked calls: given these answers, the walk must end so.

use super::registry::{Datum, Fault, PlateField, Reading, Restore, Sign};
use super::table::Id;
use super::tree::{Severity, Tree};
use crate::source::Span;

/// Something that a worked call names, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Placed<T> {
    /// What.
    pub what: T,
    /// Where it stands.
    pub at: Span,
}

/// The answers of a worked call for one thing: each in turn, the last repeats.
#[derive(Clone, Debug)]
pub struct Given<K, V> {
    /// For what.
    pub of: K,
    /// Where its name stands.
    pub at: Span,
    /// The answers.
    pub answers: Vec<V>,
}

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
    /// Answers for the plate.
    pub plate: Vec<Given<Id<PlateField>, String>>,
    /// Answers for readings, as a technician would type them.
    pub readings: Vec<Given<Id<Reading>, String>>,
    /// Answers for signs, by the value's position.
    pub signs: Vec<Given<Id<Sign>, usize>>,
    /// Readings, signs and plate fields that cannot be taken.
    pub unable: Vec<Placed<Datum>>,
    /// Signs of which the technician is not sure.
    pub unsure: Vec<Placed<Id<Sign>>>,
    /// How it must end.
    pub expect: Expect,
}

/// How a worked call must end.
#[derive(Clone, Debug, Default)]
pub struct Expect {
    /// The end, if one is demanded.
    pub end: Option<Placed<ExpectedEnd>>,
    /// What the walk must have asked for.
    pub asked: Vec<Placed<Datum>>,
    /// What it must have left to be put back.
    pub put_back: Vec<Placed<Id<Restore>>>,
    /// Where it says, with an empty list, that it must have left nothing to be put back.
    pub leaves_nothing: Option<Span>,
    /// The severities on the job report, in order.
    pub findings: Option<Placed<Vec<Severity>>>,
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

impl Scenario {
    /// Everything it has an answer for, that it cannot take, or is not sure of, with the place of each.
    pub fn answered(&self) -> impl Iterator<Item = Placed<Datum>> + '_ {
        let placed = |what, at| Placed { what, at };
        let plate = (self.plate.iter()).map(move |given| placed(Datum::Field(given.of), given.at));
        let readings = (self.readings.iter()).map(move |given| placed(Datum::Reading(given.of), given.at));
        let signs = (self.signs.iter()).map(move |given| placed(Datum::Sign(given.of), given.at));
        let unsure = (self.unsure.iter()).map(move |sign| placed(Datum::Sign(sign.what), sign.at));
        (plate.chain(readings).chain(signs))
            .chain(self.unable.iter().cloned())
            .chain(unsure)
    }
}
