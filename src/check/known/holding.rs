//! Whether what is known of values proves what is claimed of them.

use super::numbers::Numbers;
use super::tracked::{Known, StateId, Tracked};
use crate::library::{Claim, ClaimKind, Datum, FieldKind, Id, PlateField, ProofLine};
use crate::measure::{Band, Condition};

impl Tracked<'_> {
    /// Whether a line of a proof holds, whatever else the values are.
    pub fn holds(&self, state: StateId, line: &ProofLine) -> bool {
        let mut alternatives = line.alternatives.iter();
        alternatives.any(|claims| claims.iter().all(|claim| self.claim_holds(state, claim)))
            || self.holds_together(state, line)
    }

    /// Whether alternatives that are all about one value leave it no other: one of them holds, whichever.
    fn holds_together(&self, state: StateId, line: &ProofLine) -> bool {
        /// Ways of breaking every alternative at once; nobody writes more.
        const MOST: usize = 64;

        let alone: Option<Vec<&Claim>> = (line.alternatives.iter())
            .map(|claims| match claims.as_slice() {
                [claim] => Some(claim),
                _ => None,
            })
            .collect();
        let Some([first, rest @ ..]) = alone.as_deref() else {
            return false;
        };
        let datum = first.datum();
        let stands = self.stands(state, datum) || matches!(datum, Datum::Field(_));
        if rest.is_empty() || !stands || rest.iter().any(|claim| claim.datum() != datum) {
            return false;
        }
        let claims = || std::iter::once(first).chain(rest);
        let mut broken: Vec<Vec<&Condition<Id<PlateField>>>> = vec![Vec::new()];
        let mut values: Vec<usize> = Vec::new();
        for claim in claims() {
            match &claim.what {
                ClaimKind::Sign(_, some) | ClaimKind::FieldChoice(_, some) => values.extend(some),
                ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) => {
                    let conditions = &band.conditions;
                    broken = (broken.iter())
                        .flat_map(|ways| conditions.iter().map(|one| [&ways[..], &[one]].concat()))
                        .take(MOST + 1)
                        .collect();
                }
            }
        }
        match datum {
            Datum::Sign(sign) => is_any(&values, self.library.signs[sign].values.len()),
            Datum::Field(field) if !values.is_empty() => match &self.library.plate[field].kind {
                FieldKind::Choices(all) => is_any(&values, all.len()),
                FieldKind::Number { .. } => false,
            },
            Datum::Reading(_) | Datum::Field(_) => {
                broken.len() <= MOST
                    && broken
                        .iter()
                        .all(|denied| self.cannot_all_fail(state, datum, denied) == Some(true))
            }
        }
    }

    fn cannot_all_fail(
        &self,
        state: StateId,
        datum: Datum,
        denied: &[&Condition<Id<PlateField>>],
    ) -> Option<bool> {
        let numbers = match self.known(state, datum) {
            Known::Number(id) => self.numbers(id).clone(),
            Known::Stale | Known::Choice(_) => Numbers::default(),
        };
        let fields = denied.iter().filter_map(|one| one.bound.leans_on().copied());
        let mut joint = self.joint(state, datum, &numbers)?;
        for field in fields {
            if let Known::Number(id) = self.known(state, Datum::Field(field)) {
                joint.know(Datum::Field(field), self.numbers(id)).ok()?;
            }
        }
        joint.know(datum, &numbers).ok()?;
        for condition in denied {
            joint.deny(datum, condition).ok()?;
        }
        joint.is_possible().ok().map(|possible| !possible)
    }

    /// Whether a claim holds, whatever else the values are.
    pub fn claim_holds(&self, state: StateId, claim: &Claim) -> bool {
        let datum = claim.datum();
        match (&claim.what, self.known(state, datum)) {
            (ClaimKind::Reading(..), Known::Stale) => false,
            (ClaimKind::Reading(_, band), Known::Number(id)) => {
                self.lies_in(state, datum, self.numbers(id), band)
            }
            // A plate field that a proof leans on is read at the verdict.
            (ClaimKind::FieldNumber(_, band), Known::Number(id)) => {
                self.lies_in(state, datum, self.numbers(id), band)
            }
            (ClaimKind::FieldNumber(_, band), _) => self.lies_in(state, datum, &Numbers::default(), band),
            (ClaimKind::Sign(..), Known::Stale) => false,
            (ClaimKind::Sign(_, values) | ClaimKind::FieldChoice(_, values), Known::Choice(Some(value))) => {
                values.contains(&(value as usize))
            }
            (ClaimKind::Sign(sign, values), _) => is_any(values, self.library.signs[*sign].values.len()),
            (ClaimKind::FieldChoice(field, values), _) => match &self.library.plate[*field].kind {
                FieldKind::Choices(all) => is_any(values, all.len()),
                FieldKind::Number { .. } => false,
            },
            (ClaimKind::Reading(..), Known::Choice(_)) => false,
        }
    }

    fn lies_in(&self, state: StateId, datum: Datum, numbers: &Numbers, band: &Band<Id<PlateField>>) -> bool {
        let wanted = Numbers::default().and(band);
        if numbers.is_plainly_within(&wanted) {
            return true;
        }
        // Without the plate, the bounds of one term say it all.
        if numbers.is_fixed() && wanted.is_fixed() && !matches!(datum, Datum::Field(_)) {
            return false;
        }
        let implied = || {
            // What is known of the fields of both, not of the number's alone.
            let both = numbers.and(band);
            let mut joint = self.joint(state, datum, &both)?;
            joint.know(datum, numbers).ok()?;
            let conditions = &band.conditions;
            let mut implied = conditions.iter().map(|condition| joint.implies(datum, condition));
            Some(implied.all(|implied| implied == Ok(true)))
        };
        implied() == Some(true)
    }
}

/// Whether every value there is is among these.
fn is_any(values: &[usize], count: usize) -> bool {
    (0..count).all(|value| values.contains(&value))
}
