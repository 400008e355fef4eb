//! What an audit holds grows with the equipment, by a few dozen bytes with each call, and with nothing that happens on a call.
//!
//! Bytes are counted for the whole process, so this is its only test.

use std::alloc::System;

use jiff::{SignedDuration, Timestamp};
use proofwalk::audit::{Auditor, Call, Ending, PutBacks, Remedy, Stay, Taken, Verdict, Window};
use stats_alloc::{INSTRUMENTED_SYSTEM, Region, StatsAlloc};

#[global_allocator]
static ALLOCATOR: &StatsAlloc<System> = &INSTRUMENTED_SYSTEM;

/// Furnaces that are called to.
const FURNACES: usize = 256;

/// Bytes that one more call at the same equipment may take: what is kept of it is 48.
const EACH: usize = 56;

#[test]
fn memory_grows_with_equipment_and_not_with_events() {
    // So many that each reading of each furnace is summed up already, and that the list of calls is just full.
    let few = held(8 << 10, 2);
    let more = held(16 << 10, 2);
    let each = (more - few) / (8 << 10);
    assert!(each <= EACH, "{each} bytes with each call");
    let longer = held(8 << 10, 16);
    assert!(
        longer < few + few / 20,
        "{longer} bytes where eight times as much happens on each call, instead of {few}"
    );
}

/// Bytes that are held of so many calls, on each of which readings are taken so often.
fn held(calls: usize, takings: usize) -> usize {
    let region = Region::new(ALLOCATOR);
    let mut auditor = Auditor::new(Window::default(), vec!["calls".to_owned()]);
    (0..calls).for_each(|number| auditor.add(&call(number, takings)));
    let change = region.change();
    drop(auditor);
    change.bytes_allocated - change.bytes_deallocated
}

fn call(number: usize, takings: usize) -> Call {
    let opened = Timestamp::UNIX_EPOCH + SignedDuration::from_hours(number as i64);
    let closed = opened + SignedDuration::from_mins(40);
    let step = |at: usize| format!("no-heat/step-{at}").into();
    Call {
        session: format!("{number:08x}-0000-7000-8000-000000000000").into(),
        folder: 0,
        opened,
        last: closed,
        closed: Some(closed),
        sealed: true,
        torn: None,
        clock_went_back: false,
        from_file: false,
        practice: false,
        with_library: true,
        tree: "no-heat".into(),
        technician: Some(format!("t-{}", number % 2).into()),
        site: None,
        equipment: Some(format!("furnace-{}", number % FURNACES).into()),
        ending: Ending::Verdict(Verdict {
            fault: "igniter_bad".into(),
            remedy: Remedy::Replace("igniter".into()),
        }),
        noted: Vec::new(),
        put_backs: PutBacks::default(),
        readings: (0..takings)
            .map(|at| taken(opened, at % 2, (number * 7919 + at) % 20))
            .collect(),
        not_taken: Vec::new(),
        stays: (0..takings)
            .map(|at| Stay {
                step: step(at % 2),
                to: Some(step(at % 2 + 1)),
                seconds: Some(120.0),
                minutes: Some(2.0),
            })
            .collect(),
        could_test_combustion: false,
        after_work: false,
    }
}

fn taken(time: Timestamp, reading: usize, value: usize) -> Taken {
    let value = 20.0 + value as f64 / 10.0;
    Taken {
        reading: format!("voltage-{reading}").into(),
        typed: Some(format!("{value} V").into()),
        value,
        unit: "V".into(),
        margin: 0.3,
        borderline: false,
        time,
        seconds: Some(120.0),
        minutes: Some(2.0),
        combustion: false,
        superseded: false,
    }
}
