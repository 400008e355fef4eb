//! Session files in every state: each is counted and named, and the audit goes on.

use std::fs;
use std::os::unix::fs::symlink;

use proofwalk::store::SessionFolder;
use serde_json::Value;

use crate::common::scene::{Said, Scene, run, scene};
use crate::told::{done, keep, told};

fn folder(scene: &Scene) -> SessionFolder {
    SessionFolder::open(scene.sessions()).unwrap()
}

/// A folder with a call and its callback, and its path.
fn two_calls(scene: &Scene) -> String {
    let folder = folder(scene);
    done("a", "2026-01-01T10:00:00Z").write(&folder);
    done("b", "2026-01-05T10:00:00Z").write(&folder);
    scene.sessions().to_str().unwrap().to_owned()
}

fn audit(folders: &[&str]) -> (Said, Value) {
    let arguments = [&["audit"], folders, &["--format", "json"]].concat();
    let said = run(&arguments);
    let json = serde_json::from_str(&said.out).unwrap_or_default();
    (said, json)
}

/// What is said of a file.
fn what(json: &Value, session: &str) -> String {
    let all = json["unsound"].as_array().unwrap();
    let one = all.iter().find(|file| file["session"] == session);
    one.map(|file| file["what"].as_str().unwrap().to_owned())
        .unwrap_or_default()
}

#[test]
fn damaged_files_are_named_and_the_others_counted() {
    let scene = scene();
    let path = two_calls(&scene);
    let text = fs::read_to_string(scene.file("a")).unwrap();
    let write = |name: &str, text: &str| fs::write(scene.file(name), text).unwrap();
    write("changed", &text.replace("nothing_found", "nothing_fount"));
    write(
        "shortened",
        &text
            .lines()
            .take(1)
            .chain(text.lines().skip(2))
            .map(|line| format!("{line}\n"))
            .collect::<String>(),
    );
    write("newer", &text.replace("\"format\":1", "\"format\":9"));
    write("garbage", "what is this\n");
    write("twice", "{\"seq\":0,\"seq\":0}\n");
    write("deep", &format!("{}\n", "[".repeat(100_000)));
    fs::write(scene.file("bytes"), [0xff, 0xfe, b'\n']).unwrap();
    write("long", &"x".repeat(3 << 20));
    let (said, json) = audit(&[&path]);
    assert_eq!(said.code, Some(1), "{}", said.err);
    for name in [
        "changed",
        "shortened",
        "newer",
        "garbage",
        "twice",
        "deep",
        "bytes",
        "long",
    ] {
        assert_eq!(what(&json, name), "damaged", "{name}");
    }
    assert_eq!(
        (json["calls"].as_u64(), json["damaged"].as_u64()),
        (Some(2), Some(8))
    );
    assert_eq!(json["callbacks"]["count"], 1);
    let newer = json["unsound"]
        .as_array()
        .unwrap()
        .iter()
        .find(|file| file["session"] == "newer");
    assert!(newer.unwrap()["why"].as_str().unwrap().contains("format 9"));
}

#[test]
fn a_half_written_last_line_is_named_and_the_call_counts_as_far_as_it_is_whole() {
    let scene = scene();
    let path = two_calls(&scene);
    let text = fs::read_to_string(scene.file("b")).unwrap();
    fs::write(scene.file("b"), &text[..text.len() - 10]).unwrap();
    let (said, json) = audit(&[&path]);
    said.exits(0);
    assert_eq!(what(&json, "b"), "half_written");
    // It had ended, and nothing was open.
    assert_eq!(
        (json["calls"].as_u64(), json["closed"].as_u64()),
        (Some(2), Some(2))
    );
}

#[test]
fn an_empty_file_is_no_call_and_no_damage() {
    let scene = scene();
    let path = two_calls(&scene);
    fs::write(scene.file("c"), "").unwrap();
    let (said, json) = audit(&[&path]);
    said.exits(0);
    assert_eq!(what(&json, "c"), "empty");
    assert_eq!(
        (json["calls"].as_u64(), json["damaged"].as_u64()),
        (Some(2), Some(0))
    );
}

