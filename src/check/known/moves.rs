//! Where a step can lead, and what is known then.

use super::tracked::{StateId, Tracked};
use crate::library::{Answers, Claim, ClaimKind, Datum, Edge, Fault, Id, Kind, Library, ProofLine, Step};

/// What was answered at a step, or how a visit came back.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(super) enum How {
    /// A value in this answer, by its position among the bands or choices.
    Answer(usize),
    /// Any value: it is only recorded.
    Recorded,
    /// It could not be taken.
    Unable,
    /// The technician was not sure.
    Unsure,
    /// The work was done.
    Done,
    /// The visit returned with this outcome.
    Returned(usize),
    /// A verdict inside the visit was noted.
    Noted,
}

/// A way on from a step.
#[derive(Clone, Copy)]
pub(super) struct Move<'l> {
    pub how: How,
    /// The edge that the answer names, before its limit is looked at.
    pub first: &'l Edge,
    /// The edge that is taken: the first, or what comes after its limit, and so on.
    pub taken: &'l Edge,
    /// What is known then.
    pub state: StateId,
}

/// Where a step leads that asks for something or has something done; nowhere for a visit and for a step that ends something.
pub(super) fn moves<'l>(tracked: &mut Tracked<'l>, step: Id<Step>, from: StateId) -> Vec<Move<'l>> {
    let mut found = Vec::new();
    match &tracked.library[step].kind {
        Kind::Measure {
            reading,
            answers,
            unable,
            ..
        } => {
            let datum = Datum::Reading(*reading);
            let (read, unread) = plate_read(tracked, answers, from);
            if unread {
                push(&mut found, How::Unable, unable.as_ref(), from);
            }
            let from = read;
            if !tracked.stands(from, datum) {
                push(&mut found, How::Unable, unable.as_ref(), from);
                let mut state = from;
                for input in tracked.dependence.inputs(datum) {
                    state = tracked.taken(state, *input);
                }
                let state = tracked.taken(state, datum);
                answered(tracked, &mut found, datum, answers, state);
            } else {
                answered(tracked, &mut found, datum, answers, from);
            }
        }
        Kind::Observe {
            sign,
            answers,
            unsure,
            unable,
            ..
        } => {
            let datum = Datum::Sign(*sign);
            if !tracked.stands(from, datum) {
                push(&mut found, How::Unable, unable.as_ref(), from);
                push(&mut found, How::Unsure, unsure.as_ref(), from);
            }
            let state = tracked.taken(from, datum);
            answered(tracked, &mut found, datum, answers, state);
        }
        Kind::Plate {
            field,
            answers,
            unable,
        } => {
            let datum = Datum::Field(*field);
            let (read, unread) = plate_read(tracked, answers, from);
            if unread || !tracked.stands(from, datum) {
                push(&mut found, How::Unable, unable.as_ref(), from);
            }
            let state = tracked.taken(read, datum);
            answered(tracked, &mut found, datum, answers, state);
        }
        Kind::Do { go, voids, .. } => {
            let state = voids
                .iter()
                .fold(from, |state, datum| tracked.voided(state, *datum));
            push(&mut found, How::Done, Some(go), state);
        }
        Kind::Visit { .. } | Kind::Verdict { .. } | Kind::Return { .. } | Kind::Unresolved { .. } => {}
    }
    found
}

/// Adds a way, and what may come after its limit.
pub(super) fn push<'l>(found: &mut Vec<Move<'l>>, how: How, edge: Option<&'l Edge>, state: StateId) {
    let Some(first) = edge else { return };
    found.extend(first.chain().map(|taken| Move {
        how,
        first,
        taken,
        state,
    }));
}

/// The state once the plate fields that bands lean on are read, and whether one of them may not be yet.
fn plate_read(tracked: &mut Tracked<'_>, answers: &Answers, from: StateId) -> (StateId, bool) {
    let Answers::Bands(bands) = answers else {
        return (from, false);
    };
    let fields = bands.iter().flat_map(|answer| answer.band.bounds());
    let fields = fields.filter_map(|bound| bound.leans_on().copied().map(Datum::Field));
    fields.fold((from, false), |(state, unread), field| {
        (
            tracked.taken(state, field),
            unread || !tracked.stands(state, field),
        )
    })
}

fn answered<'l>(
    tracked: &mut Tracked<'l>,
    found: &mut Vec<Move<'l>>,
    datum: Datum,
    answers: &'l Answers,
    state: StateId,
) {
    match answers {
        Answers::Go(edge) => push(found, How::Recorded, Some(edge), state),
        Answers::Bands(bands) => {
            for (at, answer) in bands.iter().enumerate() {
                if let Some(state) = tracked.sorted(state, datum, &answer.band) {
                    push(found, How::Answer(at), Some(&answer.edge), state);
                }
            }
        }
        Answers::Choices(choices) => {
            for (at, answer) in choices.iter().enumerate() {
                if let Some(state) = tracked.chosen(state, datum, answer.value) {
                    push(found, How::Answer(at), Some(&answer.edge), state);
                }
            }
        }
    }
}

/// The lines that a verdict needs; none where it can never be stated.
pub(super) fn lines_of(library: &Library, fault: Id<Fault>) -> Option<Vec<&ProofLine>> {
    let lines = || library.proofs(fault).flat_map(|proof| &proof.lines).collect();
    library.can_be_proven(fault).then(lines)
}

/// What is known once a verdict was noted: it was proven, or the walk took what it lacked. One state for each way of
/// proving it.
pub(super) fn noted(tracked: &mut Tracked<'_>, fault: Id<Fault>, from: StateId) -> Vec<StateId> {
    /// More ways of proving a verdict than anybody writes; then what was known before is all that is known.
    const MOST: usize = 32;

    let Some(lines) = lines_of(tracked.library, fault) else {
        return Vec::new();
    };
    let mut states = vec![from];
    for line in lines {
        let mut after = Vec::new();
        for state in states {
            if tracked.holds(state, line) {
                after.push(state);
            } else {
                let ways = line.alternatives.iter();
                after.extend(ways.filter_map(|claims| proven(tracked, claims, state)));
            }
        }
        if after.len() > MOST {
            return vec![from];
        }
        states = after;
    }
    states
}

/// What is known once each of these claims holds; none where one cannot.
fn proven(tracked: &mut Tracked<'_>, claims: &[Claim], from: StateId) -> Option<StateId> {
    claims.iter().try_fold(from, |state, claim| {
        let datum = claim.datum();
        let state = tracked.taken(state, datum);
        match &claim.what {
            ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) => {
                tracked.sorted(state, datum, band)
            }
            ClaimKind::Sign(_, values) | ClaimKind::FieldChoice(_, values) => match values.as_slice() {
                [value] => tracked.chosen(state, datum, *value),
                _ => tracked.may_be_one_of(state, datum, values).then_some(state),
            },
        }
    })
}
