//! Whether a verdict is proven.

use super::state::{State, Value};
use crate::library::{Claim, ClaimKind, Datum, Fault, Id, Library, PlateField, ProofLine};
use crate::measure::{Band, borderline};

/// How a claim, a line or a proof stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Holding {
    /// It holds.
    Holds,
    /// Something it needs was not taken, or no longer counts.
    Missing,
    /// What was taken lies within the meter's accuracy of a bound.
    Borderline,
    /// What was taken says otherwise.
    Contradicted,
}

/// Every line that a verdict needs, with how it stands.
pub fn lines<'l>(library: &'l Library, state: &State, fault: Id<Fault>) -> Vec<(&'l ProofLine, Holding)> {
    let lines = library.proofs(fault).flat_map(|proof| &proof.lines);
    lines.map(|line| (line, line_holds(state, line))).collect()
}

/// Whether a verdict may be stated: every line holds, fresh.
pub fn is_proven(library: &Library, state: &State, fault: Id<Fault>) -> bool {
    library.can_be_proven(fault)
        && lines(library, state, fault)
            .iter()
            .all(|(_, holding)| *holding == Holding::Holds)
}

fn line_holds(state: &State, line: &ProofLine) -> Holding {
    let alternatives = line.alternatives.iter().map(|claims| {
        // An alternative stands as badly as its worst claim, a line as well as its best alternative.
        claims
            .iter()
            .map(|claim| claim_holds(state, claim))
            .max()
            .unwrap_or(Holding::Holds)
    });
    alternatives.min().unwrap_or(Holding::Missing)
}

/// The alternative of a line that holds, where one does: the first of them.
pub fn holding_alternative<'l>(state: &State, line: &'l ProofLine) -> Option<&'l [Claim]> {
    let holds = |claims: &&Vec<Claim>| {
        claims
            .iter()
            .all(|claim| claim_holds(state, claim) == Holding::Holds)
    };
    line.alternatives.iter().find(holds).map(Vec::as_slice)
}

/// How one claim stands.
pub fn claim_holds(state: &State, claim: &Claim) -> Holding {
    let Some(standing) = state.value(claim.datum()) else {
        return Holding::Missing;
    };
    match (&claim.what, standing.value) {
        (ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band), Value::Number(value)) => {
            in_band(state, band, value, standing.margin)
        }
        (ClaimKind::Sign(_, values) | ClaimKind::FieldChoice(_, values), Value::Choice(value)) => {
            match values.contains(&value) {
                true => Holding::Holds,
                false => Holding::Contradicted,
            }
        }
        _ => Holding::Missing,
    }
}

/// How a claim stands as the answer to a tree's question: a value that is too near to a bound to prove anything leads on all
/// the same.
pub fn answer_holds(state: &State, claim: &Claim) -> Holding {
    let close = claim_holds(state, claim);
    let value = state.value(claim.datum()).map(|standing| standing.value);
    match (&claim.what, value, close) {
        (
            ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band),
            Some(Value::Number(value)),
            Holding::Borderline,
        ) => in_band(state, band, value, 0.0),
        _ => close,
    }
}

fn in_band(
    state: &State,
    band: &Band<Id<PlateField>>,
    value: crate::measure::Quantity,
    margin: f64,
) -> Holding {
    let fields = |field: &Id<PlateField>| state.field(*field);
    let close = band.bounds().any(|bound| {
        let bound = bound.value(&fields);
        bound.is_some_and(|bound| borderline(value, margin, bound))
    });
    match band.contains(value, &fields) {
        None => Holding::Missing,
        Some(_) if close => Holding::Borderline,
        Some(true) => Holding::Holds,
        Some(false) => Holding::Contradicted,
    }
}

/// The data that could still make a verdict proven: not fresh, or borderline, in a line that does not hold.
pub fn takeable(state: &State, line: &ProofLine) -> Vec<Datum> {
    let mut data = Vec::new();
    for claims in &line.alternatives {
        let hopeless = claims
            .iter()
            .any(|claim| claim_holds(state, claim) == Holding::Contradicted);
        if hopeless {
            continue;
        }
        for claim in claims {
            let open = matches!(claim_holds(state, claim), Holding::Missing | Holding::Borderline);
            let datum = claim.datum();
            if open && !state.could_not.contains_key(&datum) && !data.contains(&datum) {
                data.push(datum);
            }
        }
    }
    data
}

/// The plate fields that a verdict's proof leans on and that have not been read.
pub fn unread_fields(library: &Library, state: &State, fault: Id<Fault>) -> Vec<Id<PlateField>> {
    let mut fields = fields(library, fault);
    fields.retain(|field| {
        let datum = Datum::Field(*field);
        state.value(datum).is_none() && !state.could_not.contains_key(&datum)
    });
    fields
}

/// The plate fields that a verdict's proof leans on, each once.
pub fn fields(library: &Library, fault: Id<Fault>) -> Vec<Id<PlateField>> {
    let lines = library.proofs(fault).flat_map(|proof| &proof.lines);
    let claims = lines.flat_map(|line| line.alternatives.iter().flatten());
    let mut fields = Vec::new();
    for claim in claims {
        let own = match &claim.what {
            ClaimKind::FieldNumber(field, _) | ClaimKind::FieldChoice(field, _) => Some(*field),
            ClaimKind::Reading(..) | ClaimKind::Sign(..) => None,
        };
        let band = match &claim.what {
            ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) => Some(band),
            ClaimKind::Sign(..) | ClaimKind::FieldChoice(..) => None,
        };
        let bounds = band.into_iter().flat_map(Band::bounds);
        let leans_on = bounds.filter_map(|bound| bound.leans_on().copied());
        for field in own.into_iter().chain(leans_on) {
            if !fields.contains(&field) {
                fields.push(field);
            }
        }
    }
    fields
}
