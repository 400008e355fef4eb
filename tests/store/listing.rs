//! Lists show every session, whatever state it is in.

use std::fs;
use std::os::unix::fs::symlink;

use proofwalk::store::{ChainState, Names};

use crate::support::{id, lines, scene};

#[test]
fn a_damaged_session_is_listed_and_hides_no_other() {
    let scene = scene();
    let (bytes, _) = scene.recorded(3);
    let text = String::from_utf8(bytes.clone()).unwrap();
    fs::write(
        scene.path("broken.jsonl"),
        text.replace(r#""number":1"#, r#""number":9"#),
    )
    .unwrap();
    fs::write(scene.path("torn.jsonl"), &bytes[..bytes.len() - 5]).unwrap();
    fs::write(scene.path("empty.jsonl"), "").unwrap();
    fs::write(
        scene.path("newer.jsonl"),
        text.replace(r#""format":1"#, r#""format":2"#),
    )
    .unwrap();
    symlink("/dev/null", scene.path("link.jsonl")).unwrap();
    let list = scene.folder.list().unwrap();
    let shown: Vec<String> = list
        .iter()
        .map(|listed| {
            let seq = |record: &Option<_>| {
                record
                    .as_ref()
                    .map(|record: &proofwalk::store::Record| record.seq)
            };
            let state = match &listed.state {
                ChainState::Whole => "whole".to_owned(),
                ChainState::Torn(bytes) => format!("torn {bytes}"),
                ChainState::Damaged(damage) => format!("damaged in line {}", damage.line),
                ChainState::Unreadable(_) => "unreadable".to_owned(),
            };
            format!(
                "{} {} {:?} {:?} {state}",
                listed.id,
                listed.count,
                seq(&listed.first),
                seq(&listed.last)
            )
        })
        .collect();
    let torn = lines(&bytes)[2].len() - 5;
    assert_eq!(
        shown,
        [
            "broken 1 Some(0) Some(0) damaged in line 2",
            "empty 0 None None whole",
            "link 0 None None unreadable",
            "newer 0 None None damaged in line 1",
            "s 3 Some(0) Some(2) whole",
            &format!("torn 2 Some(0) Some(1) torn {torn}"),
        ]
    );
}

#[test]
fn names_that_no_session_can_have_are_told_apart() {
    let scene = scene();
    for name in [
        "b.jsonl",
        "a.jsonl",
        "A.jsonl",
        "copy of a.jsonl",
        ".a.jsonl",
        "a.torn-1",
        "a.holder",
        "a.json",
    ] {
        fs::write(scene.path(name), "").unwrap();
    }
    let strangers = vec!["A.jsonl".to_owned(), "copy of a.jsonl".to_owned()];
    let sessions = vec![id("a"), id("b")];
    assert_eq!(scene.folder.names().unwrap(), Names { sessions, strangers });
}
