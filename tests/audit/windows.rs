//! What follows a call, and within which time.

use proofwalk::audit::WhatIsWrong;

use crate::told::{Told, audited, done, ids, made_at, told, within};

#[test]
fn the_last_instant_of_the_window_is_included() {
    let first = done("a", "2026-01-01T10:00:00Z");
    let audit = audited(&[first.clone(), done("b", "2026-01-31T10:00:00Z")]);
    assert_eq!((audit.callbacks.rate.count, audit.callbacks.rate.of), (1, 2));
    assert_eq!(audit.callback_pairs.iter().next().unwrap().days, 30.0);

    let audit = audited(&[first, done("b", "2026-01-31T10:00:00.000000001Z")]);
    assert_eq!((audit.callbacks.rate.count, audit.callbacks.rate.of), (0, 2));
}

#[test]
fn days_have_24_hours_though_a_clock_was_changed_between() {
    // Noon to noon by a wall clock that went forward on 8 March is 23 h, or a day less an hour.
    let first = done("a", "2026-03-07T12:00:00-05:00");
    let audit = within(1, &[first.clone(), done("b", "2026-03-08T13:00:00-04:00")]);
    assert_eq!(audit.callbacks.rate.count, 1);
    let audit = within(1, &[first, done("b", "2026-03-08T13:00:01-04:00")]);
    assert_eq!(audit.callbacks.rate.count, 0);
}

#[test]
fn the_window_begins_when_the_call_is_closed() {
    let long = told("a", "2026-01-01T10:00:00Z")
        .after(3600)
        .verdict("nothing_found")
        .after(3600)
        .closed();
    let audit = audited(&[long.clone(), done("b", "2026-01-31T12:00:00Z")]);
    assert_eq!(audit.callbacks.rate.count, 1);
    let audit = audited(&[long, done("b", "2026-01-31T12:00:01Z")]);
    assert_eq!(audit.callbacks.rate.count, 0);
}

#[test]
fn a_call_opened_before_the_other_was_closed_does_not_follow_it() {
    let long = told("a", "2026-01-01T10:00:00Z")
        .verdict("nothing_found")
        .left_open("door")
        .after(7200)
        .put_back("door")
        .closed();
    let audit = audited(&[long.clone(), done("b", "2026-01-01T11:00:00Z")]);
    assert_eq!(audit.callbacks.rate.count, 0);
    // The one after that follows both, but only the last of them comes right before it.
    let audit = audited(&[
        long,
        done("b", "2026-01-01T11:00:00Z"),
        done("c", "2026-01-05T00:00:00Z"),
    ]);
    assert_eq!(audit.callbacks.rate.count, 2);
}

#[test]
fn calls_of_one_instant_follow_in_the_order_of_their_ids() {
    let audit = audited(&[
        done("b", "2026-01-01T10:00:00Z"),
        done("a", "2026-01-01T10:00:00Z"),
    ]);
    let pairs: Vec<_> = audit.callback_pairs.iter().collect();
    assert_eq!(
        (pairs.len(), &*pairs[0].first.id, &*pairs[0].second.id),
        (1, "a", "b")
    );
}

#[test]
fn the_order_in_which_calls_come_changes_nothing() {
    let calls = [
        done("a", "2026-01-01T10:00:00Z"),
        done("b", "2026-01-11T10:00:00Z"),
        done("c", "2026-01-21T10:00:00Z").equipment("e2"),
        done("d", "2026-03-21T10:00:00Z"),
    ];
    let forwards = audited(&calls);
    let backwards = audited(&calls.into_iter().rev().collect::<Vec<_>>());
    assert_eq!(forwards.callback_pairs, backwards.callback_pairs);
    let firsts: Vec<_> = forwards.callback_pairs.iter().map(|pair| pair.first).collect();
    assert_eq!(ids(&firsts), ["a"]);
    assert_eq!(forwards.by_technician, backwards.by_technician);
}

#[test]
fn only_closed_calls_with_an_equipment_can_come_back() {
    let audit = audited(&[
        told("a", "2026-01-01T10:00:00Z"),
        done("b", "2026-01-02T10:00:00Z").equipment(None),
        done("c", "2026-01-03T10:00:00Z").equipment(None),
        told("d", "2026-01-04T10:00:00Z"),
    ]);
    assert_eq!((audit.calls, audit.closed, audit.without_equipment), (4, 2, 2));
    assert_eq!((audit.callbacks.rate.count, audit.callbacks.rate.of), (0, 0));
    assert_eq!((audit.callbacks.rate.rate, audit.callbacks.rate.high), (0.0, 1.0));
}

