//! What a named fault lacks of its proof.

use crate::library::{Datum, Fault, Id, Library};
use crate::source::{Safe, safe};
use crate::walk::{Holding, State, line_words, proof_lines, takeable, unread_fields};

/// What can still be taken for it: what its lines lean on from the plate first.
pub fn takes(library: &Library, state: &State, fault: Id<Fault>) -> Vec<Datum> {
    let mut data: Vec<Datum> = unread_fields(library, state, fault)
        .into_iter()
        .map(Datum::Field)
        .collect();
    for line in open(library, state, fault) {
        for datum in takeable(state, line.0) {
            if !data.contains(&datum) {
                data.push(datum);
            }
        }
    }
    data
}

/// The lines that do not hold, in words.
pub fn words(library: &Library, state: &State, fault: Id<Fault>) -> Vec<Safe> {
    let lines = open(library, state, fault);
    let words = lines.map(|(line, holding)| {
        let because = match holding {
            Holding::Borderline => "too near to its bound to tell",
            Holding::Contradicted => "what was taken says otherwise",
            Holding::Missing | Holding::Holds => "not taken",
        };
        safe(&format!("It lacks: {} ({because})", line_words(library, line)))
    });
    words.collect()
}

fn open<'l>(
    library: &'l Library,
    state: &State,
    fault: Id<Fault>,
) -> impl Iterator<Item = (&'l crate::library::ProofLine, Holding)> {
    let lines = proof_lines(library, state, fault).into_iter();
    lines.filter(|(_, holding)| *holding != Holding::Holds)
}
