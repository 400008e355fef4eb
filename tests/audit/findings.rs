//! What is found in calls, each with its sessions.

use proofwalk::walk::{Event, Role};

use crate::told::{Told, audited, done, ids, told};

const FIRST: &str = "2026-01-01T10:00:00Z";
const LATER: &str = "2026-01-08T10:00:00Z";

/// What is suspected of a valve that was condemned and came back as something else.
fn suspected(then: Told) -> usize {
    let first = told("a", FIRST).verdict("valve_dead").closed();
    audited(&[first, then.closed()]).suspected_misdiagnoses.len()
}

#[test]
fn a_part_condemned_and_another_remedy_next_makes_a_misdiagnosis_suspected() {
    for fault in ["board_dead", "filter_loaded", "gas_off", "leak"] {
        assert_eq!(suspected(told("b", LATER).verdict(fault)), 1, "{fault}");
    }
    assert_eq!(suspected(told("b", LATER).insisted("board_dead")), 1);
}

#[test]
fn the_same_part_again_or_no_fault_makes_none_suspected() {
    for fault in ["valve_dead", "valve_stuck", "nothing_found", "not_in_the_library"] {
        assert_eq!(suspected(told("b", LATER).verdict(fault)), 0, "{fault}");
    }
    assert_eq!(suspected(told("b", LATER).unproven()), 0);
    let noted = Event::Stated {
        fault: "board_dead".to_owned(),
        noted: true,
    };
    assert_eq!(suspected(told("b", LATER).then(noted).outcome("fine")), 0);
    assert_eq!(suspected(told("b", LATER).outcome("fine")), 0);
    assert_eq!(
        suspected(told("b", "2026-02-08T10:00:00Z").verdict("board_dead")),
        0,
        "too late"
    );
    assert_eq!(
        suspected(told("b", LATER).equipment("e2").verdict("board_dead")),
        0
    );
}

#[test]
fn what_was_set_right_first_condemned_nothing() {
    let first = told("a", FIRST).verdict("filter_loaded").closed();
    let audit = audited(&[first, told("b", LATER).verdict("board_dead").closed()]);
    assert_eq!(audit.callbacks.rate.count, 1);
    assert!(audit.suspected_misdiagnoses.is_empty());
}

#[test]
fn a_misdiagnosis_names_both_sessions_the_part_and_the_later_fault() {
    let first = told("a", FIRST).by("lee").insisted("valve_dead").closed();
    let audit = audited(&[first, told("b", LATER).verdict("board_dead").closed()]);
    let found = audit.suspected_misdiagnoses.get(0).unwrap();
    assert_eq!(
        (&*found.first.id, &*found.second.id, &*found.equipment),
        ("a", "b", "e1")
    );
    assert_eq!(
        (&*found.condemned, &*found.then, found.part.as_deref()),
        ("gas_valve", "board_dead", Some("board"))
    );
    assert_eq!((found.technician.as_deref(), found.insisted), (Some("lee"), true));
    let valve = audit.by_part.iter().find(|row| row.part == "gas_valve").unwrap();
    assert_eq!(
        (
            valve.proven,
            valve.tally.insisted,
            valve.tally.suspected_misdiagnoses
        ),
        (0, 1, 1)
    );
}

#[test]
fn groups_add_up_to_the_whole() {
    let audit = audited(&[
        done("a", FIRST).by("kim"),
        done("b", LATER).by("lee"),
        told("c", LATER).by("lee").equipment("e2").unproven().closed(),
    ]);
    let names: Vec<_> = audit
        .by_technician
        .iter()
        .map(|row| row.technician.as_deref().unwrap())
        .collect();
    assert_eq!(names, ["kim", "lee"]);
    let calls: Vec<u64> = audit.by_technician.iter().map(|row| row.tally.calls).collect();
    assert_eq!(calls, [1, 2]);
    let kim = &audit.by_technician[0].tally;
    assert_eq!(
        (kim.callbacks.count, kim.callbacks.of, kim.too_small),
        (1, 1, true)
    );
    assert_eq!(audit.by_technician[1].tally.unproven, 1);
    assert_eq!(audit.by_tree[0].tally.calls, 3);
    assert_eq!(audit.by_month[0].closed, 3);
    assert_eq!(
        (&*audit.by_month[0].month, audit.by_month[0].callbacks.count),
        ("2026-01", 1)
    );
}

