//! Disks that refuse, and programs that meddle.

use std::fs::{self, OpenOptions, Permissions};
use std::io::{self, Write};
use std::os::unix::fs::PermissionsExt;
use std::os::unix::process::CommandExt;
use std::process::Stdio;

use proofwalk::store::{SESSION_LIMIT, StoreError, verify_file};

use crate::child;
use crate::support::{checked, id, is_root, record, scene};

#[test]
fn a_file_at_its_size_limit_is_cut_back_and_written_on_when_there_is_room() {
    let scene = scene();
    scene.recorded(0);
    let (mut process, mut output) = child::start("appends_beyond_a_size_limit", scene.folder.path());
    let refused = child::wait_for(&mut output, "refused").expect("the signal does not end the process");
    let (records, told) = refused.split_once(' ').unwrap();
    assert!(
        told.starts_with("3 ") && told.contains(": NOT SAVED: File too large"),
        "{told}"
    );
    assert!(
        told.contains("what was half written has been cut off again"),
        "{told}"
    );
    child::wait_for(&mut output, "saved after all").expect("the journal is still of use");
    assert!(process.wait().unwrap().success());
    let report = checked(&fs::read(scene.file()).unwrap());
    assert!(report.is_whole());
    assert_eq!(report.records, records.parse::<u64>().unwrap() + 1);
}

#[test]
fn a_folder_that_may_only_be_read_is_told_before_the_first_question() {
    let scene = scene();
    fs::set_permissions(scene.temp.path(), Permissions::from_mode(0o755)).unwrap();
    fs::set_permissions(scene.folder.path(), Permissions::from_mode(0o555)).unwrap();
    let mut command = child::command("makes_a_session", scene.folder.path());
    if is_root() {
        // Rights stop nobody who is root, so the process is made another user's.
        command.uid(65534).gid(65534);
    }
    let output = match command.stdin(Stdio::null()).output() {
        Err(error) if is_root() && error.kind() == io::ErrorKind::PermissionDenied => {
            eprintln!("skipped: no other user may run this test");
            return;
        }
        output => output.unwrap(),
    };
    let told = child::wait_for(&mut output.stdout.as_slice(), "refused").expect("it is refused");
    let path = scene.path("new.jsonl");
    let expected = format!(
        "3 {}: NOT SAVED: Permission denied (os error 13); ask its owner for access, or use another folder",
        path.display()
    );
    assert_eq!(told, expected);
    assert!(!path.exists());
}

#[test]
fn a_session_that_was_removed_or_written_to_by_others_takes_nothing_more() {
    let scene = scene();
    let mut journal = scene.folder.create(&id("s")).unwrap();
    record(&mut journal, 0).unwrap();
    let mut other = OpenOptions::new().append(true).open(scene.file()).unwrap();
    other.write_all(b"x").unwrap();
    assert!(matches!(record(&mut journal, 1), Err(StoreError::Changed { .. })));
    other.set_len(journal_length(&scene) - 1).unwrap();
    record(&mut journal, 1).unwrap();
    fs::remove_file(scene.file()).unwrap();
    let error = record(&mut journal, 2).unwrap_err();
    assert!(matches!(error, StoreError::Changed { .. }));
    assert_eq!(error.exit_code(), 3);
}

fn journal_length(scene: &crate::support::Scene) -> u64 {
    fs::metadata(scene.file()).unwrap().len()
}

#[test]
fn a_session_too_large_for_memory_is_not_loaded_but_can_be_checked() {
    let scene = scene();
    scene.recorded(1);
    let file = OpenOptions::new().write(true).open(scene.file()).unwrap();
    file.set_len(SESSION_LIMIT + 1).unwrap();
    for error in [
        scene.folder.read(&id("s")).map(drop).unwrap_err(),
        scene.folder.take_up(&id("s")).map(drop).unwrap_err(),
    ] {
        assert!(matches!(error, StoreError::TooLarge { .. }), "{error}");
    }
    assert_eq!(verify_file(&scene.file()).unwrap().records, 1);
    let read = scene
        .folder
        .stream(&id("s"))
        .unwrap()
        .take_while(Result::is_ok)
        .count();
    assert_eq!(read, 1);
}
