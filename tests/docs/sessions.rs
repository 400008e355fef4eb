//! The page of the session file: its example is a session, its sums are right, and no event is missing.

use std::collections::BTreeSet;

use proofwalk::store::{FORMAT, Hash, LINE_LIMIT, SESSION_LIMIT, verify};
use proofwalk::walk::{End, Event, decode, encode};

use super::blocks::texts;
use super::kept::page;

#[test]
fn the_example_is_a_session_with_the_sums_that_the_page_says() {
    let page = page("docs/sessions.md");
    let [example] = &texts(&page, "json")[..] else {
        panic!("one example is expected")
    };
    let report = verify(example.as_bytes()).unwrap();
    assert!(report.is_whole(), "{report:?}");
    assert_eq!(report.records, 3);
    assert!(
        page.contains(&format!("`{}`", report.head)),
        "the head is {}",
        report.head
    );
    let mut prev = Hash::ZERO;
    for line in example.lines() {
        let (body, sum) = line.split_once(r#","sum":""#).unwrap();
        assert_eq!(
            sum,
            format!("{}\"}}", Hash::of(body.as_bytes())),
            "the sum of what stands before it"
        );
        assert!(
            body.contains(&format!(r#""prev":"{prev}""#)),
            "the sum of the line before"
        );
        prev = Hash::of(line.as_bytes());
    }
    assert_eq!(
        (FORMAT, LINE_LIMIT, SESSION_LIMIT),
        (1, 1 << 20, 64 << 20),
        "as the page says"
    );
}

#[test]
fn every_event_stands_in_the_table_as_it_is_written() {
    let page = page("docs/sessions.md");
    let rows = page
        .lines()
        .filter_map(|line| line.strip_prefix("| `")?.split_once("` |"));
    let texts = rows
        .map(|(text, _)| text)
        .filter(|text| text.starts_with(['{', '"']));
    let events = texts.map(|text| {
        let event = decode(text).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert_eq!(encode(&event).unwrap(), text);
        event
    });
    let kinds: BTreeSet<u8> = events.map(|event| kind(&event)).collect();
    let missing: Vec<u8> = (0..KINDS).filter(|kind| !kinds.contains(kind)).collect();
    assert!(missing.is_empty(), "these are missing: {missing:?}");
}

/// How many kinds of events there are.
const KINDS: u8 = 28;

/// Numbers the kinds of events; one that is new does not compile without its number, nor pass without its row.
fn kind(event: &Event) -> u8 {
    match event {
        Event::Opened(_) => 0,
        Event::Entered { .. } => 1,
        Event::Took { .. } => 2,
        Event::Returned { .. } => 3,
        Event::Left { .. } => 4,
        Event::Measured { .. } => 5,
        Event::Observed { .. } => 6,
        Event::ReadPlate { .. } => 7,
        Event::Doubted { .. } => 8,
        Event::CouldNot { .. } => 9,
        Event::WasUnsure { .. } => 10,
        Event::Did { .. } => 11,
        Event::Voided { .. } => 12,
        Event::Retaking { .. } => 13,
        Event::LeftOpen { .. } => 14,
        Event::Restored { .. } => 15,
        Event::Withheld { .. } => 16,
        Event::Stated { .. } => 17,
        Event::Ended(End::Verdict { .. }) => 18,
        Event::Ended(End::Outcome { .. }) => 19,
        Event::Ended(End::Unproven { .. }) => 20,
        Event::Ended(End::Insisted { .. }) => 21,
        Event::WentBack { .. } => 22,
        Event::Noted { .. } => 23,
        Event::PutBack { .. } => 24,
        Event::KeptOpen { .. } => 25,
        Event::Closed => 26,
        Event::TailCut { .. } => 27,
    }
}
