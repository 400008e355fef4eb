//! When a call counts as closed, and what it counts as.

use proofwalk::audit::Ending;
use proofwalk::walk::{End, Event, Role, Voiding};

use crate::told::{at, audited, told};

const TEN: &str = "2026-01-01T10:00:00Z";

#[test]
fn a_call_is_closed_when_it_has_ended_and_everything_is_put_back() {
    let call = told("a", TEN).left_open("door").after(60).verdict("valve_dead");
    assert_eq!(call.call().closed, None);
    let back = call.after(60).put_back("door");
    assert_eq!(back.call().closed, Some(at("2026-01-01T10:02:00Z")));
    let confirmed = back.after(60).closed();
    assert_eq!(confirmed.call().closed, Some(at("2026-01-01T10:03:00Z")));
}

#[test]
fn a_refusal_in_writing_closes_a_call_and_leaves_it_open() {
    let audit = audited(&[told("a", TEN)
        .left_open("door")
        .verdict("valve_dead")
        .refused("door")
        .closed()]);
    assert_eq!((audit.closed, audit.left_open), (1, 1));
    assert_eq!(audit.left_open_calls.get(0).unwrap().put_backs, ["door"]);
}

#[test]
fn a_call_abandoned_with_something_open_is_left_open_and_one_with_nothing_open_is_not() {
    let audit = audited(&[told("a", TEN).left_open("door"), told("b", TEN)]);
    assert_eq!((audit.closed, audit.left_open), (0, 1));
    assert_eq!(audit.left_open_calls.get(0).unwrap().session.id, "a");
}

#[test]
fn who_was_there_since_is_told_and_where_nobody_was_comes_first() {
    let open = |id: &str, time: &str, at: &'static str| told(id, time).equipment(at).left_open("door");
    let later = "2026-01-02T10:00:00Z";
    let audit = audited(&[
        open("a", TEN, "e1"),
        told("b", later).equipment("e1").outcome("fine").closed(),
        open("c", TEN, "e2"),
        // Left open again: nobody put anything right.
        open("d", later, "e2"),
        open("e", TEN, "e3"),
        // Before it, and at another furnace.
        told("f", "2026-01-01T09:00:00Z")
            .equipment("e3")
            .outcome("fine")
            .closed(),
    ]);
    let found: Vec<_> = (audit.left_open_calls.iter())
        .map(|call| (call.session.id, call.seen_since.map(|seen| seen.id)))
        .collect();
    let expected = [("d", None), ("e", None), ("c", None), ("a", Some("b"))];
    let expected = expected.map(|(id, seen)| (id.to_owned(), seen.map(str::to_owned)));
    assert_eq!(found, expected);
}

#[test]
fn what_the_tree_put_back_is_not_open() {
    let restored = Event::Restored {
        restores: vec!["door".to_owned()],
    };
    let audit = audited(&[told("a", TEN)
        .left_open("door")
        .then(restored)
        .verdict("valve_dead")]);
    assert_eq!((audit.closed, audit.left_open), (1, 0));
}

#[test]
fn each_way_to_end_is_counted_once() {
    let audit = audited(&[
        told("a", TEN).unproven().closed(),
        told("b", TEN).insisted("valve_dead").closed(),
        told("c", TEN).outcome("fine").closed(),
        told("d", TEN).verdict("valve_dead").closed(),
        told("e", TEN),
    ]);
    assert_eq!((audit.calls, audit.closed), (5, 4));
    assert_eq!((audit.unproven, audit.insisted), (1, 1));
    assert_eq!((audit.condemned.proven, audit.condemned.insisted), (1, 1));
}

#[test]
fn an_end_that_a_danger_interrupts_stands_again_when_the_danger_is_over() {
    let back = Event::Returned {
        outcome: "clear".to_owned(),
    };
    let interrupted = told("a", TEN)
        .verdict("valve_dead")
        .entered("smell", Role::Danger);
    assert_eq!(interrupted.call().ending, Ending::Open);
    let over = interrupted.then(back).closed().call();
    assert_eq!(
        over.verdict().and_then(|verdict| verdict.condemned()),
        Some("gas_valve")
    );
    assert!(over.closed.is_some());
}

#[test]
fn a_danger_ends_a_call_and_what_is_open_then_is_left_open() {
    let end = End::Verdict {
        fault: "leak".to_owned(),
        danger: true,
    };
    let audit = audited(&[told("a", TEN).left_open("door").then(Event::Ended(end)).closed()]);
    assert_eq!((audit.closed, audit.left_open), (0, 1));
}

#[test]
fn a_verdict_noted_on_the_way_is_that_of_a_call_that_ends_in_an_outcome() {
    let noted = |fault: &str| Event::Stated {
        fault: fault.to_owned(),
        noted: true,
    };
    let call = told("a", TEN)
        .then(noted("filter_loaded"))
        .measured("voltage", "24.1 V")
        .then(noted("valve_dead"));
    let went_on = call.clone().outcome("tuned").call();
    assert_eq!(went_on.verdict().unwrap().fault, "valve_dead");
    // Going back takes the answer and the verdict after it back.
    let went_back = call.then(Event::WentBack { to: 0 }).outcome("tuned").call();
    assert_eq!(went_back.verdict().unwrap().fault, "filter_loaded");
}

#[test]
fn a_reading_taken_back_or_taken_again_is_superseded() {
    let voided = Event::Voided {
        data: vec!["voltage".to_owned()],
        why: Voiding::Retake,
    };
    let call = told("a", TEN)
        .reading("voltage", "20.1 V", true)
        .then(voided)
        .measured("voltage", "24 V")
        .measured("co", "12 ppm")
        .then(Event::WentBack { to: 2 })
        .measured("co", "13 ppm");
    let marks: Vec<bool> = call
        .call()
        .readings
        .iter()
        .map(|taken| taken.superseded)
        .collect();
    assert_eq!(marks, [true, false, true, false]);
}

#[test]
fn a_log_that_was_made_to_fill_memory_does_not() {
    let mut call = told("a", TEN);
    for number in 0..3000 {
        call = call
            .measured("voltage", "24 V")
            .left_open(&format!("thing-{number}"))
            .took("a", "b");
    }
    let call = call.call();
    assert_eq!(
        (call.readings.len(), call.stays.len(), call.put_backs.open.len()),
        (2000, 2000, 2000)
    );
}