#[test]
fn records_of_something_else_are_foreign() {
    let scene = scene();
    let path = two_calls(&scene);
    let mut journal = folder(&scene).create(&"other".parse_id()).unwrap();
    journal
        .append(
            &[r#"{"temperature":20}"#.to_owned()],
            "2026-01-01T00:00:00Z".parse().unwrap(),
        )
        .unwrap();
    let mut journal = folder(&scene).create(&"headless".parse_id()).unwrap();
    journal
        .append(
            &[r#""closed""#.to_owned()],
            "2026-01-01T00:00:00Z".parse().unwrap(),
        )
        .unwrap();
    let (said, json) = audit(&[&path]);
    said.exits(1);
    assert_eq!(
        (&*what(&json, "other"), &*what(&json, "headless")),
        ("foreign", "foreign")
    );
    assert_eq!(json["damaged"], 2);
}

trait ParseId {
    fn parse_id(&self) -> proofwalk::store::SessionId;
}

impl ParseId for str {
    fn parse_id(&self) -> proofwalk::store::SessionId {
        proofwalk::store::SessionId::parse(self).unwrap()
    }
}

#[test]
fn what_stands_in_the_place_of_a_file_is_not_read() {
    let scene = scene();
    let path = two_calls(&scene);
    symlink("/etc/passwd", scene.file("link")).unwrap();
    symlink(scene.sessions(), scene.sessions().join("loop")).unwrap();
    symlink(scene.sessions(), scene.sessions().join("loop.jsonl")).unwrap();
    fs::hard_link(scene.file("a"), scene.temp.path().join("second-name")).unwrap();
    let fifo = std::process::Command::new("mkfifo")
        .arg(scene.file("pipe"))
        .status()
        .unwrap();
    assert!(fifo.success());
    fs::create_dir(scene.file("folder")).unwrap();
    let (said, json) = audit(&[&path]);
    said.exits(1);
    for name in ["link", "loop", "pipe", "folder", "a"] {
        assert_eq!(what(&json, name), "unreadable", "{name}");
    }
    assert_eq!(
        (json["calls"].as_u64(), json["damaged"].as_u64()),
        (Some(1), Some(5))
    );
}

#[test]
fn names_that_no_session_can_have_are_named_safely_and_others_passed_over() {
    let scene = scene();
    let path = two_calls(&scene);
    for name in [
        "-rf.jsonl",
        "UPPER.jsonl",
        "es\u{1b}[2Jc.jsonl",
        "notes.txt",
        ".hidden.jsonl",
        "a.torn-1",
    ] {
        fs::write(scene.sessions().join(name), "x").unwrap();
    }
    let (said, json) = audit(&[&path]);
    let said = said.exits(1);
    for name in ["-rf.jsonl", "UPPER.jsonl", "es^[[2Jc.jsonl"] {
        assert_eq!(what(&json, name), "foreign", "{name}");
    }
    assert_eq!(json["damaged"], 3);
    assert!(json["other_files"].as_u64() >= Some(3), "{json}");
    assert!(!said.out.contains('\u{1b}'));
}

#[test]
fn folders_in_folders_are_read_and_a_copy_counts_once() {
    let scene = scene();
    let path = two_calls(&scene);
    let deeper = scene.sessions().join("2025/north");
    fs::create_dir_all(&deeper).unwrap();
    done("c", "2025-12-20T10:00:00Z").write(&SessionFolder::open(&deeper).unwrap());
    // An older copy of b: it does not go as far.
    let text = fs::read_to_string(scene.file("b")).unwrap();
    let older: String = text.lines().take(1).map(|line| format!("{line}\n")).collect();
    fs::write(deeper.join("b.jsonl"), older).unwrap();
    let (said, json) = audit(&[&path]);
    said.exits(0);
    assert_eq!(
        (json["calls"].as_u64(), json["closed"].as_u64()),
        (Some(3), Some(3))
    );
    assert_eq!(
        (json["copies"].as_u64(), json["callbacks"]["count"].as_u64()),
        (Some(1), Some(2))
    );
    assert_eq!(json["folders"].as_array().unwrap().len(), 3);
}

#[test]
fn a_folder_that_is_named_again_is_read_once() {
    let scene = scene();
    let sessions = two_calls(&scene);
    let name = sessions.rsplit('/').next().unwrap();
    let other = format!("{sessions}/../{name}/");
    let (_, json) = audit(&[&sessions, &sessions, &other]);
    assert_eq!(
        (json["calls"].as_u64(), json["copies"].as_u64()),
        (Some(2), Some(0))
    );
    assert_eq!(json["folders"], serde_json::json!([sessions]));
}

#[test]
fn the_library_of_a_session_says_what_its_faults_mean() {
    let scene = scene();
    let folder = folder(&scene);
    let mark = keep(&folder);
    let valve = told("a", "2026-01-01T10:00:00Z").verdict("valve_dead").closed();
    let board = told("b", "2026-01-05T10:00:00Z").verdict("board_dead").closed();
    valve.walked_with(mark.clone()).write(&folder);
    board.walked_with(mark).write(&folder);
    let (said, json) = audit(&[scene.sessions().to_str().unwrap()]);
    said.exits(0);
    assert_eq!(json["suspected_misdiagnoses"][0]["condemned"], "gas_valve");
    assert_eq!(json["suspected_misdiagnoses"][0]["then"], "board_dead");
    assert_eq!(json["without_library"], 0);
}

#[test]
fn a_session_whose_library_is_gone_counts_all_the_same() {
    let scene = scene();
    let path = two_calls(&scene);
    let (said, json) = audit(&[&path]);
    said.exits(0);
    assert_eq!(
        (json["calls"].as_u64(), json["without_library"].as_u64()),
        (Some(2), Some(2))
    );
}

#[test]
fn a_clock_that_went_back_is_named_and_the_order_of_the_lines_counts() {
    let scene = scene();
    let folder = folder(&scene);
    told("a", "2026-01-02T10:00:00Z")
        .verdict("nothing_found")
        .after(-7200)
        .closed()
        .write(&folder);
    let (said, json) = audit(&[scene.sessions().to_str().unwrap()]);
    said.exits(0);
    assert_eq!(what(&json, "a"), "clock_back");
    assert_eq!(json["closed"], 1);
}

#[test]
fn a_folder_that_is_none_is_wrong_use() {
    let scene = scene();
    let path = two_calls(&scene);
    let missing = scene.temp.path().join("missing");
    run(&["audit", missing.to_str().unwrap()]).exits(2);
    run(&["audit", scene.file("a").to_str().unwrap()]).exits(2);
    run(&["audit"]).exits(2);
    run(&["audit", &path, "--window", "soon"]).exits(2);
}

#[test]
fn an_empty_folder_is_an_audit_of_nothing() {
    let scene = scene();
    fs::create_dir(scene.sessions()).unwrap();
    let (said, json) = audit(&[scene.sessions().to_str().unwrap()]);
    let said = said.exits(0);
    assert_eq!(
        (json["calls"].as_u64(), json["callbacks"]["at_30_days"].as_f64()),
        (Some(0), Some(0.0))
    );
    assert!(said.err.contains("No sessions"), "{}", said.err);
}

#[test]
fn practice_is_counted_and_named_and_in_no_figure() {
    let scene = scene();
    let path = two_calls(&scene);
    let practice = done("p", "2026-01-02T10:00:00Z");
    practice
        .answered_from("practice seed 7 level 1")
        .write(&folder(&scene));
    let (said, json) = audit(&[&path]);
    said.exits(0);
    assert_eq!(
        (json["calls"].as_u64(), json["practice"].as_u64()),
        (Some(2), Some(1))
    );
    assert_eq!(json["practice_sessions"], serde_json::json!(["p"]));
    assert_eq!(json["callbacks"]["count"], 1);
    let text = run(&["audit", &path]).exits(0).out;
    assert!(text.contains("1 practice session"), "{text}");
}

#[test]
fn what_goes_by_an_id_and_is_no_copy_is_named() {
    let scene = scene();
    let path = two_calls(&scene);
    let deeper = scene.sessions().join("north");
    fs::create_dir(&deeper).unwrap();
    fs::copy(scene.file("a"), deeper.join("b.jsonl")).unwrap();
    fs::write(deeper.join("a.jsonl"), "torn to pieces\n").unwrap();
    let (said, json) = audit(&[&path]);
    said.exits(1);
    assert_eq!((&*what(&json, "b"), &*what(&json, "a")), ("same_id", "damaged"));
    assert_eq!(
        (
            json["calls"].as_u64(),
            json["copies"].as_u64(),
            json["damaged"].as_u64()
        ),
        (Some(2), Some(0), Some(2))
    );
}

/// Two calls that lie in a pack, and beside it still.
fn packed(scene: &Scene) -> String {
    let path = two_calls(scene);
    run(&["pack", "--keep", "--sessions", &path]).exits(0);
    path
}

/// How many calls, how many of them closed, copies and damaged files.
fn counts(json: &Value) -> [u64; 4] {
    ["calls", "closed", "copies", "damaged"].map(|key| json[key].as_u64().unwrap())
}

#[test]
fn a_file_beside_its_pack_is_a_copy_and_a_shorter_one_does_not_count() {
    let scene = scene();
    let path = packed(&scene);
    assert_eq!(counts(&audit(&[&path]).1), [2, 2, 2, 0]);
    let text = fs::read_to_string(scene.file("a")).unwrap();
    let first = text.split_inclusive('\n').next().unwrap();
    fs::write(scene.file("a"), first).unwrap();
    assert_eq!(counts(&audit(&[&path]).1), [2, 2, 2, 0]);
}

#[test]
fn a_file_beside_its_pack_that_is_no_copy_is_named_and_hides_nothing() {
    let scene = scene();
    let path = packed(&scene);
    fs::write(scene.file("a"), "torn to pieces\n").unwrap();
    let (said, json) = audit(&[&path]);
    said.exits(1);
    assert_eq!((counts(&json), &*what(&json, "a")), ([2, 2, 1, 1], "damaged"));
    fs::copy(scene.file("b"), scene.file("a")).unwrap();
    let (said, json) = audit(&[&path]);
    said.exits(1);
    assert_eq!((counts(&json), &*what(&json, "a")), ([2, 2, 1, 1], "same_id"));
}

#[test]
fn a_copy_under_another_name_is_named_and_counts() {
    let scene = scene();
    let path = two_calls(&scene);
    fs::copy(scene.file("a"), scene.file("c")).unwrap();
    let (said, json) = audit(&[&path]);
    said.exits(0);
    assert_eq!((json["calls"].as_u64(), &*what(&json, "c")), (Some(3), "twin"));
}

#[test]
fn a_folder_that_lies_too_deep_is_named() {
    let scene = scene();
    let path = two_calls(&scene);
    let deep = "d/".repeat(17);
    fs::create_dir_all(scene.sessions().join(&deep)).unwrap();
    let (said, json) = audit(&[&path]);
    said.exits(1);
    assert_eq!(what(&json, "d/"), "unreadable");
}

#[test]
fn every_heading_counts_its_own_list() {
    let scene = scene();
    let path = two_calls(&scene);
    fs::write(scene.file("empty"), "").unwrap();
    fs::write(scene.file("garbage"), "what is this\n").unwrap();
    let text = run(&["audit", &path]).exits(1).out;
    assert!(text.contains("FILES THAT ARE NO CALLS (2)"), "{text}");
    assert!(
        text.contains("1 damaged, foreign or unreadable file, 1 empty file"),
        "{text}"
    );
    assert!(text.contains("CALLS THAT CAME BACK (1)"), "{text}");
}
