//! Three months of a small company, each number counted by hand: edges of the window, zones, houses with two furnaces, names that are
//! missing, calls that overlap, and verdicts that were right or wrong.

use proofwalk::audit::{Audit, Tally};

use crate::told::{Told, audited, done, ids, told};

/// A verdict, closed at once.
fn ended(id: &str, time: &str, fault: &str) -> Told {
    told(id, time).verdict(fault).closed()
}

fn calls() -> Vec<Told> {
    let mut calls = Vec::new();
    let mut at = |equipment: &str, list: Vec<Told>| {
        calls.extend(list.into_iter().map(|call| call.equipment_of(equipment)));
    };
    at(
        "edge",
        vec![
            // Thirty days to the last instant: a callback. An instant more: none.
            done("a1", "2026-01-10T08:00:00Z").by("ana"),
            done("a2", "2026-02-09T08:00:00Z").by("ben"),
            done("a3", "2026-03-11T08:00:00.000000001Z"),
        ],
    );
    at(
        "same-day",
        vec![
            // A valve, and seven hours later another complaint and the board: callback and suspected misdiagnosis.
            ended("b1", "2026-01-12T08:00:00Z", "valve_dead").by("ana"),
            ended("b2", "2026-01-12T15:30:00Z", "board_dead")
                .by("ana")
                .on("no-cool"),
        ],
    );
    at(
        "clock-changed",
        vec![
            // Thirty days of 24 h, though the wall clock shows an hour more: summer time began on 8 March.
            done("c1", "2026-02-15T23:30:00-05:00").by("ben"),
            done("c2", "2026-03-18T00:30:00-04:00").by("ben"),
        ],
    );
    // Closed in February where it stands, and in January by UTC.
    at("east", vec![done("d1", "2026-02-01T00:30:00+01:00").by("ana")]);
    // Two furnaces of one house: nobody called back about either.
    at(
        "furnace-1",
        vec![done("e1", "2026-01-20T08:00:00Z").at_site("house")],
    );
    at(
        "furnace-2",
        vec![done("e2", "2026-01-22T08:00:00Z").at_site("house")],
    );
    at("nobodys", vec![done("f2", "2026-01-23T08:00:00Z").by_nobody()]);
    at(
        "next-day",
        vec![
            // Left overnight and closed the day after; another came in between, and one thirty days after the closing.
            told("g1", "2026-02-02T09:00:00Z")
                .by("ben")
                .left_open("door")
                .verdict("valve_dead")
                .after(25 * 3600)
                .put_back("door")
                .closed(),
            done("g2", "2026-02-02T18:00:00Z").by("ana"),
            ended("g3", "2026-03-05T10:00:00Z", "filter_loaded").by("ana"),
        ],
    );
    at(
        "same-part",
        vec![
            // The same part again, then nothing proven: two callbacks, and no misdiagnosis.
            ended("h1", "2026-02-10T08:00:00Z", "valve_dead"),
            ended("h2", "2026-02-20T08:00:00Z", "valve_stuck"),
            told("h3", "2026-02-25T08:00:00Z").by("ana").unproven().closed(),
        ],
    );
    at(
        "refused",
        vec![
            told("i1", "2026-02-12T08:00:00Z")
                .by("ben")
                .left_open("tap")
                .verdict("leak")
                .refused("tap")
                .closed(),
        ],
    );
    // Insisted on, and right as far as is known.
    at(
        "right",
        vec![
            told("j1", "2026-02-14T08:00:00Z")
                .by("ana")
                .insisted("board_dead")
                .closed(),
        ],
    );
    at(
        "wrong",
        vec![
            told("k1", "2026-02-14T09:00:00Z")
                .by("ana")
                .insisted("valve_dead")
                .closed(),
            ended("k2", "2026-02-17T08:00:00Z", "board_dead").by("ben"),
        ],
    );
    at(
        "left",
        vec![
            // Driven away from, and seen by another the next day: no callback.
            told("l1", "2026-02-18T08:00:00Z").by("ben").left_open("door"),
            ended("l2", "2026-02-19T08:00:00Z", "gas_off"),
        ],
    );
    // Without an equipment nothing follows: one of the house above, and one that ends the archive.
    calls.push(
        done("f1", "2026-01-21T08:00:00Z")
            .equipment(None)
            .at_site("house"),
    );
    calls.push(done("z", "2026-06-01T00:00:00Z").equipment(None));
    calls
}

