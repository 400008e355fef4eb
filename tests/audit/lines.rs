//! Lines read the short way say what lines read the long way say, whatever was done to them.

use std::fs;

use proofwalk::store::{ChainReport, Records, SessionFolder};
use proofwalk::walk::{Event, decode};

use crate::told::told;

/// How far a file is whole, and its events.
fn short(bytes: &[u8]) -> (Vec<Option<Event>>, ChainReport) {
    let mut records = Records::new(bytes);
    let mut events = Vec::new();
    while let Some(Ok(record)) = records.next_as(|_, event| decode(event).ok()) {
        events.push(record.event);
    }
    (events, records.report().clone())
}

fn long(bytes: &[u8]) -> (Vec<Option<Event>>, ChainReport) {
    let mut records = Records::new(bytes);
    let events = records.by_ref().filter_map(Result::ok);
    let events = events.map(|record| decode(record.event.get()).ok()).collect();
    (events, records.report().clone())
}

fn session() -> Vec<u8> {
    let temp = tempfile::tempdir().unwrap();
    let folder = SessionFolder::open(temp.path().join("sessions")).unwrap();
    let call = told("a", "2026-01-01T10:00:00Z")
        .measured("voltage", "24.1 V")
        .after(-5);
    call.verdict("valve_dead").closed().write(&folder);
    fs::read(temp.path().join("sessions/a.jsonl")).unwrap()
}

#[test]
fn a_whole_session_is_read_alike() {
    let bytes = session();
    let (events, report) = short(&bytes);
    assert_eq!((events.len(), report.records, report.warnings.len()), (4, 4, 1));
    assert!(events.iter().all(Option::is_some) && report.is_whole());
    assert_eq!((events, report), long(&bytes));
}

#[test]
fn every_byte_changed_removed_or_doubled_is_told_alike() {
    let bytes = session();
    for place in 0..bytes.len() {
        let mut changed = [
            bytes.clone(),
            bytes.clone(),
            bytes.clone(),
            bytes[..place].to_vec(),
        ];
        changed[0][place] ^= 1;
        changed[1].remove(place);
        changed[2].insert(place, bytes[place]);
        for bytes in &changed {
            assert_eq!(
                short(bytes),
                long(bytes),
                "byte {place}: {}",
                String::from_utf8_lossy(bytes)
            );
        }
    }
}

#[test]
fn what_only_looks_like_an_event_is_told_alike_though_every_sum_is_right() {
    for event in [
        r#"{"noted":{"text":"a"}},"event":{"noted":{"text":"b"}}"#,
        r#"{"noted":{"text":"a","text":"b"}}"#,
        r#"{"noted":{"text":"a"},"noted":{"text":"b"}}"#,
        r#"{"noted":{"text":"\ud800"}}"#,
        r#"{"measured":{"reading":"x","value":1e400,"unit":"V","margin":0}}"#,
        r#"{"noted":{"text":"a"}} {}"#,
        r#" {"noted":{"text":"a"}} "#,
        r#"{"temperature":20}"#,
        "",
    ] {
        let line = format!(
            r#"{{"seq":0,"format":1,"time":"2026-01-01T10:00:00Z","prev":"{}","event":{event}"#,
            "0".repeat(64)
        );
        let sum = proofwalk::store::Hash::of(line.as_bytes());
        let bytes = format!("{line},\"sum\":\"{sum}\"}}\n").into_bytes();
        assert_eq!(short(&bytes), long(&bytes), "{event}");
    }
}
