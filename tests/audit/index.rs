//! An unchanged archive is not read again, and what comes out of the index says so.

use std::fs;
use std::os::unix::fs::symlink;
use std::path::{Path, PathBuf};
use std::thread::sleep;
use std::time::Duration;

use proofwalk::store::SessionFolder;
use serde_json::Value;

use crate::common::scene::{Said, Scene, program, run, scene};
use crate::told::{done, keep};

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
    fs::remove_dir_all(scene.temp.path().join("cache")).unwrap();
    assert_eq!(audit(&scene, &[]).out, first.out, "the index may go at any time");

    done("c", "2026-01-06T10:00:00Z").write(&folder);
    fs::remove_dir_all(scene.temp.path().join("cache")).unwrap();
    assert_eq!(json(&audit(&scene, &[]))["from_index"], 0);
}

/// What the files are known by is asked of each as it is read, the first time, and of all at once, the next: the two must be the same.
#[test]
fn whatever_lies_in_an_archive_it_is_unchanged_until_it_changes() {
    let (scene, _folder) = rested();
    let sessions = scene.sessions();
    let below = SessionFolder::open(sessions.join("van/2")).unwrap();
    keep(&below);
    done("a", "2026-01-01T10:00:00Z").write(&below);
    done("p", "2026-01-08T10:00:00Z").write(&below);
    let path = sessions.join("van/2").to_str().unwrap().to_owned();
    run(&["pack", "--keep", "--sessions", &path]).exits(0);
    for (name, bytes) in [
        ("damaged.jsonl", 40),
        ("long.jsonl", 400_000),
        ("empty.jsonl", 0),
        ("no name of one.jsonl", 5),
        (".hidden.jsonl", 5),
        ("van/notes.txt", 5),
        ("van/2026-01.sessions.zip", 5),
    ] {
        fs::write(sessions.join(name), vec![b'x'; bytes]).unwrap();
    }
    symlink("a.jsonl", sessions.join("link.jsonl")).unwrap();
    for name in [".hidden", "folder.jsonl/in", "van/libraries/in", "empty"] {
        fs::create_dir_all(sessions.join(name)).unwrap();
    }
    let deep = sessions.join(vec!["d"; 18].join("/"));
    fs::create_dir_all(&deep).unwrap();
    fs::write(deep.join("deep.jsonl"), "x").unwrap();
    sleep(Duration::from_millis(3100));

    let audit = || {
        let mut command = program();
        command.args(["audit", sessions.to_str().unwrap()]);
        command.env("XDG_CACHE_HOME", scene.temp.path().join("cache"));
        Said::from(command.output().unwrap()).exits(1)
    };
    assert!(!audit().err.contains("unchanged"));
    let again = audit().err;
    // Those that are read by name: 2, 2 below, 4 odd ones, a link, a folder, 2 packs.
    assert!(again.contains("12 files are unchanged"), "{again}");
    fs::write(sessions.join("van/libraries/in/it"), "changed").unwrap();
    let changed = audit().err;
    assert!(!changed.contains("12 files are unchanged"), "{changed}");
}

#[test]
fn only_what_has_changed_is_read_again_whatever_is_asked() {
    let (scene, folder) = rested();
    audit(&scene, &[]);
    let other = json(&audit(&scene, &["--window", "3"]));
    assert_eq!(
        (other["from_index"].clone(), other["window_days"].clone()),
        (2.into(), 3.into())
    );
    done("c", "2026-01-06T10:00:00Z").write(&folder);
    let grown = audit(&scene, &[]);
    assert!(grown.err.contains("2 files are unchanged"), "{}", grown.err);
    let mut same = json(&grown);
    assert_eq!((same["from_index"].take(), &same["calls"]), (2.into(), &3.into()));
    same["from_index"] = 0.into();
    assert_eq!(
        same,
        json(&audit(&scene, &["--fresh"])),
        "nothing else differs from an audit that reads all of it"
    );
}

#[test]
fn calls_after_the_last_that_was_kept_are_no_damage() {
    let (scene, folder) = rested();
    audit(&scene, &[]);
    done("c", "2026-01-06T10:00:00Z").write(&folder);
    done("d", "2026-01-07T10:00:00Z").write(&folder);
    for _ in 0..2 {
        let grown = audit(&scene, &[]);
        assert!(!grown.err.contains("damaged"), "{}", grown.err);
        assert_eq!(
            json(&grown)["from_index"],
            2,
            "those that are new have not rested yet"
        );
    }
}

