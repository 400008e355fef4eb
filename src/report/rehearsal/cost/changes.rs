//! Which questions could change places, and what that would spare.

use super::{Page, name, names};
use crate::bench::cost::{Basis, Cost, Proposal};
use crate::library::{Datum, Id, Kind, Library, Step};

/// How many changes are shown.
const SHOWN: usize = 6;

/// A change that spares less, in minutes, is told of only to another program: it drowns in what the minutes may be off.
const WORTH: f64 = 0.05;

/// Columns that the questions of a change are indented by.
const INDENT: usize = 8;

pub(super) fn write(page: &mut Page, cost: &Cost<'_>) {
    page.line(
        0,
        "WHICH REORDERING SPARES MOST, each on its own, in minutes a call of its tree",
    );
    let all = cost.trees.iter().flat_map(|tree| &tree.proposals);
    let (mut worth, small): (Vec<&Proposal>, Vec<_>) = all.partition(|proposal| proposal.gain >= WORTH);
    worth.sort_by(|one, other| other.gain.total_cmp(&one.gain));
    for proposal in worth.iter().take(SHOWN) {
        change(page, cost.library, proposal);
    }
    if worth.is_empty() {
        page.hanging(
            2,
            2,
            "No question can come earlier and spare minutes, by what may pass what.",
        );
    }
    let more = worth.len().saturating_sub(SHOWN) + small.len();
    if more > 0 {
        page.hanging(
            2,
            2,
            &format!("{more} that spare less: `--format json` lists them."),
        );
    }
    for line in [
        "sure: every way that is left there asks it anyway, and only the order changes.",
        "judge: you must know whether it can be asked so early, and whether it shows for the other faults what it shows for \
         most; the tree does not say.",
        "Never proposed: to pass work, the plate, what a question leans on, a question of danger, or one with fewer cautions or \
         put-backs. What proves a verdict stays.",
    ] {
        page.hanging(2, 2, line);
    }
    sure(page, cost);
    page.blank();
}

/// A change with what its questions ask.
fn change(page: &mut Page, library: &Library, proposal: &Proposal) {
    let place = proposal
        .now
        .first()
        .map(|step| library.files.place(library[*step].at));
    let place = place
        .map(|place| format!("{}:{}", place.file, place.line))
        .unwrap_or_default();
    let then = names(library, &proposal.then);
    let words = match then.as_slice() {
        [first, second] => format!("ask `{first}` before `{second}`"),
        _ => format!(
            "ask in this order: {} (now {})",
            then.join(", "),
            names(library, &proposal.now).join(", ")
        ),
    };
    let basis = match proposal.basis {
        Basis::Known => "sure",
        Basis::ToJudge => "judge",
    };
    page.hanging(
        2,
        INDENT - 2,
        &format!("{:.2}  {place}  {words}: {basis}", proposal.gain),
    );
    for step in &proposal.then {
        if let Some(asks) = asks(library, *step) {
            page.hanging(INDENT, 2, &format!("{}: {asks}", library[*step].name));
        }
    }
}

/// What a step asks for, in words.
fn asks(library: &Library, step: Id<Step>) -> Option<&str> {
    let datum = match library[step].kind {
        Kind::Measure { reading, .. } => Datum::Reading(reading),
        Kind::Observe { sign, .. } => Datum::Sign(sign),
        Kind::Plate { field, .. } => Datum::Field(field),
        _ => return None,
    };
    Some(library.title_of(datum))
}

/// What all sure changes of a tree come to together.
fn sure(page: &mut Page, cost: &Cost<'_>) {
    let spared = cost.trees.iter().filter_map(|tree| {
        let known = tree.known.filter(|known| tree.minutes - known >= WORTH)?;
        Some(format!(
            "{} {known:.1} instead of {:.1}",
            name(cost.library, tree),
            tree.minutes
        ))
    });
    let spared: Vec<String> = spared.collect();
    if !spared.is_empty() {
        page.hanging(
            2,
            2,
            &format!(
                "The best order that needs no judging, all of its changes together: {}.",
                spared.join(", ")
            ),
        );
    }
}
