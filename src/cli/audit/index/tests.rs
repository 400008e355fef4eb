//! Calls there and back.

use compact_str::{CompactString, format_compact};
use jiff::Timestamp;
use proptest::collection::vec;
use proptest::option::of;
use proptest::prelude::*;

use super::block::{Block, Writing};
use super::call;
use crate::audit::{Call, Ending, NotTaken, PutBacks, Remedy, Stay, Taken, Verdict};

fn text() -> impl Strategy<Value = CompactString> {
    prop_oneof!["[a-c]{0,2}", ".{0,40}"].prop_map(CompactString::from)
}

/// Any time there is.
fn time() -> impl Strategy<Value = Timestamp> {
    let (first, last) = (Timestamp::MIN.as_second(), Timestamp::MAX.as_second());
    let near = 1_700_000_000..1_700_000_100_i64;
    (prop_oneof![near, first + 1..last], 0..1_000_000_000_i32)
        .prop_map(|(second, nanosecond)| Timestamp::new(second, nanosecond).unwrap())
}

/// Any number there is, but none that is unlike itself.
fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        any::<f64>().prop_filter("no number", |number| !number.is_nan()),
        Just(0.0),
        Just(-0.0),
        Just(60.0)
    ]
}

fn verdict() -> impl Strategy<Value = Verdict> {
    let remedy = prop_oneof![
        text().prop_map(Remedy::Replace),
        Just(Remedy::Correct),
        Just(Remedy::ShutDown),
        Just(Remedy::Refer),
        Just(Remedy::Nothing),
        Just(Remedy::Unknown),
    ];
    (text(), remedy).prop_map(|(fault, remedy)| Verdict { fault, remedy })
}

fn ending() -> impl Strategy<Value = Ending> {
    prop_oneof![
        verdict().prop_map(Ending::Verdict),
        text().prop_map(Ending::Outcome),
        text().prop_map(|why| Ending::Unproven { why }),
        verdict().prop_map(Ending::Insisted),
        Just(Ending::Open),
    ]
}

fn taken() -> impl Strategy<Value = Taken> {
    let numbers = (number(), number(), of(number()), of(number()));
    (text(), of(text()), text(), numbers, time(), any::<[bool; 3]>()).prop_map(
        |(reading, typed, unit, (value, margin, seconds, minutes), time, flags)| Taken {
            reading,
            typed,
            value,
            unit,
            margin,
            borderline: flags[0],
            time,
            seconds,
            minutes,
            combustion: flags[1],
            superseded: flags[2],
        },
    )
}

fn stay() -> impl Strategy<Value = Stay> {
    (text(), of(text()), of(number()), of(number())).prop_map(|(step, to, seconds, minutes)| Stay {
        step: (*step).into(),
        to: to.map(|to| (*to).into()),
        seconds,
        minutes,
    })
}

fn not_taken() -> impl Strategy<Value = NotTaken> {
    (text(), text(), any::<bool>()).prop_map(|(datum, why, combustion)| NotTaken {
        datum,
        why,
        combustion,
    })
}

fn call() -> impl Strategy<Value = Call> {
    let put_backs = (any::<u32>(), vec(text(), 0..3), vec(text(), 0..3))
        .prop_map(|(done, refused, open)| PutBacks { done, refused, open });
    let who = (text(), of(text()), of(text()), of(text()));
    let lists = (
        vec(verdict(), 0..3),
        vec(taken(), 0..4),
        vec(not_taken(), 0..3),
        vec(stay(), 0..4),
    );
    let times = (time(), time(), of(time()), of(any::<u64>()));
    (times, who, ending(), lists, put_backs, any::<[bool; 7]>()).prop_map(
        |(
            (opened, last, closed, torn),
            (tree, technician, site, equipment),
            ending,
            lists,
            put_backs,
            flags,
        )| {
            let (noted, readings, not_taken, stays) = lists;
            Call {
                session: format_compact!("s"),
                folder: 7,
                opened,
                last,
                closed,
                sealed: flags[0],
                torn,
                clock_went_back: flags[1],
                from_file: flags[2],
                practice: flags[3],
                with_library: flags[4],
                tree,
                technician,
                site,
                equipment,
                ending,
                noted,
                put_backs,
                readings,
                not_taken,
                stays,
                could_test_combustion: flags[5],
                after_work: flags[6],
            }
        },
    )
}

proptest! {
    #[test]
    fn a_call_comes_back_to_the_last_bit(calls in vec(call(), 1..4)) {
        let mut writing = Writing::default();
        calls.iter().for_each(|call| call::write(&mut writing, call));
        let block = Block::open(writing.take()).unwrap();
        let mut reading = block.begin();
        for call in &calls {
            let read = call::read(&mut reading, "s", 7).unwrap();
            // Not only equal: 0 and -0 are, too.
            prop_assert_eq!(format!("{read:?}"), format!("{call:?}"));
        }
        prop_assert!(reading.is_at_end());
    }

    #[test]
    fn whatever_bytes_stand_there_reading_them_ends(bytes in vec(any::<u8>(), 0..200)) {
        if let Some(block) = Block::open(bytes) {
            let mut reading = block.begin();
            while call::read(&mut reading, "s", 7).is_some() {}
        }
    }
}