#[test]
fn what_a_library_says_is_asked_of_it_again() {
    let scene = scene();
    let folder = |path: PathBuf| SessionFolder::open(path).unwrap();
    let mark = keep(&folder(scene.temp.path().join("elsewhere")));
    let call = done("a", "2026-01-01T10:00:00Z").walked_with(mark);
    call.write(&folder(scene.sessions()));
    sleep(Duration::from_millis(3100));
    let first = json(&audit(&scene, &[]));
    assert_eq!(first["without_library"], 1, "it is not kept beside it yet");
    keep(&folder(scene.sessions().join("van")));
    let known = json(&audit(&scene, &[]));
    assert_eq!(
        (&known["without_library"], &known["from_index"]),
        (&0.into(), &0.into())
    );
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
        (1.into(), 1.into())
    );
}

#[test]
fn an_index_that_was_changed_is_not_believed() {
    let (scene, _folder) = rested();
    let first = audit(&scene, &[]);
    let calls = kept(&scene, "calls");
    fs::remove_file(&calls).unwrap();
    let kept = &kept(&scene, "page");
    let text = fs::read_to_string(kept).unwrap();
    for changed in [
        text.replace("\"calls\": 2", "\"calls\": 9"),
        text[..90].to_owned(),
        String::new(),
    ] {
        assert_ne!(changed, text);
        fs::write(kept, changed).unwrap();
        assert_eq!(audit(&scene, &[]).out, first.out);
        fs::remove_file(&calls).unwrap();
    }
}

#[test]
fn a_page_under_another_questions_name_is_no_answer_to_it() {
    let (scene, _folder) = rested();
    audit(&scene, &[]);
    let page = kept(&scene, "page");
    let answer = fs::read(&page).unwrap();
    fs::remove_file(&page).unwrap();
    let first = audit(&scene, &["--window", "3"]);
    fs::write(kept(&scene, "page"), answer).unwrap();
    let again = audit(&scene, &["--window", "3"]);
    assert_eq!(json(&again)["window_days"], 3);
    assert_eq!(json(&again)["callbacks"], json(&first)["callbacks"]);
}

#[test]
fn calls_are_kept_once_however_their_folders_are_spelled_and_in_whatever_order() {
    let (scene, _folder) = rested();
    let other = SessionFolder::open(scene.temp.path().join("other")).unwrap();
    done("c", "2026-01-07T10:00:00Z").write(&other);
    sleep(Duration::from_millis(3100));
    let (sessions, other) = (scene.sessions(), scene.temp.path().join("other"));
    let roundabout = other.join("..").join(sessions.file_name().unwrap());
    let audit = |folders: [&Path; 2], more: &[&str]| {
        let mut command = program();
        command
            .arg("audit")
            .args(folders)
            .args(["--format", "json"])
            .args(more);
        command.env("XDG_CACHE_HOME", scene.temp.path().join("cache"));
        json(&Said::from(command.output().unwrap()).exits(0))
    };
    assert_eq!(audit([&sessions, &other], &[])["from_index"], 0);
    let mut again = audit([&other, &roundabout], &[]);
    assert_eq!(
        (again["from_index"].take(), &again["calls"]),
        (3.into(), &3.into())
    );
    assert_eq!(
        again["folders"][1],
        roundabout.to_str().unwrap(),
        "as it was spelled"
    );
    again["from_index"] = 0.into();
    assert_eq!(
        again,
        audit([&other, &roundabout], &["--fresh"]),
        "nothing else differs"
    );
    kept(&scene, "calls");
}

#[test]
fn calls_that_were_kept_and_changed_are_left_aside_and_that_is_said() {
    let (scene, _folder) = rested();
    let first = audit(&scene, &[]);
    let (page, calls) = (kept(&scene, "page"), kept(&scene, "calls"));
    let bytes = fs::read(&calls).unwrap();
    let in_the_middle = bytes.len() / 2;
    let mut changed = bytes.clone();
    changed[in_the_middle] ^= 1;
    for changed in [changed, bytes[..in_the_middle].to_vec(), Vec::new()] {
        fs::remove_file(&page).unwrap();
        fs::write(&calls, changed).unwrap();
        let said = audit(&scene, &[]);
        assert!(said.err.contains("is damaged; it is left aside"), "{}", said.err);
        assert_eq!(said.out, first.out);
        assert_eq!(fs::read(&calls).unwrap().len(), bytes.len(), "it is kept anew");
    }
}

/// What is kept, of which there is one of this kind.
fn kept(scene: &Scene, kind: &str) -> PathBuf {
    let folder = fs::read_dir(scene.temp.path().join("cache/proofwalk/audit")).unwrap();
    let paths = folder.map(|entry| entry.unwrap().path());
    let kept: Vec<PathBuf> = paths
        .filter(|path| path.extension().is_some_and(|ending| ending == kind))
        .collect();
    let [kept] = &kept[..] else { panic!("{kept:?}") };
    kept.clone()
}
