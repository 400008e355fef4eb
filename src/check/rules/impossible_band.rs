//! A band that no value reaches.

use std::collections::BTreeSet;

use crate::check::bands::Question;
use crate::check::known::{holds_nothing, unreachable_bands};
use crate::check::rule::{Findings, rule};
use crate::check::subject::Subject;
use crate::check::words::quoted;
use crate::library::{Answers, ClaimKind, Id, Kind, Library, Proof, Step, What};
use crate::source::Span;

rule! {
    /// A band holds no value on any rating plate, or no way can reach it because the reading is already known to lie elsewhere.
    ///
    /// A step that asks for a reading which still stands does not ask again: it goes on with the value that was taken. Where
    /// every way to it comes from another band of that reading, the answer here is settled before, and whoever wrote the tree
    /// expected something else: most often that the reading would be taken again. Void it where it should be.
    ///
    /// ## Fails
    ///
    /// ```yaml
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: current
    /// steps:
    ///   current:
    ///     measure: flame_current
    ///     source: common_practice
    ///     bands:
    ///       below 1 uA: clean
    ///       at least 1 uA: done
    ///   clean:
    ///     do: Clean the rod with a fine abrasive.
    ///     go: again
    ///   again:
    ///     measure: flame_current
    ///     source: common_practice
    ///     bands:
    ///       below 1 uA: weak
    ///       at least 1 uA: done
    ///   weak:
    ///     verdict: rod_dirty
    ///     because: The signal stays weak.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is seen.
    /// ```
    ///
    /// ## Mended
    ///
    /// ```yaml
    /// # no-heat.yaml
    /// tree: no-heat
    /// title: No heat
    /// complaint: It does not heat
    /// start: current
    /// steps:
    ///   current:
    ///     measure: flame_current
    ///     source: common_practice
    ///     bands:
    ///       below 1 uA: clean
    ///       at least 1 uA: done
    ///   clean:
    ///     do: Clean the rod with a fine abrasive.
    ///     voids: [flame_current]
    ///     go: again
    ///   again:
    ///     measure: flame_current
    ///     source: common_practice
    ///     bands:
    ///       below 1 uA: weak
    ///       at least 1 uA: done
    ///   weak:
    ///     verdict: rod_dirty
    ///     because: The signal stays weak.
    ///   done:
    ///     verdict: nothing_found
    ///     because: The flame is seen.
    /// ```
    IMPOSSIBLE_BAND, "impossible-band", Warning, needs Shape, look
}

fn look(subject: &Subject<'_>, findings: &mut Findings) {
    let library = subject.library;
    let mut empty = BTreeSet::new();
    for step in subject.doubtful_bands() {
        let Some(question) = Question::of(library, &library[*step]) else {
            continue;
        };
        for (position, answer) in question.bands.iter().enumerate() {
            if holds_nothing(library, question.datum, &answer.band) {
                empty.insert((*step, position));
                add_empty(findings, answer.at);
            }
        }
    }
    let proofs = library.parts.iter().map(|(_, part)| &part.proof);
    for proof in proofs.chain(library.faults.iter().map(|(_, fault)| &fault.proof)) {
        empty_in_proof(library, proof, findings);
    }
    // A step that is named and not there may be any.
    let kinds = [What::Step, What::Tree, What::Outcome, What::Reading, What::Datum];
    if kinds.into_iter().any(|kind| subject.misses(kind)) {
        return;
    }
    for (step, bands) in unreachable_bands(library, subject.dependence(), subject.graph()) {
        let (Kind::Measure { answers, .. } | Kind::Plate { answers, .. }) = &library[step].kind else {
            continue;
        };
        let Answers::Bands(answers) = answers else {
            continue;
        };
        for band in bands {
            if !empty.contains(&(step, band)) {
                findings.add(
                    answers[band].at,
                    format!("no way reaches this band: {}", known_elsewhere(library, step)),
                    "void the reading where it should be taken again, or take the band out and sort the value once",
                );
            }
        }
    }
}

fn known_elsewhere(library: &Library, step: Id<Step>) -> String {
    let name = match &library[step].kind {
        Kind::Measure { reading, .. } => quoted(&library.readings[*reading].name),
        Kind::Plate { field, .. } => quoted(&format!("plate.{}", library.plate[*field].name)),
        _ => return "the value is known to lie elsewhere".to_owned(),
    };
    format!("{name} still stands on every way here, and is known to lie elsewhere")
}

fn add_empty(findings: &mut Findings, at: Span) {
    findings.add(
        at,
        "this band holds no value",
        "write the lower end first; the parts of a band must all hold at once",
    );
}

fn empty_in_proof(library: &Library, proof: &Proof, findings: &mut Findings) {
    let claims = proof
        .lines
        .iter()
        .flat_map(|line| line.alternatives.iter().flatten());
    for claim in claims {
        let (ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band)) = &claim.what else {
            continue;
        };
        if holds_nothing(library, claim.datum(), band) {
            add_empty(findings, claim.at);
        }
    }
}
