//! Trees and their steps, once every name in them is resolved.

use super::registry::{Caution, Datum, Fault, PlateField, Reading, Restore, Sign, Source};
use super::table::Id;
use crate::measure::Band;
use crate::source::Span;

/// One fault tree.
#[derive(Clone, Debug)]
pub struct Tree {
    /// What it is called on a screen.
    pub title: String,
    /// How far it is trusted.
    pub status: Status,
    /// Where that is written: the `status` key, or the `tree` key where there is none.
    pub status_at: Span,
    /// What the owner says; absent where the tree is only visited.
    pub complaint: Option<String>,
    /// What it can return.
    pub outcomes: Vec<Outcome>,
    /// The first step; absent where its name does not resolve.
    pub start: Option<Id<Step>>,
    /// Its steps, a stretch of the library's.
    pub steps: std::ops::Range<usize>,
    /// The author's edition of the tree.
    pub edition: Option<String>,
    /// What changed last.
    pub changed: Option<String>,
}

/// How far a tree is trusted.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Status {
    /// Being written.
    #[default]
    Draft,
    /// Being tried on real calls.
    FieldTrial,
    /// In use.
    Approved,
}

impl Status {
    /// Every status, from the first to the last.
    pub const ALL: [Self; 3] = [Self::Draft, Self::FieldTrial, Self::Approved];

    /// As the format writes it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Draft => "draft",
            Self::FieldTrial => "field-trial",
            Self::Approved => "approved",
        }
    }
}

/// A way in which a tree can return.
#[derive(Clone, Debug)]
pub struct Outcome {
    /// Its name.
    pub name: String,
    /// Where that stands.
    pub at: Span,
}

/// One step of a tree.
#[derive(Clone, Debug)]
pub struct Step {
    /// Its name.
    pub name: String,
    /// Where that stands.
    pub at: Span,
    /// The tree it belongs to.
    pub tree: Id<Tree>,
    /// What it does.
    pub kind: Kind,
    /// A heading of its own.
    pub title: Option<String>,
    /// Why it is asked here.
    pub why: Option<String>,
    /// What can hurt, beside what the reading or sign says itself.
    pub cautions: Vec<Id<Caution>>,
    /// Where its thresholds come from.
    pub source: Option<Id<Source>>,
    /// Minutes it takes.
    pub minutes: Option<f64>,
    /// Where its answers are written: the `bands`, `choices` or `returns` key.
    pub answers_at: Option<Span>,
}

/// What a step does.
#[derive(Clone, Debug)]
pub enum Kind {
    /// Asks for a reading.
    Measure {
        /// Which.
        reading: Id<Reading>,
        /// Where each value leads.
        answers: Answers,
        /// Where it leads when it cannot be taken.
        unable: Option<Edge>,
        /// How to take it here.
        how: Option<String>,
    },
    /// Asks for a sign.
    Observe {
        /// Which.
        sign: Id<Sign>,
        /// Where each value leads.
        answers: Answers,
        /// Where it leads when the technician cannot tell.
        unsure: Option<Edge>,
        /// Where it leads when it cannot be seen.
        unable: Option<Edge>,
        /// How to look here.
        how: Option<String>,
    },
    /// Has something done.
    Do {
        /// What.
        text: String,
        /// What comes then.
        go: Edge,
        /// What was taken before and no longer counts.
        voids: Vec<Datum>,
        /// What it opens.
        leaves: Vec<Id<Restore>>,
        /// What it puts back.
        restores: Vec<Id<Restore>>,
    },
    /// Reads the rating plate.
    Plate {
        /// Which field.
        field: Id<PlateField>,
        /// Where each value leads.
        answers: Answers,
        /// Where it leads when the plate cannot be read.
        unable: Option<Edge>,
    },
    /// Walks another tree.
    Visit {
        /// Which.
        tree: Id<Tree>,
        /// Where each of its outcomes leads, in the order of the outcomes' positions in that tree; see [`return_edge`].
        returns: Vec<(usize, Edge)>,
        /// Where a verdict inside leads; without it, the verdict ends the walk.
        on_verdict: Option<Edge>,
    },
    /// Ends in a verdict.
    Verdict {
        /// Which.
        fault: Id<Fault>,
        /// Why it follows.
        because: String,
        /// What to tell the owner.
        advice: Option<String>,
    },
    /// Returns to the tree that visited this one.
    Return {
        /// With which outcome, by its position in the tree.
        outcome: usize,
    },
    /// Names something that is not there. The rules pass such a step by; a walk that reached it would end unproven.
    Unresolved {
        /// Those of its edges that could be read.
        edges: Vec<Edge>,
        /// Another one leads to a name that is not there: it may have meant any step.
        lost: bool,
        /// The tree that it visits, where that is known.
        visited: Option<Id<Tree>>,
    },
}

/// Where the answers to a question lead.
#[derive(Clone, Debug)]
pub enum Answers {
    /// Whatever the answer is.
    Go(Edge),
    /// By the value.
    Bands(Vec<BandAnswer>),
    /// By the choice.
    Choices(Vec<ChoiceAnswer>),
}