#[test]
fn an_open_call_is_a_callback_of_the_one_before() {
    let audit = audited(&[
        done("a", "2026-01-01T10:00:00Z"),
        told("b", "2026-01-04T10:00:00Z"),
    ]);
    assert_eq!((audit.callbacks.rate.count, audit.callbacks.rate.of), (1, 1));
}

#[test]
fn callbacks_of_the_same_complaint_are_counted_apart() {
    let audit = audited(&[
        done("a", "2026-01-01T10:00:00Z"),
        done("b", "2026-01-04T10:00:00Z").on("no-cool"),
        done("c", "2026-01-05T10:00:00Z").on("no-cool"),
    ]);
    assert_eq!((audit.callbacks.rate.count, audit.callbacks.rate.of), (2, 3));
    let same = audit.callbacks.same_complaint;
    assert_eq!((same.count, same.of), (1, 3));
    let marks: Vec<bool> = audit
        .callback_pairs
        .iter()
        .map(|pair| pair.same_complaint)
        .collect();
    assert_eq!(marks, [false, true]);
}

/// Constructed, exact by hand: of twenty calls four came back, at 3, 7, 12 and 25 days; the others were followed for 2, 5, 5, 9, 14,
/// 18, 20 and 28 days, and eight for 30. S(30) = 19/20 · 15/16 · 13/14 · 9/10 … so that 1097 of 4256 are expected back.
#[test]
fn calls_that_have_not_had_their_month_count_for_what_they_had() {
    let mut calls = Vec::new();
    let opened = |days_before_the_end: i64| {
        let end = crate::told::at("2026-03-01T00:00:00Z");
        (end - jiff::SignedDuration::from_hours(24 * days_before_the_end)).to_string()
    };
    let followed = [2, 5, 5, 9, 14, 18, 20, 28, 30, 30, 30, 30, 30, 30, 30, 30];
    for (number, days) in followed.into_iter().enumerate() {
        calls.push(done(&format!("f{number}"), &opened(days)).equipment_of(&format!("f{number}")));
    }
    for days in [3, 7, 12, 25] {
        let equipment = format!("c{days}");
        calls.push(done(&format!("{equipment}-1"), &opened(days + 1)).equipment_of(&equipment));
        // Left open, so that it is no closed call itself.
        calls.push(told(&format!("{equipment}-2"), &opened(1)).equipment_of(&equipment));
    }
    // The last event in the archive.
    calls.push(told("end", &opened(0)).equipment(None));
    let audit = audited(&calls);
    assert_eq!((audit.callbacks.rate.count, audit.callbacks.rate.of), (4, 20));
    assert!((audit.callbacks.at_30_days - 1097.0 / 4256.0).abs() < 1e-12);
    assert_eq!(audit.until.unwrap(), crate::told::at("2026-03-01T00:00:00Z"));
}

/// Source of the interval: 4 of 20 is 0.0807 to 0.4160 in the output of R's `binom.confint` (Wilson), as the statistics quote it.
#[test]
fn a_rate_has_wilsons_interval_and_says_when_it_is_of_too_few() {
    let calls: Vec<_> = (0..20)
        .flat_map(|number| {
            let equipment = format!("e{number}");
            let first = done(&format!("a{number}"), "2026-01-01T10:00:00Z").equipment_of(&equipment);
            let second = told(&format!("b{number}"), "2026-01-02T10:00:00Z").equipment_of(&equipment);
            [Some(first), (number < 4).then_some(second)]
        })
        .flatten()
        .collect();
    let rate = audited(&calls).callbacks.rate;
    assert!(
        (rate.low - 0.0807).abs() < 5e-5 && (rate.high - 0.4160).abs() < 5e-5,
        "{rate:?}"
    );
    assert!(!rate.too_small);
    assert!(
        audited(&calls[1..]).callbacks.rate.too_small,
        "nineteen are too few"
    );
}

/// A call a day in February, each at an equipment of its own.
fn february() -> Vec<Told> {
    let calls = (1..=20).map(|day| {
        let id = format!("d{day:02}");
        done(&id, &format!("2026-02-{day:02}T10:00:00Z")).equipment_of(&id)
    });
    calls.collect()
}

