//! One process at a time.

use std::fs::{self, File};
use std::io::BufRead;
use std::process::Child;

use crate::child;
use crate::support::{Scene, id, record, scene};

#[track_caller]
fn held_by(scene: &Scene) -> String {
    let error = scene.folder.take_up(&id("s")).unwrap_err();
    assert_eq!(error.exit_code(), 2);
    let (_, told) = error
        .to_string()
        .split_once("this session is open in ")
        .map(|(a, b)| (a.to_owned(), b.to_owned()))
        .unwrap();
    told
}

/// Another process that has the session, and its output, which it needs to end in peace.
fn holder(scene: &Scene) -> (Child, impl BufRead) {
    let (process, mut output) = child::start("takes_up_and_waits", scene.folder.path());
    child::wait_for(&mut output, "holding").expect("the other process has the session");
    (process, output)
}

#[test]
fn the_second_process_is_told_who_has_the_session_and_since_when() {
    let scene = scene();
    scene.recorded(1);
    let (mut other, _output) = holder(&scene);
    let told = held_by(&scene);
    assert!(told.starts_with(&format!("process {} of ", other.id())), "{told}");
    assert!(
        told.contains(", since 20") && told.ends_with("; close it there first"),
        "{told}"
    );
    // Reading needs no lock.
    assert_eq!(scene.folder.read(&id("s")).unwrap().records.len(), 1);
    drop(other.stdin.take());
    assert!(other.wait().unwrap().success());
    assert!(!scene.path("s.holder").exists());
    scene.folder.take_up(&id("s")).unwrap();
}

#[test]
fn a_lock_ends_with_its_process_however_that_ends() {
    let scene = scene();
    scene.recorded(1);
    let (mut other, _output) = holder(&scene);
    other.kill().unwrap();
    other.wait().unwrap();
    assert!(scene.path("s.holder").exists(), "nobody could take the note away");
    let mut journal = scene.folder.take_up(&id("s")).unwrap().journal;
    record(&mut journal, 1).unwrap();
}

#[test]
fn a_note_of_a_dead_process_is_not_believed() {
    let scene = scene();
    scene.recorded(1);
    let (mut dead, _output) = holder(&scene);
    dead.kill().unwrap();
    dead.wait().unwrap();
    let file = File::open(scene.file()).unwrap();
    file.try_lock().unwrap();
    assert_eq!(held_by(&scene), "another process; close it there first");
}

#[test]
fn a_note_that_is_none_does_no_harm() {
    let scene = scene();
    scene.recorded(1);
    let file = File::open(scene.file()).unwrap();
    file.try_lock().unwrap();
    fs::write(
        scene.path("s.holder"),
        r#"{"user":"\u001b[2J","process":1,"since":"\u202e"}"#,
    )
    .unwrap();
    assert_eq!(
        held_by(&scene),
        "process 1 of ^[[2J, since <U+202E>; close it there first"
    );
    fs::write(scene.path("s.holder"), "x".repeat(1 << 20)).unwrap();
    assert_eq!(held_by(&scene), "another process; close it there first");
    drop(file);
    // A second name of a file of ours in the place of the note: the file must keep what it has.
    let other = scene.temp.path().join("other");
    fs::write(&other, "precious").unwrap();
    fs::remove_file(scene.path("s.holder")).unwrap();
    fs::hard_link(&other, scene.path("s.holder")).unwrap();
    drop(scene.folder.take_up(&id("s")).unwrap());
    assert_eq!(fs::read(other).unwrap(), b"precious");
}

#[test]
fn a_session_is_locked_from_the_moment_it_is_made() {
    let scene = scene();
    let journal = scene.folder.create(&id("s")).unwrap();
    assert!(held_by(&scene).starts_with(&format!("process {} of ", std::process::id())));
    drop(journal);
    scene.folder.take_up(&id("s")).unwrap();
}