#[test]
fn a_borderline_reading_counts_where_it_stood_and_led_to_a_verdict() {
    let audit = audited(&[
        told("a", FIRST)
            .reading("voltage", "20.1 V", true)
            .verdict("valve_dead")
            .closed(),
        told("b", FIRST)
            .reading("voltage", "20.1 V", true)
            .unproven()
            .closed(),
        told("c", FIRST)
            .reading("voltage", "20.1 V", true)
            .then(Event::WentBack { to: 0 })
            .measured("voltage", "24 V")
            .verdict("valve_dead")
            .closed(),
    ]);
    assert_eq!(audit.borderline.len(), 1);
    let found = audit.borderline.get(0).unwrap();
    assert_eq!(found.session.id, "a");
    assert_eq!((found.value, &*found.unit), (20.1, "V"));
}

/// A call that stands at the first step for so long, then goes on.
fn stood(id: &str, seconds: i64) -> Told {
    told(id, FIRST)
        .entered("no-heat", Role::Complaint)
        .after(seconds)
        .measured("voltage", "24.1 V")
        .took("no-heat/volts", "no-heat/bad")
}

#[test]
fn a_step_stalls_at_five_times_its_minutes_and_a_quarter_of_an_hour_at_least() {
    // The library gives four minutes.
    let audit = audited(&[
        stood("a", 20 * 60 - 1).verdict("valve_dead"),
        stood("b", 20 * 60).verdict("valve_dead"),
    ]);
    let step = &audit.steps[0];
    assert_eq!((&*step.step, step.times, step.stalled), ("no-heat/volts", 2, 1));
    let sessions: Vec<_> = step.sessions.iter().collect();
    assert_eq!((ids(&sessions), step.longest_minutes), (vec!["b"], 20.0));
}

#[test]
fn what_is_worked_out_takes_as_long_as_all_that_is_measured_for_it() {
    // CO takes twelve minutes and oxygen two.
    let stood = |id: &str, minutes: i64| {
        told(id, FIRST)
            .entered("no-gas", Role::Complaint)
            .after(60 * minutes)
            .took("no-gas/free", "no-gas/bad")
            .verdict("valve_dead")
    };
    let audit = audited(&[stood("a", 69), stood("b", 70)]);
    let step = &audit.steps[0];
    assert_eq!((&*step.step, step.stalled), ("no-gas/free", 1));
}

#[test]
fn what_a_verdict_lacks_takes_its_time_where_it_is_taken() {
    let stood = |id: &str, minutes: i64| {
        told(id, FIRST)
            .entered("no-cool", Role::Complaint)
            .after(60 * minutes)
            .measured("co", "12 ppm")
            .measured("oxygen", "6.1 %")
            .verdict("valve_dead")
    };
    let audit = audited(&[stood("a", 69), stood("b", 70)]);
    let step = &audit.steps[0];
    assert_eq!((&*step.step, step.stalled), ("no-cool/bad", 1));
}

#[test]
fn a_call_left_after_a_visit_stands_where_it_was_made() {
    let left = told("a", FIRST)
        .entered("no-heat", Role::Complaint)
        .took("no-heat/volts", "no-heat/bad")
        .entered("no-cool", Role::Visit)
        .then(Event::Returned {
            outcome: "fine".to_owned(),
        });
    let audit = audited(&[left]);
    let found: Vec<_> = (audit.steps.iter())
        .map(|step| (&*step.step, step.abandoned))
        .collect();
    assert_eq!(found, [("no-heat/bad", 1)]);
}

#[test]
fn a_step_where_calls_are_given_up_or_left_is_named_with_them() {
    let audit = audited(&[
        stood("a", 60),
        stood("b", 60).unproven(),
        told("c", FIRST).entered("no-heat", Role::Complaint),
        stood("d", 60).verdict("valve_dead"),
    ]);
    let found: Vec<_> = audit
        .steps
        .iter()
        .map(|step| {
            let sessions: Vec<_> = step.sessions.iter().map(|session| session.id).collect();
            (&*step.step, step.given_up, step.abandoned, sessions.join(" "))
        })
        .collect();
    assert_eq!(
        found,
        [
            ("no-heat/bad", 1, 1, "a b".to_owned()),
            ("no-heat/volts", 0, 1, "c".to_owned())
        ]
    );
    let way = &audit.passages[0];
    assert_eq!(
        (&*way.from, way.to.as_deref(), way.times),
        ("no-heat/bad", None, 3)
    );
}

