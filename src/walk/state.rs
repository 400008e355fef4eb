//! Where a call stands: nothing but its events, folded.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt;
use std::sync::{Arc, OnceLock};

use litemap::LiteMap;

use super::event::{Doubt, End, Opened, Role};
use crate::library::{Datum, EdgeId, Fault, Finding, Id, Restore, Step, Tree};
use crate::measure::Quantity;

/// Where a call stands.
#[derive(Clone, Debug, Default)]
pub struct State {
    /// How it was opened; none before it was.
    pub opened: Option<Opened>,
    /// Where the walk is, and what it knows there.
    pub moment: Moment,
    /// The moments before each answer, with what was answered.
    pub trail: Vec<Answered>,
    /// What is open, in the order it was opened.
    pub open: Vec<Id<Restore>>,
    /// What was put back or refused at the end, in order.
    pub put_backs: Vec<PutBackDone>,
    /// What could not be taken, and why.
    pub could_not: BTreeMap<Datum, String>,
    /// What was asked for.
    pub asked: BTreeSet<Datum>,
    /// Everything that was ever opened.
    pub ever_open: BTreeSet<Id<Restore>>,
    /// What work has made void, with the number of the answer after which it did.
    pub work_voids: Vec<(usize, Datum)>,
    /// What the technician wrote down.
    pub notes: Vec<String>,
    /// Verdicts that were withheld, in order.
    pub withheld: Vec<Id<Fault>>,
    /// How the walk ended, once it has.
    pub ended: Option<End>,
    /// How it had ended before a danger interrupted the putting back.
    pub interrupted: Option<Interrupted>,
    /// The call is closed.
    pub closed: bool,
    /// Numbers the answers, those taken back included.
    pub answers: usize,
}

/// An end that a danger interrupted, with what stood then: what was proven stays on the job report.
#[derive(Clone, Debug)]
pub struct Interrupted {
    /// How the walk had ended.
    pub end: End,
    /// What was fresh.
    pub values: LiteMap<Datum, Arc<Standing>>,
}

/// The part of a state that going back restores.
#[derive(Clone, Debug, Default)]
pub struct Moment {
    /// The tree of the complaint.
    pub complaint: Option<Id<Tree>>,
    /// The trees it stands in, outermost first.
    pub frames: Vec<Frame>,
    /// What is fresh.
    pub values: LiteMap<Datum, Arc<Standing>>,
    /// What is on the job report, with the edge that put it there.
    pub findings: Arc<Vec<(EdgeId, Finding)>>,
    /// Verdicts that were stated, in order.
    pub stated: Vec<Id<Fault>>,
    /// Verdicts that were noted, in order, with the trees that were left for them.
    pub noted: Vec<Noted>,
    /// A value that is asked for again, and why.
    pub doubted: Option<Doubted>,
    /// Doubts raised since the last edge: each is raised once, and the next value stands.
    pub raised: BTreeSet<(Datum, Doubt)>,
    /// What is being taken out of turn.
    pub retaking: Option<Retaking>,
}

/// A verdict that was noted, so that the walk went on around it.
#[derive(Clone, Debug, PartialEq)]
pub struct Noted {
    /// Which.
    pub fault: Id<Fault>,
    /// The trees that were left for it, the visited one first, as the walk stood in them.
    pub left: Vec<Frame>,
}

/// A tree that the walk stands in.
#[derive(Clone, Debug, PartialEq)]
pub struct Frame {
    /// Which.
    pub tree: Id<Tree>,
    /// The step it is at.
    pub step: Id<Step>,
    /// Why it was entered.
    pub role: Role,
    /// How often each bounded edge was taken since.
    pub counts: LiteMap<EdgeId, u32>,
}

/// A value that stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// The value.
    pub value: Value,
    /// As it was typed or chosen.
    pub typed: String,
    /// Half the width of what the meter leaves open, in base units.
    pub margin: f64,
    /// It lay that close to a bound of the step that asked for it.
    pub borderline: bool,
    /// The number of the answer that gave it.
    pub answer: usize,
}

