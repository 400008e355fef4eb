//! The house keeps its order: which room may use which, and where two rules about the code are kept.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "what tests share stops the test, as the tests do"
)]

mod code;

use code::{files, names, rooms_named};

/// Each room with the rooms it may name beside itself and `source`, whose type for text that is safe to show is for all.
const MAY_NAME: &[(&str, &[&str])] = &[
    ("measure", &[]),
    ("source", &[]),
    ("trade", &["measure"]),
    ("library", &["trade", "measure"]),
    ("layout", &[]),
    ("check", &["layout", "library", "trade", "measure"]),
    ("walk", &["library", "trade", "measure"]),
    ("bench", &["walk", "library", "trade", "measure"]),
    ("audit", &["walk", "library", "measure"]),
    ("export", &["audit", "walk"]),
    (
        "report",
        &["audit", "bench", "check", "walk", "library", "trade", "measure"],
    ),
    ("store", &["walk", "library"]),
    ("face", &["walk", "library", "measure"]),
    ("tui", &["face", "layout", "walk", "library", "measure", "report"]),
    ("plain", &["face", "walk", "library", "measure", "report"]),
    (
        "cli",
        &[
            "tui", "plain", "face", "store", "export", "report", "audit", "bench", "walk", "check",
            "library", "trade", "measure",
        ],
    ),
];

fn may_name(room: &str, other: &str) -> bool {
    let (_, others) = MAY_NAME
        .iter()
        .find(|(name, _)| *name == room)
        .unwrap_or_else(|| panic!("`src/{room}` is not in the table of rooms: give it a line"));
    other == room || other == "source" || others.contains(&other)
}

#[test]
fn no_room_names_one_that_it_may_not() {
    let mut wrong = Vec::new();
    let mut arrows = 0;
    for file in files()
        .iter()
        .filter(|file| file.room != "main" && file.room != "lib")
    {
        for (line, other) in rooms_named(&file.text) {
            arrows += 1;
            if !may_name(&file.room, &other) {
                wrong.push(format!("{}:{line}: {} -> {other}", file.name, file.room));
            }
        }
    }
    assert!(arrows > 100, "only {arrows} arrows were read");
    assert_eq!(wrong, Vec::<String>::new());
}

#[test]
fn the_table_has_no_circle() {
    for (room, _) in MAY_NAME {
        let mut waiting: Vec<&str> = others(room);
        let mut seen: Vec<&str> = Vec::new();
        while let Some(next) = waiting.pop() {
            assert_ne!(next, *room, "`{room}` may reach itself");
            if !seen.contains(&next) {
                seen.push(next);
                waiting.extend(others(next));
            }
        }
    }
}

fn others(room: &str) -> Vec<&'static str> {
    let line = MAY_NAME.iter().find(|(name, _)| *name == room);
    line.map(|(_, others)| others.to_vec()).unwrap_or_default()
}

#[test]
fn nothing_is_unsafe() {
    let manifest = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/Cargo.toml")).unwrap();
    assert!(manifest.contains("unsafe_code = \"forbid\""));
    let found: Vec<_> = files()
        .into_iter()
        .filter(|file| names(&file.text, "unsafe"))
        .collect();
    assert!(
        found.is_empty(),
        "{:?}",
        found.iter().map(|file| &file.name).collect::<Vec<_>>()
    );
}

#[test]
fn one_file_knows_the_graph_crate() {
    let found = files().into_iter().filter(|file| names(&file.text, "petgraph"));
    assert_eq!(
        found.map(|file| file.name).collect::<Vec<_>>(),
        ["src/library/graph.rs"]
    );
}

#[test]
fn grouped_and_spread_imports_are_read() {
    let text = "use crate::{\n    walk::Call, // crate::cli\n    source::{Safe, safe},\n};\nlet x = crate::store::open();";
    let read = rooms_named(text);
    assert_eq!(
        read,
        [
            (1, "walk".to_owned()),
            (1, "source".to_owned()),
            (5, "store".to_owned())
        ]
    );
    assert!(names("unsafe { }", "unsafe") && !names("let s = \"unsafe\"; // unsafe", "unsafe"));
    assert!(!names("unsafe_code", "unsafe"));
}
