//! An unchanged archive is not read again, and what comes out of the index says so.

use std::fs;
use std::thread::sleep;
use std::time::Duration;

use proofwalk::store::SessionFolder;
use serde_json::Value;

use crate::common::scene::{Said, Scene, program, scene};
use crate::told::done;

fn audit(scene: &Scene, more: &[&str]) -> Said {
    let sessions = scene.sessions();
    let arguments = ["audit", sessions.to_str().unwrap(), "--format", "json"];
    let mut command = program();
    command.args(arguments).args(more);
    command.env("XDG_CACHE_HOME", scene.temp.path().join("cache"));
    Said::from(command.output().unwrap()).exits(0)
}

fn json(said: &Said) -> Value {
    serde_json::from_str(&said.out).unwrap()
}

/// Two calls whose files have rested, so that a change would show.
fn rested() -> (Scene, SessionFolder) {
    let scene = scene();
    let folder = SessionFolder::open(scene.sessions()).unwrap();
    done("a", "2026-01-01T10:00:00Z").write(&folder);
    done("b", "2026-01-05T10:00:00Z").write(&folder);
    sleep(Duration::from_millis(3100));
    (scene, folder)
}

#[test]
fn an_unchanged_archive_is_not_read_again_and_says_so() {
    let (scene, folder) = rested();
    let first = audit(&scene, &[]);
    assert_eq!(json(&first)["from_index"], 0);
    let second = audit(&scene, &[]);
    assert!(second.err.contains("2 files are unchanged"), "{}", second.err);
    let mut same = json(&second);
    assert_eq!(same["from_index"].take(), 2);
    same["from_index"] = 0.into();
    assert_eq!(same, json(&first), "nothing else differs");

    let fresh = audit(&scene, &["--fresh"]);
    assert_eq!(json(&fresh)["from_index"], 0);
    let other = audit(&scene, &["--window", "3"]);
    assert_eq!(
        (
            json(&other)["from_index"].clone(),
            json(&other)["window_days"].clone()
        ),
        (0.into(), 3.into())
    );

    done("c", "2026-01-06T10:00:00Z").write(&folder);
    let grown = audit(&scene, &[]);
    assert_eq!(
        (json(&grown)["from_index"].clone(), json(&grown)["calls"].clone()),
        (0.into(), 3.into())
    );
    fs::remove_dir_all(scene.temp.path().join("cache")).unwrap();
    assert_eq!(audit(&scene, &[]).out, grown.out, "the index may go at any time");
}

#[test]
fn a_changed_file_is_found_though_its_time_and_size_are_put_back() {
    let (scene, _folder) = rested();
    audit(&scene, &[]);
    let path = scene.file("a");
    let written = fs::metadata(&path).unwrap().modified().unwrap();
    let text = fs::read_to_string(&path).unwrap();
    fs::write(&path, text.replace("nothing_found", "nothing_fount")).unwrap();
    let file = fs::File::options().write(true).open(&path).unwrap();
    file.set_modified(written).unwrap();
    let mut command = program();
    command.args(["audit", scene.sessions().to_str().unwrap(), "--format", "json"]);
    command.env("XDG_CACHE_HOME", scene.temp.path().join("cache"));
    let said = Said::from(command.output().unwrap()).exits(1);
    assert_eq!(
        (json(&said)["damaged"].clone(), json(&said)["from_index"].clone()),
        (1.into(), 0.into())
    );
}

#[test]
fn an_index_that_was_changed_is_not_believed() {
    let (scene, _folder) = rested();
    let first = audit(&scene, &[]);
    let folder = scene.temp.path().join("cache/proofwalk/audit");
    let kept: Vec<_> = fs::read_dir(&folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    let [kept] = &kept[..] else { panic!("{kept:?}") };
    let text = fs::read_to_string(kept).unwrap();
    for changed in [
        text.replace("\"calls\": 2", "\"calls\": 9"),
        text[..90].to_owned(),
        String::new(),
    ] {
        assert_ne!(changed, text);
        fs::write(kept, changed).unwrap();
        assert_eq!(audit(&scene, &[]).out, first.out);
    }
}