fn row(tally: &Tally) -> [u64; 8] {
    [
        tally.calls,
        tally.closed,
        tally.callbacks.of,
        tally.callbacks.count,
        tally.suspected_misdiagnoses,
        tally.unproven,
        tally.insisted,
        tally.left_open,
    ]
}

#[test]
fn every_number_is_the_one_counted_by_hand() {
    let audit = audited(&calls());
    assert_eq!((audit.calls, audit.closed, audit.without_equipment), (25, 24, 2));
    let back = &audit.callbacks;
    assert_eq!(
        (back.rate.count, back.rate.of, back.same_complaint.count),
        (7, 22, 6)
    );
    // All 22 were followed for thirty days and more, or came back by then.
    assert!(
        (back.at_30_days - 7.0 / 22.0).abs() < 1e-12,
        "{}",
        back.at_30_days
    );
    assert_eq!((audit.unproven, audit.insisted, audit.left_open), (1, 2, 2));
    assert!(
        audit.unsound.iter().all(|file| file.session.id == "l1"),
        "{:?}",
        audit.unsound
    );

    let firsts = |audit: &Audit| {
        let firsts: Vec<_> = audit.callback_pairs.iter().map(|pair| pair.first).collect();
        ids(&firsts).join(" ")
    };
    assert_eq!(firsts(&audit), "c1 a1 g1 b1 h1 h2 k1");
    let suspected: Vec<_> = audit.suspected_misdiagnoses.iter().collect();
    let suspected: Vec<_> = (suspected.iter())
        .map(|one| {
            (
                &*one.first.id,
                &*one.second.id,
                &*one.condemned,
                &*one.then,
                one.insisted,
            )
        })
        .collect();
    assert_eq!(
        suspected,
        [
            ("g1", "g3", "gas_valve", "filter_loaded", false),
            ("b1", "b2", "gas_valve", "board_dead", false),
            ("k1", "k2", "gas_valve", "board_dead", true),
        ]
    );
    let again: Vec<_> = audit.came_again.iter().collect();
    assert_eq!((again.len(), &*again[0].first.id, again[0].days), (1, "l1", 1.0));
}

#[test]
fn every_group_is_the_one_counted_by_hand() {
    let audit = audited(&calls());
    let rows: Vec<_> = (audit.by_technician.iter())
        .map(|each| (each.technician.as_deref(), row(&each.tally)))
        .collect();
    assert_eq!(
        rows,
        [
            (Some("ana"), [9, 9, 9, 3, 2, 1, 2, 0]),
            (Some("ben"), [7, 6, 6, 2, 1, 0, 0, 2]),
            (Some("kim"), [8, 8, 6, 2, 0, 0, 0, 0]),
            (None, [1, 1, 1, 0, 0, 0, 0, 0]),
        ]
    );
    let rows: Vec<_> = (audit.by_part.iter())
        .map(|each| (&*each.part, each.proven, row(&each.tally)))
        .collect();
    assert_eq!(
        rows,
        [
            ("board", 2, [3, 3, 3, 0, 0, 0, 1, 0]),
            ("gas_valve", 4, [5, 5, 5, 5, 3, 0, 1, 0]),
        ]
    );
    let rows: Vec<_> = (audit.by_month.iter())
        .map(|each| (&*each.month, each.closed, each.callbacks.of, each.callbacks.count))
        .collect();
    assert_eq!(
        rows,
        [
            ("2026-01", 8, 7, 2),
            ("2026-02", 12, 12, 5),
            ("2026-03", 3, 3, 0),
            ("2026-06", 1, 0, 0)
        ]
    );
    let rows: Vec<_> = (audit.learned.iter())
        .map(|each| (&*each.fault, each.proven, each.held, each.came_back))
        .collect();
    assert_eq!(
        rows,
        [
            ("board_dead", 2, 2, 0),
            ("filter_loaded", 1, 1, 0),
            ("gas_off", 1, 1, 0),
            ("leak", 1, 1, 0),
            ("nothing_found", 10, 8, 2),
            ("valve_dead", 3, 0, 3),
            ("valve_stuck", 1, 0, 1),
        ]
    );
}
