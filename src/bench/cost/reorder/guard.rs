//! Which question may be asked before which.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};

use crate::library::{
    Answers, Caution, Datum, Edge, Fault, Id, Kind, Library, PlateField, Remedy, Restore, Severity, Step,
    Taking,
};
use crate::walk::inputs_of;

/// The question that a step asks, where it sorts what it shows.
#[derive(Clone, Copy)]
pub(super) struct Question<'l> {
    pub datum: Datum,
    pub answers: &'l Answers,
}

impl<'l> Question<'l> {
    pub fn of(step: &'l Step) -> Option<Self> {
        let (datum, answers) = match &step.kind {
            Kind::Measure { reading, answers, .. } => (Datum::Reading(*reading), answers),
            Kind::Observe { sign, answers, .. } => (Datum::Sign(*sign), answers),
            Kind::Plate { field, answers, .. } => (Datum::Field(*field), answers),
            _ => return None,
        };
        (!matches!(answers, Answers::Go(_))).then_some(Self { datum, answers })
    }

    /// Everything that has to stand before it can be sorted, itself included.
    fn leans_on(self, library: &Library) -> BTreeSet<Datum> {
        let mut data: BTreeSet<Datum> = inputs_of(library, self.datum)
            .into_iter()
            .chain([self.datum])
            .collect();
        if let Answers::Bands(bands) = self.answers {
            let bounds = bands.iter().flat_map(|answer| answer.band.bounds());
            data.extend(
                bounds
                    .filter_map(|bound| bound.leans_on())
                    .map(|field: &Id<PlateField>| Datum::Field(*field)),
            );
        }
        data
    }
}

/// A question, and one in front of it.
type Pair = (Id<Step>, Id<Step>);

/// Which questions of a library may be asked before which, as far as the tree says: see the [module](super). Each pair is
/// looked at once.
#[derive(Debug)]
pub struct Guard<'l> {
    library: &'l Library,
    known: RefCell<BTreeMap<Pair, bool>>,
}

impl<'l> Guard<'l> {
    /// The guard of a library.
    pub fn of(library: &'l Library) -> Self {
        Self {
            library,
            known: RefCell::default(),
        }
    }

    /// Whether a question may be asked before one that now comes in front of it. Work between the two, and what the proofs
    /// behind them need, is not looked at.
    pub fn may_pass(&self, question: Id<Step>, before: Id<Step>) -> bool {
        let known = self.known.borrow().get(&(question, before)).copied();
        known.unwrap_or_else(|| {
            let may = may_pass(self.library, question, before);
            self.known.borrow_mut().insert((question, before), may);
            may
        })
    }
}

fn may_pass(library: &Library, question: Id<Step>, before: Id<Step>) -> bool {
    let (step, other) = (&library[question], &library[before]);
    let (Some(asked), Some(passed)) = (Question::of(step), Question::of(other)) else {
        return false;
    };
    let plate = |question: Question<'_>| matches!(question.datum, Datum::Field(_));
    let (cautions, leaves) = care(library, step, asked.datum);
    let (stand, open) = care(library, other, passed.datum);
    !plate(passed)
        && !plate(asked)
        && !asked.leans_on(library).contains(&passed.datum)
        && !warns(library, passed.answers)
        && cautions.is_subset(&stand)
        && leaves.is_subset(&open)
}

/// What can hurt and what is opened where a step takes a value, with all that it is worked out from.
fn care(library: &Library, step: &Step, datum: Datum) -> (BTreeSet<Id<Caution>>, BTreeSet<Id<Restore>>) {
    let mut cautions: BTreeSet<_> = step.cautions.iter().copied().collect();
    let mut leaves = BTreeSet::new();
    for taking in inputs_of(library, datum)
        .into_iter()
        .chain([datum])
        .filter_map(|datum| taking(library, datum))
    {
        cautions.extend(&taking.cautions);
        leaves.extend(&taking.leaves);
    }
    (cautions, leaves)
}

fn taking(library: &Library, datum: Datum) -> Option<&Taking> {
    match datum {
        Datum::Reading(id) => Some(&library.readings[id].taking),
        Datum::Sign(id) => Some(&library.signs[id].taking),
        Datum::Field(_) => None,
    }
}

/// Whether an answer tells of a danger: it leads to a shut-down, or puts a danger on the report.
fn warns(library: &Library, answers: &Answers) -> bool {
    let danger = |edge: &Edge| {
        edge.finding
            .as_ref()
            .is_some_and(|finding| finding.severity == Severity::Danger)
    };
    let shuts_down = |edge: &Edge| match verdict(library, edge.go) {
        Some(fault) => library.faults[fault].remedy == Remedy::ShutDown,
        None => false,
    };
    answers
        .edges()
        .flat_map(Edge::chain)
        .any(|edge| danger(edge) || shuts_down(edge))
}

/// The verdict that a step is.
pub(super) fn verdict(library: &Library, step: Id<Step>) -> Option<Id<Fault>> {
    match library[step].kind {
        Kind::Verdict { fault, .. } => Some(fault),
        _ => None,
    }
}

/// Whether a verdict's proofs need a value in some alternative, or one that is worked out from it.
pub(super) fn needs(library: &Library, fault: Id<Fault>, datum: Datum) -> bool {
    let lines = library.proofs(fault).flat_map(|proof| &proof.lines);
    let mut claims = lines.flat_map(|line| line.alternatives.iter().flatten());
    claims.any(|claim| claim.datum() == datum || inputs_of(library, claim.datum()).contains(&datum))
}