/// A band and where it leads.
#[derive(Clone, Debug)]
pub struct BandAnswer {
    /// Where it stands.
    pub at: Span,
    /// As the author wrote it.
    pub text: String,
    /// The values it takes.
    pub band: Band<Id<PlateField>>,
    /// Where it leads.
    pub edge: Edge,
}

/// A choice and where it leads.
#[derive(Clone, Debug)]
pub struct ChoiceAnswer {
    /// Where it stands.
    pub at: Span,
    /// Which value of the sign or plate field.
    pub value: usize,
    /// Where it leads.
    pub edge: Edge,
}

/// The number of an edge in its library.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EdgeId(pub u32);

/// A way from one step to the next.
#[derive(Clone, Debug)]
pub struct Edge {
    /// Its number.
    pub id: EdgeId,
    /// Where it stands.
    pub at: Span,
    /// The step it leads to.
    pub go: Id<Step>,
    /// How often it may be taken, and what comes after that.
    pub limit: Option<Limit>,
    /// What the answer means.
    pub means: Option<String>,
    /// What it puts on the job report.
    pub finding: Option<Finding>,
}

/// How often an edge may be taken.
#[derive(Clone, Debug)]
pub struct Limit {
    /// Times, counted since the walk entered the tree.
    pub at_most: u32,
    /// What is taken after that.
    pub then: Box<Edge>,
}

/// A line on the job report.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// How bad it is.
    pub severity: Severity,
    /// What was found.
    pub text: String,
}

/// How bad a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Worth knowing.
    Note,
    /// Worth doing.
    Advise,
    /// Must be repaired.
    Repair,
    /// Can hurt someone.
    Danger,
}

impl Severity {
    /// Every severity, from the mildest.
    pub const ALL: [Self; 4] = [Self::Note, Self::Advise, Self::Repair, Self::Danger];

    /// As the format writes it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Note => "note",
            Self::Advise => "advise",
            Self::Repair => "repair",
            Self::Danger => "danger",
        }
    }
}

impl Answers {
    /// Every edge an answer can take first, in the author's order.
    pub fn edges(&self) -> impl Iterator<Item = &Edge> {
        let (go, bands, choices): (_, &[BandAnswer], &[ChoiceAnswer]) = match self {
            Self::Go(edge) => (Some(edge), &[], &[]),
            Self::Bands(bands) => (None, bands, &[]),
            Self::Choices(choices) => (None, &[], choices),
        };
        let bands = bands.iter().map(|answer| &answer.edge);
        let choices = choices.iter().map(|answer| &answer.edge);
        go.into_iter().chain(bands).chain(choices)
    }

    /// As [`Answers::edges`], of answers that are not needed any more.
    pub(super) fn into_edges(self) -> Vec<Edge> {
        match self {
            Self::Go(edge) => vec![edge],
            Self::Bands(bands) => bands.into_iter().map(|answer| answer.edge).collect(),
            Self::Choices(choices) => choices.into_iter().map(|answer| answer.edge).collect(),
        }
    }
}

/// Where an outcome leads, among a visit's `returns`.
pub fn return_edge(returns: &[(usize, Edge)], outcome: usize) -> Option<&Edge> {
    let at = returns
        .binary_search_by_key(&outcome, |(position, _)| *position)
        .ok()?;
    returns.get(at).map(|(_, edge)| edge)
}

impl Edge {
    /// The edge, what comes after its limit, and so on.
    pub fn chain(&self) -> impl Iterator<Item = &Self> {
        std::iter::successors(Some(self), |edge| edge.limit.as_ref().map(|limit| &*limit.then))
    }
}

impl Step {
    /// Every edge that leaves this step, in the author's order, each followed by what comes after its limit.
    ///
    /// Made of many small pieces: over a whole library, `for_each` goes through them twice as fast as a loop.
    pub fn edges(&self) -> impl Iterator<Item = &Edge> {
        let mut answers: Option<&Answers> = None;
        let mut others: [Option<&Edge>; 2] = [None; 2];
        let mut returns: &[(usize, Edge)] = &[];
        let mut loose: &[Edge] = &[];
        match &self.kind {
            Kind::Measure {
                answers: given,
                unable,
                ..
            }
            | Kind::Plate {
                answers: given,
                unable,
                ..
            } => (answers, others) = (Some(given), [unable.as_ref(), None]),
            Kind::Observe {
                answers: given,
                unsure,
                unable,
                ..
            } => (answers, others) = (Some(given), [unsure.as_ref(), unable.as_ref()]),
            Kind::Do { go, .. } => others = [Some(go), None],
            Kind::Visit {
                returns: given,
                on_verdict,
                ..
            } => (returns, others) = (given, [on_verdict.as_ref(), None]),
            Kind::Unresolved { edges, .. } => loose = edges,
            Kind::Verdict { .. } | Kind::Return { .. } => {}
        }
        let answers = answers.into_iter().flat_map(Answers::edges);
        let returns = returns.iter().map(|(_, edge)| edge);
        let first = answers
            .chain(returns)
            .chain(others.into_iter().flatten())
            .chain(loose);
        first.flat_map(Edge::chain)
    }
}