#[test]
fn a_clock_far_ahead_is_named_and_does_not_move_the_end_of_the_archive() {
    let ahead = done("ahead", "2099-01-01T10:00:00Z").equipment_of("d01");
    let calls = [february(), vec![ahead]].concat();
    let audit = made_at("2026-02-20T12:00:00Z", &calls);
    assert_eq!(audit.until, "2026-02-20T10:00:00Z".parse().ok());
    assert_eq!(
        (audit.unsound.len(), audit.unsound[0].what),
        (1, WhatIsWrong::ClockAhead)
    );
    assert_eq!(audit.unsound[0].session.id, "ahead");
    assert_eq!((audit.calls, audit.callbacks.rate.of), (21, 21));
    assert!(audit.follow_ups.iter().all(|follow| follow.days() >= 0.0));
    // Up to a day ahead, a clock is believed.
    let audit = made_at("2098-12-31T10:00:00Z", &calls);
    assert_eq!(
        (audit.until, audit.unsound.len(), audit.ahead),
        ("2099-01-01T10:00:00Z".parse().ok(), 0, 0)
    );
}

#[test]
fn where_many_are_ahead_it_is_this_machines_clock_that_is_behind() {
    let audit = made_at("2026-02-18T09:00:00Z", &february());
    assert_eq!(
        (audit.until, audit.unsound.len(), audit.ahead),
        ("2026-02-20T10:00:00Z".parse().ok(), 0, 2)
    );
    assert!(
        proofwalk::report::audit::text(&audit, 80, false).contains("2 calls are more than a day ahead"),
        "whoever reads it is told"
    );
}

/// Twenty calls of February 2026, with one of 1970 at an equipment of theirs and one at its own.
fn with_one_behind() -> Vec<Told> {
    [
        february(),
        vec![done("behind", "1970-01-01T00:00:10Z").equipment_of("d01")],
    ]
    .concat()
}

#[test]
fn a_clock_years_behind_is_named_and_does_not_move_the_start_of_the_archive() {
    let audit = audited(&with_one_behind());
    assert_eq!(audit.from, "2026-02-01T10:00:00Z".parse().ok());
    assert_eq!(audit.until, "2026-02-20T10:00:00Z".parse().ok());
    assert_eq!(
        (audit.unsound.len(), audit.unsound[0].what),
        (1, WhatIsWrong::ClockBehind)
    );
    assert_eq!(audit.unsound[0].session.id, "behind");
    // It counts all the same, but nobody knows how long it was followed.
    assert_eq!(
        (audit.calls, audit.callbacks.rate.count, audit.callbacks.rate.of),
        (21, 0, 21)
    );
    assert!(
        audit
            .follow_ups
            .iter()
            .all(|follow| follow.days() < 20.0 && !follow.called_back())
    );
    let held: u64 = audit.learned.iter().map(|row| row.held).sum();
    assert_eq!(held, 0, "none had its thirty days");
}

#[test]
fn a_year_between_calls_is_no_reason_to_doubt_a_clock_and_a_day_more_is() {
    let apart = |first: &str| audited(&[february(), vec![done("first", first)]].concat()).from;
    assert_eq!(apart("2025-02-01T10:00:00Z"), "2025-02-01T10:00:00Z".parse().ok());
    assert_eq!(apart("2025-01-31T10:00:00Z"), "2026-02-01T10:00:00Z".parse().ok());
}

#[test]
fn where_many_calls_are_far_behind_the_archive_has_a_gap() {
    let years = |many: usize| {
        let old = (0..many).map(|number| done(&format!("old{number}"), "2019-05-01T10:00:00Z"));
        audited(&february().into_iter().chain(old).collect::<Vec<_>>())
    };
    assert_eq!(years(1).from, "2026-02-01T10:00:00Z".parse().ok());
    let audit = years(2);
    assert_eq!(
        (audit.from, audit.unsound.len()),
        ("2019-05-01T10:00:00Z".parse().ok(), 1),
        "only a twin"
    );
}

#[test]
fn of_a_few_calls_one_may_be_doubted_at_either_end_and_of_two_none() {
    let few = [
        done("a", "1999-12-31T10:00:00Z").equipment_of("a"),
        done("b", "2026-02-01T10:00:00Z").equipment_of("b"),
        done("c", "2026-02-05T10:00:00Z").equipment_of("c"),
        done("d", "2080-01-01T10:00:00Z").equipment_of("d"),
    ];
    let audit = made_at("2026-02-06T00:00:00Z", &few);
    assert_eq!(
        (audit.from, audit.until),
        (
            "2026-02-01T10:00:00Z".parse().ok(),
            "2026-02-05T10:00:00Z".parse().ok()
        )
    );
    let what: Vec<_> = audit.unsound.iter().map(|file| file.what).collect();
    assert_eq!(what, [WhatIsWrong::ClockAhead, WhatIsWrong::ClockBehind]);
    let audit = made_at("2026-02-06T00:00:00Z", &few[2..]);
    assert_eq!(
        (audit.until, audit.unsound.len()),
        ("2080-01-01T10:00:00Z".parse().ok(), 0)
    );
}

