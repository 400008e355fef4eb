//! Something that may be missing at a step, and what makes it so.

use super::dependence::Dependence;
use super::joint::Joint;
use super::numbers::{Numbers, fixed};
use crate::library::{Claim, ClaimKind, Datum, Id, Library, PlateField};
use crate::measure::Band;

/// Something that may be missing.
#[derive(Clone, Copy)]
pub(super) enum Question<'l> {
    /// That a claim holds.
    Shown(&'l Claim),
    /// That a value stands.
    Stands(Datum),
}

impl Question<'_> {
    pub fn datum(&self) -> Datum {
        match self {
            Self::Shown(claim) => claim.datum(),
            Self::Stands(datum) => *datum,
        }
    }

    /// Whether it is a value that stands once this one is taken: itself, or one that it is worked out from.
    pub fn is_standing(&self, dependence: &Dependence, taken: Datum) -> bool {
        match self {
            Self::Stands(known) => *known == taken || dependence.inputs(taken).contains(known),
            Self::Shown(_) => false,
        }
    }

    /// Whether a number in a band shows it.
    pub fn is_shown_in(&self, library: &Library, of: Datum, band: &Band<Id<PlateField>>) -> bool {
        match self {
            Self::Shown(claim) => claim.datum() == of && shows(library, of, band, claim),
            Self::Stands(_) => false,
        }
    }

    /// Whether one of several values shows it.
    pub fn is_shown_as(&self, of: Datum, value: usize) -> bool {
        let Self::Shown(claim) = self else {
            return false;
        };
        match &claim.what {
            ClaimKind::Sign(_, values) | ClaimKind::FieldChoice(_, values) => {
                claim.datum() == of && values.contains(&value)
            }
            ClaimKind::Reading(..) | ClaimKind::FieldNumber(..) => false,
        }
    }

    /// Whether it may be missing once these are void.
    pub fn is_voided(&self, dependence: &Dependence, voids: &[Datum]) -> bool {
        let datum = self.datum();
        voids.iter().any(|void| {
            let leans = match self {
                Self::Shown(claim) => fields(claim).any(|field| Datum::Field(field) == *void),
                Self::Stands(_) => false,
            };
            leans || dependence.gone_with(*void).any(|gone| gone == datum)
        })
    }
}

/// The plate fields that a claim leans on.
fn fields(claim: &Claim) -> impl Iterator<Item = Id<PlateField>> + '_ {
    let band = match &claim.what {
        ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) => Some(band),
        ClaimKind::Sign(..) | ClaimKind::FieldChoice(..) => None,
    };
    let bounds = band.into_iter().flat_map(Band::bounds);
    bounds.filter_map(|bound| bound.leans_on().copied())
}

/// Whether a number in a band meets a claim, whatever the plate says.
fn shows(library: &Library, datum: Datum, band: &Band<Id<PlateField>>, claim: &Claim) -> bool {
    let (ClaimKind::Reading(_, wanted) | ClaimKind::FieldNumber(_, wanted)) = &claim.what else {
        return false;
    };
    if let (Some(number), Some(wanted)) = (fixed(band), fixed(wanted)) {
        return number.is_within(wanted);
    }
    let (numbers, within) = (Numbers::default().and(band), Numbers::default().and(wanted));
    if numbers.is_plainly_within(&within) {
        return true;
    }
    let implied = || {
        let mut joint = Joint::new(library, library.scale_of(datum)?);
        joint.know(datum, &numbers).ok()?;
        let mut conditions = wanted.conditions.iter();
        Some(conditions.all(|condition| joint.implies(datum, condition) == Ok(true)))
    };
    implied() == Some(true)
}
