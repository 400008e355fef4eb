//! Which proofs the verdicts of a sheet need, and which of its questions help to prove them.

use std::collections::BTreeMap;

use super::lettering::short;
use crate::library::{
    ClaimKind, Datum, Fault, Id, Input, Kind, Library, Obtained, Part, Proof, Remedy, Step,
};
use crate::measure::Band;
use crate::source::Safe;
use crate::walk::claim_words;

/// Of what something is proven: a part, or what a fault asks for beside its part's proof.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Of {
    Part(Id<Part>),
    Fault(Id<Fault>),
}

/// A proof that a verdict of the sheet needs.
pub(super) struct Needed<'l> {
    of: Of,
    /// Of which part or fault.
    pub title: Safe,
    proof: &'l Proof,
}

/// The proofs of a sheet, in the order of the verdicts that need them.
pub(super) struct Proofs<'l> {
    library: &'l Library,
    pub needed: Vec<Needed<'l>>,
    /// Which proofs a value helps, by their positions.
    helps: BTreeMap<Datum, Vec<usize>>,
}

impl<'l> Proofs<'l> {
    /// The proofs of the verdicts among these steps.
    pub fn new(library: &'l Library, steps: &[Id<Step>]) -> Self {
        let mut proofs = Self {
            library,
            needed: Vec::new(),
            helps: BTreeMap::new(),
        };
        for step in steps {
            if let Kind::Verdict { fault, .. } = library[*step].kind {
                for of in proofs_of(library, fault) {
                    proofs.add(of);
                }
            }
        }
        proofs
    }

    fn add(&mut self, of: Of) {
        if self.needed.iter().any(|needed| needed.of == of) {
            return;
        }
        let at = self.needed.len();
        let (title, proof) = match of {
            Of::Part(part) => (&self.library.parts[part].title, &self.library.parts[part].proof),
            Of::Fault(fault) => (
                &self.library.faults[fault].title,
                &self.library.faults[fault].proof,
            ),
        };
        self.needed.push(Needed {
            of,
            title: short(title),
            proof,
        });
        for datum in data(self.library, proof) {
            let helps = self.helps.entry(datum).or_default();
            if !helps.contains(&at) {
                helps.push(at);
            }
        }
    }

    /// The proofs that a verdict needs, by their positions.
    pub fn of(&self, fault: Id<Fault>) -> Vec<usize> {
        let of = proofs_of(self.library, fault).into_iter();
        of.filter_map(|of| self.needed.iter().position(|needed| needed.of == of))
            .collect()
    }

    /// The proofs that a value helps, by their positions.
    pub fn helped_by(&self, datum: Datum) -> &[usize] {
        self.helps.get(&datum).map_or(&[], Vec::as_slice)
    }
}

/// How a proof is called on the sheet.
pub(super) fn label(position: usize) -> String {
    format!("P{}", position + 1)
}

fn proofs_of(library: &Library, fault: Id<Fault>) -> Vec<Of> {
    let part = match library.faults[fault].remedy {
        Remedy::Replace(part) => Some(Of::Part(part)),
        Remedy::Correct | Remedy::ShutDown | Remedy::Refer | Remedy::None | Remedy::Unresolved => None,
    };
    let own = &library.faults[fault].proof;
    let own = (!own.lines.is_empty()).then_some(Of::Fault(fault));
    part.into_iter().chain(own).collect()
}

impl Needed<'_> {
    /// Its lines: each either one thing that must hold, or several of which one must.
    pub fn lines(&self, library: &Library) -> Vec<Vec<Safe>> {
        let lines = self.proof.lines.iter().map(|line| {
            let alternatives = line.alternatives.iter().map(|claims| {
                let claims: Vec<String> = claims.iter().map(|claim| claim_words(library, claim)).collect();
                short(&claims.join("; and "))
            });
            alternatives.collect()
        });
        lines.collect()
    }
}

/// Everything that a proof leans on: what it claims, what that is worked out from, and the plate fields of its bounds.
fn data(library: &Library, proof: &Proof) -> Vec<Datum> {
    let claims = proof
        .lines
        .iter()
        .flat_map(|line| line.alternatives.iter().flatten());
    let mut data = Vec::new();
    for claim in claims {
        let band = match &claim.what {
            ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) => Some(band),
            ClaimKind::Sign(..) | ClaimKind::FieldChoice(..) => None,
        };
        let bounds = band.into_iter().flat_map(Band::bounds);
        data.extend(bounds.filter_map(|bound| bound.leans_on().copied().map(Datum::Field)));
        data.extend(with_inputs(library, claim.datum()));
    }
    data
}

/// A value, and what it is worked out from.
pub(super) fn with_inputs(library: &Library, datum: Datum) -> Vec<Datum> {
    let mut data = vec![datum];
    let mut at = 0;
    while let Some(datum) = data.get(at).copied() {
        at += 1;
        let Datum::Reading(reading) = datum else { continue };
        let Obtained::WorkedOut { inputs, .. } = &library.readings[reading].source_of_value else {
            continue;
        };
        for input in inputs {
            let input = match input {
                Input::Reading(reading) => Datum::Reading(*reading),
                Input::Field(field) => Datum::Field(*field),
                Input::Fixed(_) => continue,
            };
            if !data.contains(&input) {
                data.push(input);
            }
        }
    }
    data
}
