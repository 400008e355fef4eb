//! Calls that belong to one visit: they hang together from call to call.

use jiff::SignedDuration;
use proofwalk::audit::{Audit, Call};
use proptest::collection::vec;
use proptest::prelude::*;

use crate::told::{Told, at, audited, done, told};

/// An audit of these, of an archive that goes on long after them.
fn followed(calls: &[Told]) -> Audit {
    let end = done("end", "2026-06-01T00:00:00Z").equipment(None);
    audited(&[calls, &[end]].concat())
}

/// Callbacks on the same visit, and settled calls that came back on another.
fn counts(calls: &[Told]) -> (u64, u64) {
    let back = followed(calls).callbacks;
    (back.same_visit, back.settled.count)
}

fn repair() -> Told {
    told("a", "2026-01-05T10:00:00Z").verdict("valve_dead").closed()
}

/// A check that takes so many minutes.
fn check(id: &str, time: &str, minutes: i64) -> Told {
    told(id, time)
        .on("no-cool")
        .after(60 * minutes)
        .outcome("done")
        .closed()
}

#[test]
fn who_goes_on_from_check_to_check_is_on_one_visit_however_long_it_takes() {
    let calls = [
        repair(),
        check("b", "2026-01-05T10:50:00Z", 45),
        check("c", "2026-01-05T12:30:00Z", 45),
        check("d", "2026-01-05T14:00:00Z", 5),
    ];
    assert_eq!(counts(&calls), (3, 0));
    let late = check("e", "2026-01-05T15:05:00.000000001Z", 5);
    assert_eq!(counts(&[&calls[..], &[late]].concat()), (3, 4), "one too late");
}

#[test]
fn a_colleague_between_them_does_not_part_a_visit_and_is_on_another() {
    let calls = [
        repair(),
        check("b", "2026-01-05T10:30:00Z", 1).by("lee"),
        check("c", "2026-01-05T10:50:00Z", 1),
    ];
    // The colleague came to the repair, and the technician to the colleague's check.
    assert_eq!(counts(&calls), (0, 2));
    let last = &followed(&calls).callback_pairs.get(1).unwrap();
    assert_eq!((last.first.id.as_str(), last.same_visit), ("b", false));
}

#[test]
fn work_may_take_the_day_before_it_is_proven_and_what_that_finds_was_found_before_anybody_called() {
    let found = |time: &str| {
        let proof = told("b", time).on("prove-it").verdict("filter_loaded").closed();
        followed(&[repair(), proof])
    };
    let same = found("2026-01-05T18:00:00Z");
    assert_eq!((same.callbacks.same_visit, same.callbacks.settled.count), (1, 0));
    let suspected = same.suspected_misdiagnoses.get(0).unwrap();
    assert!(suspected.same_visit);
    let late = found("2026-01-05T18:00:00.000000001Z");
    assert_eq!((late.callbacks.same_visit, late.callbacks.settled.count), (0, 1));
    assert!(!late.suspected_misdiagnoses.get(0).unwrap().same_visit);
    assert_eq!(
        counts(&[repair(), check("b", "2026-01-05T18:00:00Z", 5)]),
        (0, 1),
        "another complaint within the day is one"
    );
}

#[test]
fn a_call_that_was_left_open_for_weeks_makes_no_visit_of_them() {
    let month = 60 * 24 * 30;
    let open = check("a", "2026-01-05T10:00:00Z", month);
    let within = |time: &str| {
        counts(&[
            open.clone(),
            check("b", time, 1),
            check("c", "2026-02-20T10:00:00Z", 1),
        ])
    };
    assert_eq!(
        within("2026-01-06T10:00:00Z"),
        (0, 1),
        "overlapping, within a day"
    );
    assert_eq!(within("2026-01-06T10:00:01Z"), (0, 1), "overlapping, later");
    assert_eq!(within("2026-02-04T10:30:00Z"), (1, 2), "after it");
}

/// What may follow whom, by the definition alone: a call, and whether its technician went on to it from the one before.
fn goes_on(before: &Call, call: &Call) -> bool {
    let left = before.closed.unwrap_or(before.last);
    let hours = |hours| SignedDuration::from_hours(hours);
    let after = call.opened.duration_since(left);
    let in_time = match after.is_negative() {
        true => call.opened.duration_since(before.opened) <= hours(24),
        false => after <= hours(if call.after_work { 8 } else { 1 }),
    };
    call.technician.is_some() && before.technician == call.technician && in_time
}

/// The same counts, by looking at all calls for each.
fn by_definition(calls: &[Call]) -> (u64, u64) {
    let mut number = Vec::new();
    for (at, call) in calls.iter().enumerate() {
        let before = (0..at)
            .rev()
            .find(|one| calls[*one].technician == call.technician);
        number.push(match before.filter(|one| goes_on(&calls[*one], call)) {
            Some(one) => number[one],
            None => at,
        });
    }
    let window = SignedDuration::from_hours(30 * 24);
    let (mut same, mut another) = (0, 0);
    for (at, call) in calls.iter().enumerate() {
        let Some(closed) = call.closed.filter(|_| !call.is_proof()) else {
            continue;
        };
        let mut next = (at + 1..calls.len())
            .filter(|next| calls[*next].opened >= closed && !calls[*next].is_proof())
            .map(|next| {
                let is_soon = calls[next].opened.duration_since(closed) <= window;
                let is_same = number[next] == number[at] || goes_on(call, &calls[next]);
                (is_soon, is_same)
            });
        let first = next.clone().next();
        same += u64::from(first == Some((true, true)));
        another += u64::from(next.find(|(_, same)| !same).is_some_and(|(soon, _)| soon));
    }
    (same, another)
}

proptest! {
    #[test]
    fn visits_are_counted_as_they_are_defined(
        steps in vec((0_i64..20, 0_i64..16, 0_u8..3, 0_u8..6), 1..14)
    ) {
        let mut opened = at("2026-01-01T00:00:00Z");
        let mut calls = Vec::new();
        for (number, (later, long, who, what)) in steps.into_iter().enumerate() {
            // Half-hours, so that bounds are met; some squared are days.
            opened += SignedDuration::from_mins(30 * if later > 16 { later.pow(2) } else { later });
            let call = told(&format!("{number:02}"), &opened.to_string()).after(1800 * long);
            let call = match who {
                0 => call.by_nobody(),
                1 => call,
                _ => call.by("lee"),
            };
            calls.push(match what {
                0 => call.on("prove-it").outcome("proved").closed(),
                1 => call.on("prove-it").verdict("filter_loaded").closed(),
                2 => call,
                _ => call.verdict("valve_dead").closed(),
            });
        }
        let told: Vec<Call> = calls.iter().map(Told::call).collect();
        prop_assert_eq!(counts(&calls), by_definition(&told));
    }
}
