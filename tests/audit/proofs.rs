//! Walks that prove work: nobody called for them.

use proofwalk::audit::{Audit, Callbacks};
use proofwalk::report::audit;

use crate::told::{Told, audited, done, told};

const REPAIRED: &str = "2026-01-05T10:00:00Z";
const NEXT_DAY: &str = "2026-01-06T10:00:00Z";

/// A call that replaces the gas valve.
fn repair() -> Told {
    told("a", REPAIRED).verdict("valve_dead").closed()
}

/// A walk of the tree that the library names for it, by a colleague of who did the work.
fn proof(time: &str) -> Told {
    told("proof", time).on("prove-it").by("lee")
}

/// An audit of these, of an archive that goes on long after them.
fn followed(calls: &[Told]) -> Audit {
    let end = done("end", "2026-06-01T00:00:00Z").equipment(None);
    audited(&[calls, &[end]].concat())
}

/// Callbacks, settled calls that came back on another visit, and proofs.
fn counts(back: &Callbacks) -> ((u64, u64), (u64, u64), u64) {
    let (rate, settled) = (&back.rate, &back.settled);
    ((rate.count, rate.of), (settled.count, settled.of), back.proofs)
}

#[test]
fn a_walk_that_proves_a_repair_is_no_call_that_came_back_nor_one_that_can() {
    for proven in [
        proof("2026-01-05T10:20:00Z").by("kim").outcome("proved").closed(),
        proof(NEXT_DAY).outcome("proved").closed(),
        proof(NEXT_DAY).verdict("nothing_found").closed(),
        // Without an analyser: it proves less, and nobody called for it either.
        proof(NEXT_DAY).unproven().closed(),
    ] {
        let audit = followed(&[repair(), proven]);
        assert_eq!(counts(&audit.callbacks), ((0, 1), (0, 1), 1));
        assert!(audit.callback_pairs.is_empty());
        assert_eq!(audit.learned[0].held, 1);
        let lee = audit
            .by_technician
            .iter()
            .find(|row| row.technician.as_deref() == Some("lee"));
        assert!(lee.is_none_or(|row| (row.tally.calls, row.tally.callbacks.of) == (1, 0)));
    }
    // One that was never closed: it is told among the calls that were left.
    let audit = followed(&[repair(), proof(NEXT_DAY)]);
    assert_eq!(counts(&audit.callbacks), ((0, 1), (0, 1), 0));
}

#[test]
fn what_a_proof_finds_to_do_is_a_call_like_any_other() {
    for found in ["board_dead", "filter_loaded", "leak", "gas_off"] {
        let audit = followed(&[repair(), proof(NEXT_DAY).verdict(found).closed()]);
        assert_eq!(counts(&audit.callbacks), ((1, 2), (1, 2), 0), "{found}");
        assert_eq!(audit.suspected_misdiagnoses.len(), 1, "{found}");
    }
    let noted = proof(NEXT_DAY).noted("filter_loaded").outcome("proved").closed();
    assert_eq!(
        counts(&followed(&[repair(), noted]).callbacks),
        ((1, 2), (1, 2), 0)
    );
}

#[test]
fn a_repair_is_followed_past_its_proof() {
    let back = told("back", "2026-01-15T10:00:00Z")
        .verdict("board_dead")
        .closed();
    let audit = followed(&[
        repair(),
        proof("2026-01-05T10:20:00Z").by("kim").outcome("proved").closed(),
        back,
    ]);
    assert_eq!(counts(&audit.callbacks), ((1, 2), (1, 2), 1));
    let pair = audit.callback_pairs.iter().next().unwrap();
    assert_eq!((pair.first.id.as_str(), pair.second.id.as_str()), ("a", "back"));
    // Otherwise whoever proves repairs would hide what was taken for bad.
    let suspected = audit.suspected_misdiagnoses.iter().next().unwrap();
    assert_eq!(suspected.condemned, "gas_valve");
}

#[test]
fn nobody_came_again_to_a_call_that_was_left_because_its_work_was_proven() {
    let left = told("a", REPAIRED).left_open("door").verdict("valve_dead");
    let audit = followed(&[left, proof(NEXT_DAY).outcome("proved").closed()]);
    assert_eq!(audit.came_again.len(), 0);
}

#[test]
fn how_many_walks_were_to_prove_work_is_told_beside_what_came_back() {
    let said = |proofs: &[Told]| {
        let text = audit::text(&followed(&[&[repair()], proofs].concat()), 78, false);
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let proved = proof(NEXT_DAY).outcome("proved").closed();
    assert!(said(&[proved]).contains(
        "1 walk was to prove work, and nothing to do came of it: nobody called for it, and it is in none"
    ),);
    assert!(!said(&[]).contains("to prove work"));
}