/// A value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Value {
    /// A number.
    Number(Quantity),
    /// One of the values of a sign or a plate field.
    Choice(usize),
}

/// A value that is asked for again.
#[derive(Clone, Debug, PartialEq)]
pub struct Doubted {
    /// Of what.
    pub datum: Datum,
    /// What was given.
    pub typed: String,
    /// Why.
    pub why: Doubt,
    /// Against what.
    pub against: String,
}

/// What is being taken out of turn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Retaking {
    /// What.
    pub datum: Datum,
    /// For a proof.
    pub for_proof: bool,
}

/// One answer of the trail.
#[derive(Clone, Debug)]
pub struct Answered {
    /// Where the walk stood before it; shared, since a state is copied for every answer.
    pub before: Arc<Moment>,
    /// The faults that were possible then.
    pub(super) were_possible: WerePossible,
    /// What was answered.
    pub what: What,
    /// In words.
    pub answer: String,
    /// It lay close to a bound.
    pub borderline: bool,
    /// A value was given; otherwise it could not be taken, or work was done.
    pub given: bool,
    /// What was worked out after it, before anything else was asked.
    pub worked_out: Vec<CameOut>,
    /// What steps after it would have asked for and what stood already, so that they were passed.
    pub stood: Vec<CameOut>,
    /// Its number, counted through the whole call.
    pub number: usize,
}

/// The faults that were possible at a moment, kept once they were asked for: looking for them goes through the whole
/// library, and what was before an answer never changes. Copies of a state share it.
#[derive(Clone, Default)]
pub(super) struct WerePossible(Arc<OnceLock<Vec<Id<Fault>>>>);

impl fmt::Debug for WerePossible {
    // A state is nothing but its events, folded: it shows the same whether this was asked for or not.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("WerePossible")
    }
}

/// A value that nobody was asked for: it was worked out, or stood already.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CameOut {
    /// Which.
    pub datum: Datum,
    /// The value in words.
    pub value: String,
    /// What it means, at the step that asked for it.
    pub means: Option<String>,
}

/// What an answer was about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// A reading, a sign or a plate field.
    Datum(Datum),
    /// A step's work.
    Work(Id<Step>),
}

/// A put-back that was done or refused.
#[derive(Clone, Debug, PartialEq)]
pub struct PutBackDone {
    /// What.
    pub restore: Id<Restore>,
    /// Why it stays open, where it does.
    pub refused: Option<String>,
}

impl Answered {
    /// The faults that were possible before it, looked for the first time that they are asked for.
    pub(super) fn was_possible(&self, look: impl FnOnce(&Moment) -> Vec<Id<Fault>>) -> &[Id<Fault>] {
        self.were_possible.0.get_or_init(|| look(&self.before))
    }
}

impl Moment {
    /// Forgets what was being asked in a particular way: the question is asked anew.
    pub(super) fn ask_anew(&mut self) {
        self.doubted = None;
        self.raised.clear();
        self.retaking = None;
    }
}

impl State {
    /// Whether a danger ended the walk: then nothing more is asked.
    pub fn ended_in_danger(&self) -> bool {
        matches!(self.ended, Some(End::Verdict { danger: true, .. }))
    }

    /// The frame on top: the tree the walk is in.
    pub fn top(&self) -> Option<&Frame> {
        self.moment.frames.last()
    }

    /// The value that stands for a datum.
    pub fn value(&self, datum: Datum) -> Option<&Standing> {
        self.moment.values.get(&datum).map(Arc::as_ref)
    }

    /// The number that stands for a plate field.
    pub fn field(&self, field: Id<crate::library::PlateField>) -> Option<Quantity> {
        self.value(Datum::Field(field))?.value.number()
    }
}

impl Value {
    /// The number, where it is one.
    pub fn number(self) -> Option<Quantity> {
        match self {
            Self::Number(quantity) => Some(quantity),
            Self::Choice(_) => None,
        }
    }
}