#[test]
fn work_without_a_combustion_test_that_day_is_a_test_skipped() {
    let tested = |id: &str, time: &str| told(id, time).measured("co", "12 ppm");
    let audit = audited(&[
        tested("a", FIRST).verdict("valve_dead").closed(),
        told("b", FIRST).equipment("e2").verdict("valve_dead").closed(),
        tested("c", "2026-01-02T10:00:00Z")
            .equipment("e2")
            .outcome("fine")
            .closed(),
        told("d", FIRST).equipment("e3").verdict("valve_dead").closed(),
        tested("e", "2026-01-02T10:00:01Z")
            .equipment("e3")
            .outcome("fine")
            .closed(),
        told("f", FIRST).equipment("e4").verdict("leak").closed(),
    ]);
    let skipped = audit.combustion.skipped;
    assert_eq!((skipped.count, skipped.of), (1, 3));
    assert_eq!(
        ids(audit.combustion.calls.iter().map(|call| &call.session)),
        ["d"]
    );
}

#[test]
fn a_test_asked_for_and_not_taken_is_named_with_the_reason() {
    let refused = Event::CouldNot {
        datum: "oxygen".to_owned(),
        why: "no analyser".to_owned(),
    };
    let audit = audited(&[told("a", FIRST).then(refused).unproven().closed()]);
    // Nothing was worked on, so no test was skipped.
    assert_eq!(
        (audit.combustion.skipped.of, audit.combustion.calls.len()),
        (0, 0)
    );
    assert_eq!(audit.combustion.not_taken[0].why.as_deref(), Some("no analyser"));
}

/// Five takings, half a year apart.
fn over_years(volts: [&str; 5]) -> Vec<Told> {
    let times = [
        "2022-01-01",
        "2022-07-01",
        "2023-01-01",
        "2023-07-01",
        "2024-01-01",
    ];
    let calls = times.iter().zip(volts).map(|(day, volts)| {
        done(&format!("s{day}"), &format!("{day}T10:00:00Z")).measured("voltage", &format!("{volts} V"))
    });
    calls.collect()
}

#[test]
fn a_reading_that_falls_year_by_year_drifts() {
    let audit = audited(&over_years(["28.0", "27.1", "25.9", "25.0", "24.1"]));
    let drift = &audit.drift[0];
    assert_eq!(
        (&*drift.equipment, &*drift.reading, drift.times),
        ("e1", "voltage", 5)
    );
    assert_eq!((drift.first_value, drift.last_value), (28.0, 24.1));
    assert!((drift.a_year + 1.97).abs() < 0.02, "{drift:?}");
    assert_eq!(
        (&*drift.first.id, &*drift.last.id),
        ("s2022-01-01", "s2024-01-01")
    );
}

#[test]
fn a_reading_that_scatters_or_moves_within_its_meter_does_not_drift() {
    assert_eq!(
        audited(&over_years(["24.1", "27.0", "23.9", "26.5", "24.4"])).drift,
        []
    );
    assert_eq!(
        audited(&over_years(["24.0", "24.1", "24.2", "24.3", "24.4"])).drift,
        []
    );
}

#[test]
fn a_call_that_was_left_is_no_callback_and_is_told_with_the_next() {
    let left = told("a", FIRST).left_open("door_switch");
    let audit = audited(&[left, done("b", LATER)]);
    assert_eq!((audit.callbacks.rate.count, audit.callbacks.rate.of), (0, 1));
    let pair = audit.came_again.get(0).unwrap();
    assert_eq!(
        (&*pair.first.id, &*pair.second.id, pair.days.round()),
        ("a", "b", 7.0)
    );
    let later = done("b", "2026-03-01T10:00:00Z");
    assert!(audited(&[told("a", FIRST), later]).came_again.is_empty());
}
