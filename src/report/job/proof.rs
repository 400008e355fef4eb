//! The proof of a verdict: what it asked for, what was measured, and of what does not hold what it lacks.

use std::collections::BTreeSet;

use super::asked_words;
use super::entries::ProofEntry;
use super::gather::plain;
use crate::library::{Claim, Datum, Fault, Id, Library, ProofLine};
use crate::walk::{self, Holding, State};

/// What a line of a proof lacks: of its alternatives the one that comes nearest, claim by claim. All of them in one sentence
/// are read by nobody.
#[derive(Clone, Debug)]
pub(super) struct Lacking {
    /// The claims, each with how it stands.
    pub claims: Vec<String>,
    /// How many other alternatives there are.
    pub others: usize,
}

impl Lacking {
    /// What stands over the claims.
    pub fn heading(&self) -> &'static str {
        match self.others {
            0 => "NOT PROVEN:",
            _ => "NOT PROVEN; what comes nearest:",
        }
    }

    /// What stands below the claims, where there are other alternatives.
    pub fn others(&self) -> Option<String> {
        match self.others {
            0 => None,
            1 => Some("It can be proven in one other way, which lacks no less.".to_owned()),
            others => Some(format!(
                "It can be proven in {others} other ways, which lack no less."
            )),
        }
    }
}

/// A contradicted claim lacks more than any number of claims that nobody looked at.
const CONTRADICTED: usize = 1000;

/// What the proof asked for and what was measured: of a line that holds, the claims that it holds by; of one that does
/// not, all of its alternatives.
pub(super) fn proof(library: &Library, state: &State, fault: Id<Fault>) -> Vec<ProofEntry> {
    let mut entries = Vec::new();
    for (line, holding) in walk::proof_lines(library, state, fault) {
        match walk::holding_alternative(state, line).filter(|_| holding == Holding::Holds) {
            Some(claims) => entries.extend(claims.iter().map(|claim| {
                let words = walk::claim_words(library, claim);
                entry(library, state, words, std::iter::once(claim.datum()), None)
            })),
            None => {
                let data = line.alternatives.iter().flatten().map(Claim::datum);
                let words = walk::line_words(library, line);
                let lacking = lacking(library, state, line);
                entries.push(entry(library, state, words, data, Some(lacking)));
            }
        }
    }
    entries
}

fn entry(
    library: &Library,
    state: &State,
    claim: String,
    data: impl Iterator<Item = Datum>,
    lacking: Option<Lacking>,
) -> ProofEntry {
    let data: BTreeSet<Datum> = data.collect();
    let taken = data.into_iter().filter_map(|datum| {
        let standing = state.value(datum)?;
        Some((plain(library.title_of(datum)), plain(&standing.typed)))
    });
    let taken: Vec<(String, String)> = taken.collect();
    ProofEntry {
        claim: plain(&claim),
        measured: taken
            .iter()
            .map(|(title, value)| asked_words(title, value))
            .collect(),
        taken,
        holds: lacking.is_none(),
        lacking,
    }
}

fn lacking(library: &Library, state: &State, line: &ProofLine) -> Lacking {
    let lacks = |claims: &&Vec<Claim>| -> usize {
        let each = claims.iter().map(|claim| match walk::claim_holds(state, claim) {
            Holding::Holds => 0,
            Holding::Missing | Holding::Borderline => 1,
            Holding::Contradicted => CONTRADICTED,
        });
        each.sum()
    };
    let nearest = line.alternatives.iter().min_by_key(lacks);
    let claims = nearest.into_iter().flatten();
    Lacking {
        claims: claims.map(|claim| stands(library, state, claim)).collect(),
        others: line.alternatives.len().saturating_sub(1),
    }
}

/// A claim, behind how it stands: `not taken: …`.
fn stands(library: &Library, state: &State, claim: &Claim) -> String {
    let datum = claim.datum();
    let taken = state.value(datum);
    let holding = walk::claim_holds(state, claim);
    let how = match holding {
        Holding::Holds => "holds",
        Holding::Missing if taken.is_some() => "taken, but what it is held against is not known",
        Holding::Missing => "not taken",
        Holding::Borderline => "too near to its bound to tell",
        Holding::Contradicted => "what was taken says otherwise",
    };
    // A sign that holds was taken in the very words of the claim.
    let is_said = holding == Holding::Holds && matches!(datum, Datum::Sign(_));
    let shown = taken
        .filter(|_| !is_said)
        .map(|taken| format!(" (taken: {})", taken.typed));
    let shown = shown.unwrap_or_default();
    plain(&format!("{how}: {}{shown}", walk::claim_words(library, claim)))
}
