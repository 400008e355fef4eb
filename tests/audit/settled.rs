//! What groups are held against: calls that have had their window, and came back on another visit.

use proofwalk::audit::{Audit, Rate, Tally};

use crate::told::{Told, audited, done, made_at, told, within};

/// A call that replaces a valve and is closed at the time.
fn repair(id: &str, time: &str) -> Told {
    told(id, time).verdict("valve_dead").closed()
}

/// A call that ends in an outcome of its tree.
fn check(id: &str, time: &str) -> Told {
    told(id, time).on("no-cool").outcome("done").closed()
}

/// Ends the archive, and follows nothing.
fn end(time: &str) -> Told {
    done("end", time).equipment(None)
}

fn parts(rate: Rate) -> (u64, u64) {
    (rate.count, rate.of)
}

/// Callbacks, those on the same visit, and settled calls.
fn counts(calls: &[Told]) -> ((u64, u64), u64, (u64, u64)) {
    let back = audited(calls).callbacks;
    (parts(back.rate), back.same_visit, parts(back.settled))
}

fn of<'a>(audit: &'a Audit, technician: &str) -> &'a Tally {
    let mut rows = audit.by_technician.iter();
    let row = rows.find(|row| row.technician.as_deref() == Some(technician));
    &row.unwrap().tally
}

#[test]
fn the_next_call_of_the_same_technician_within_an_hour_is_the_same_visit() {
    let at = |second: Told| {
        counts(&[
            repair("a", "2026-01-05T10:00:00Z"),
            second,
            end("2026-06-01T00:00:00Z"),
        ])
    };
    // A callback to the letter, in any case; the last instant of the hour is in it.
    assert_eq!(at(check("b", "2026-01-05T10:02:00Z")), ((1, 2), 1, (0, 2)));
    assert_eq!(at(check("b", "2026-01-05T11:00:00Z")), ((1, 2), 1, (0, 2)));
    assert_eq!(
        at(check("b", "2026-01-05T11:00:00.000000001Z")),
        ((1, 2), 0, (1, 2))
    );
    assert_eq!(
        at(check("b", "2026-01-05T10:02:00Z").by("lee")),
        ((1, 2), 0, (1, 2))
    );
}

#[test]
fn who_is_not_named_may_be_anybody() {
    let calls = [
        repair("a", "2026-01-05T10:00:00Z").by_nobody(),
        check("b", "2026-01-05T10:02:00Z").by_nobody(),
        end("2026-06-01T00:00:00Z"),
    ];
    assert_eq!(counts(&calls), ((1, 2), 0, (1, 2)));
}

#[test]
fn a_call_comes_back_though_a_check_on_the_same_visit_lies_between() {
    let calls = [
        repair("a", "2026-01-05T10:00:00Z"),
        check("b", "2026-01-05T10:02:00Z"),
        done("c", "2026-01-15T10:00:00Z"),
        end("2026-06-01T00:00:00Z"),
    ];
    assert_eq!(counts(&calls), ((2, 3), 1, (2, 3)));
    let audit = audited(&calls);
    let pairs: Vec<_> = audit.callback_pairs.iter().collect();
    let told: Vec<_> = (pairs.iter())
        .map(|pair| {
            (
                pair.same_visit,
                pair.then.as_deref(),
                pair.then_outcome.as_deref(),
            )
        })
        .collect();
    assert_eq!(
        told,
        [(true, None, Some("done")), (false, Some("nothing_found"), None)]
    );
    assert_eq!(pairs[1].outcome.as_deref(), Some("done"));
    let valve = &audit.by_part[0].tally;
    assert_eq!(
        (parts(valve.callbacks), valve.same_visit, parts(valve.settled)),
        ((1, 1), 1, (1, 1))
    );
}

#[test]
fn a_check_on_the_same_visit_leaves_a_proven_verdict_standing() {
    let calls = [
        repair("a", "2026-01-05T10:00:00Z"),
        check("b", "2026-01-05T10:02:00Z"),
        end("2026-06-01T00:00:00Z"),
    ];
    let learned = &audited(&calls).learned;
    let valve = learned.iter().find(|row| row.fault == "valve_dead").unwrap();
    assert_eq!((valve.proven, valve.held, valve.came_back), (1, 1, 0));
}

#[test]
fn a_call_is_settled_when_its_whole_window_lies_before_the_end() {
    let at = |end_of: &str| {
        let back = audited(&[repair("a", "2026-01-05T10:00:00Z"), end(end_of)]).callbacks;
        parts(back.settled)
    };
    assert_eq!(at("2026-02-04T09:59:59.999999999Z"), (0, 0));
    assert_eq!(at("2026-02-04T10:00:00Z"), (0, 1));
    // One that came back soon is none before that either: those that did not are none yet.
    let calls = [
        repair("a", "2026-01-05T10:00:00Z"),
        repair("b", "2026-01-06T10:00:00Z").by("lee"),
    ];
    assert_eq!(counts(&calls), ((1, 2), 0, (0, 0)));
}