/// By hand: the call of 1 February is closed, and what came next at its equipment is dated 2099. It was followed for 19 days.
#[test]
fn what_is_dated_after_the_end_does_not_make_a_call_hold() {
    let ahead = done("ahead", "2099-01-01T10:00:00Z").equipment_of("d01");
    let audit = made_at("2026-02-20T12:00:00Z", &[february(), vec![ahead]].concat());
    let longest = audit
        .follow_ups
        .iter()
        .map(|follow| follow.days())
        .fold(0.0, f64::max);
    assert_eq!(
        (
            longest,
            audit
                .follow_ups
                .iter()
                .filter(|follow| follow.called_back())
                .count()
        ),
        (19.0, 0)
    );
    assert!(audit.learned.iter().all(|row| row.held == 0));
}

/// A call of a quarter of an hour, of which one record lies sixty days ahead.
fn jumping(id: &str, time: &str) -> Told {
    let sixty_days = 60 * 24 * 60 * 60;
    told(id, time)
        .equipment_of(id)
        .after(sixty_days)
        .measured("voltage", "24.0 V")
        .after(900 - sixty_days)
        .verdict("nothing_found")
        .closed()
}

/// By hand: twenty calls from 1 to 20 February, none of which has had its thirty days. A record of 11 April is no reason to say that
/// they have.
#[test]
fn a_clock_that_went_back_does_not_move_the_ends_of_the_archive() {
    let early = told("early", "2026-01-15T10:00:00Z").equipment_of("early");
    let early = early.after(-3600).verdict("nothing_found").closed();
    // However many there are.
    for jumps in 1..=4 {
        let jumps: Vec<Told> = (1..=jumps)
            .map(|day| {
                jumping(
                    &format!("jump{day}"),
                    &format!("2026-02-{:02}T10:00:00Z", 9 + day),
                )
            })
            .collect();
        let calls = [february(), vec![early.clone()], jumps].concat();
        let audit = made_at("2026-05-01T00:00:00Z", &calls);
        assert_eq!(
            (audit.from, audit.until),
            (
                "2026-02-01T10:00:00Z".parse().ok(),
                "2026-02-20T10:00:00Z".parse().ok()
            )
        );
        assert_eq!(
            (audit.callbacks.settled.of, audit.callbacks.at_30_days_high),
            (0, None)
        );
        assert_eq!(audit.callbacks.followed_days, Some(19.0));
        assert!(
            audit
                .unsound
                .iter()
                .all(|file| file.what == WhatIsWrong::ClockBack)
        );
        assert_eq!(
            (audit.unsound.len() as u64, audit.calls),
            (calls.len() as u64 - 20, calls.len() as u64)
        );
    }
}

#[test]
fn a_jump_ahead_of_the_audit_is_named_as_both_and_counts_for_no_others() {
    let jumps = (1..=4).map(|day| jumping(&format!("jump{day}"), &format!("2026-02-{day:02}T11:00:00Z")));
    let ahead = done("ahead", "2099-01-01T10:00:00Z").equipment_of("d01");
    let calls: Vec<Told> = february().into_iter().chain(jumps).chain([ahead]).collect();
    let audit = made_at("2026-02-20T12:00:00Z", &calls);
    assert_eq!(
        (audit.until, audit.ahead),
        ("2026-02-20T10:00:00Z".parse().ok(), 0)
    );
    let named = |what| audit.unsound.iter().filter(|file| file.what == what).count();
    assert_eq!(
        (named(WhatIsWrong::ClockBack), named(WhatIsWrong::ClockAhead)),
        (4, 5)
    );
}

/// By hand: the second was opened by a clock two months ahead, and closed on 5 January. The archive is five days long.
#[test]
fn where_every_clock_went_back_the_archive_ends_with_an_opening_or_a_closing_before_it() {
    let right = told("right", "2026-03-05T10:00:00Z").equipment_of("right");
    let right = right.after(-59 * 24 * 60 * 60).verdict("nothing_found").closed();
    let audit = audited(&[jumping("jump", "2026-01-01T10:00:00Z"), right]);
    assert_eq!(
        (audit.from, audit.until),
        (
            "2026-01-01T10:00:00Z".parse().ok(),
            "2026-01-05T10:00:00Z".parse().ok()
        )
    );
    assert_eq!(audit.callbacks.settled.of, 0);
}