#[test]
fn nobody_knows_how_long_a_call_was_followed_whose_clock_is_doubted() {
    let season = (1..=20).map(|day| {
        let id = format!("d{day:02}");
        done(&id, &format!("2026-02-{day:02}T10:00:00Z")).equipment_of(&id)
    });
    let doubted = [
        done("behind", "1970-01-01T00:00:10Z").equipment_of("d01"),
        done("ahead", "2099-01-01T10:00:00Z").equipment_of("d02"),
    ];
    let calls: Vec<Told> = season.chain(doubted).collect();
    assert_eq!(
        parts(made_at("2026-02-20T12:00:00Z", &calls).callbacks.settled),
        (0, 0)
    );
}

#[test]
fn settled_calls_of_groups_and_months_add_up_to_the_whole() {
    let calls = [
        repair("a", "2026-01-05T10:00:00Z").by("ana"),
        check("b", "2026-01-05T10:02:00Z").by("ana"),
        done("c", "2026-01-15T10:00:00Z").by("ben"),
        repair("d", "2026-02-20T10:00:00Z").equipment("e2").by("ben"),
        end("2026-03-01T00:00:00Z"),
    ];
    let audit = audited(&calls);
    assert_eq!(parts(audit.callbacks.settled), (2, 3));
    let rows = |name| {
        let tally = of(&audit, name);
        (tally.same_visit, parts(tally.settled))
    };
    assert_eq!([rows("ana"), rows("ben")], [(1, (2, 2)), (0, (0, 1))]);
    let months: Vec<_> = (audit.by_month.iter())
        .map(|month| parts(month.settled))
        .collect();
    assert_eq!(months, [(2, 3), (0, 0), (0, 0)]);
    let trees: Vec<_> = (audit.by_tree.iter())
        .map(|tree| parts(tree.tally.settled))
        .collect();
    assert_eq!(trees, [(1, 1), (1, 2)]);
}

#[test]
fn a_return_that_follows_two_calls_is_one_return() {
    let long = told("a", "2026-01-05T10:00:00Z")
        .by("ana")
        .verdict("valve_dead")
        .after(7200)
        .closed();
    let back = audited(&[
        long,
        done("b", "2026-01-05T11:00:00Z").by("ben"),
        done("c", "2026-01-15T10:00:00Z"),
    ])
    .callbacks;
    assert_eq!((back.rate.count, back.returns), (2, 1));
}

/// By hand: twenty calls of one day, of which one came back after two days, and an archive of fourteen.
fn a_fortnight() -> Vec<Told> {
    let calls = (0..20).map(|number| {
        let id = format!("f{number}");
        done(&id, "2026-01-01T00:00:00Z").equipment_of(&id)
    });
    let back = told("back", "2026-01-03T00:00:00Z").equipment_of("f0").by("lee");
    calls.chain([back, end("2026-01-15T00:00:00Z")]).collect()
}

#[test]
fn a_share_by_a_day_that_nobody_was_followed_to_is_not_known() {
    let back = audited(&a_fortnight()).callbacks;
    assert!((back.at_30_days - 0.05).abs() < 1e-12);
    assert_eq!((back.at_30_days_low, back.at_30_days_high), (None, None));
    assert_eq!((back.at_window, back.followed_days), (None, Some(14.0)));

    // By the window it is: S(14) = 19/20, and Greenwood's sum 1/(20 · 19).
    let back = within(14, &a_fortnight()).callbacks;
    assert!((back.at_window.unwrap() - 0.05).abs() < 1e-12);
    let off = 1.959_963_984_540_054 * (1.0_f64 / 380.0).sqrt() / 0.95_f64.ln();
    let (low, high) = (1.0 - 0.95_f64.powf(off.exp()), 1.0 - 0.95_f64.powf((-off).exp()));
    assert!((back.at_window_low.unwrap() - low).abs() < 1e-9);
    assert!((back.at_window_high.unwrap() - high).abs() < 1e-9);
    assert_eq!(back.at_30_days_low, None);
}

#[test]
fn a_share_is_known_once_all_have_come_back() {
    let calls = [
        done("a", "2026-01-01T00:00:00Z"),
        told("b", "2026-01-05T00:00:00Z"),
    ];
    let back = audited(&calls).callbacks;
    assert_eq!((back.at_window, back.followed_days), (Some(1.0), Some(4.0)));
    let none = audited(&[]).callbacks;
    assert_eq!((none.at_window, none.followed_days), (None, None));
}
