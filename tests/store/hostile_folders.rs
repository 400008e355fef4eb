//! Folders that records cannot be trusted to.

use std::fs::{self, Permissions};
use std::os::unix::fs::{PermissionsExt, symlink};
use std::path::Path;

use proofwalk::store::{FolderFault, SessionFolder, StoreError};

use crate::support::{id, record, scene};

#[track_caller]
fn refused(path: &Path, expected: FolderFault) {
    match SessionFolder::open(path).unwrap_err() {
        StoreError::BadFolder { fault, .. } => assert_eq!(fault, expected),
        other => panic!("{other}"),
    }
}

#[test]
fn a_folder_is_made_for_the_user_alone() {
    let temp = tempfile::tempdir().unwrap();
    let path = temp.path().join("state/proofwalk/sessions");
    SessionFolder::open(&path).unwrap().create(&id("s")).unwrap();
    for (path, mode) in [
        (temp.path().join("state"), 0o700),
        (path.clone(), 0o700),
        (path.join("s.jsonl"), 0o600),
    ] {
        assert_eq!(
            fs::metadata(&path).unwrap().permissions().mode() & 0o777,
            mode,
            "{path:?}"
        );
    }
}

#[test]
fn reading_makes_no_folder() {
    let temp = tempfile::tempdir().unwrap();
    let path = temp.path().join("sessions");
    let error = SessionFolder::open_existing(&path).unwrap_err();
    assert_eq!(error.exit_code(), 2);
    assert!(!path.exists());
}

#[test]
fn a_symbolic_link_is_refused_however_it_is_written() {
    let scene = scene();
    let link = scene.temp.path().join("link");
    symlink(scene.folder.path(), &link).unwrap();
    for path in [link.clone(), link.join(""), link.join("."), link.join("./.")] {
        refused(&path, FolderFault::Symlink);
    }
    fs::remove_file(&link).unwrap();
    symlink(scene.temp.path().join("nowhere"), &link).unwrap();
    refused(&link, FolderFault::Symlink);
}

#[test]
fn a_file_is_no_folder() {
    let scene = scene();
    fs::write(scene.path("file"), "").unwrap();
    refused(&scene.path("file"), FolderFault::NotAFolder);
    let error = SessionFolder::open(scene.path("file/sessions")).unwrap_err();
    assert!(
        error
            .to_string()
            .ends_with("check the path: a part of it is no folder"),
        "{error}"
    );
}

#[test]
fn a_folder_in_which_everyone_may_remove_files_is_refused_also_if_it_becomes_one() {
    let scene = scene();
    scene.recorded(1);
    let allow = |mode| fs::set_permissions(scene.folder.path(), Permissions::from_mode(mode)).unwrap();
    allow(0o777);
    refused(scene.folder.path(), FolderFault::WorldWritable);
    assert!(matches!(
        scene.folder.create(&id("new")),
        Err(StoreError::BadFolder { .. })
    ));
    assert!(matches!(
        scene.folder.take_up(&id("s")),
        Err(StoreError::BadFolder { .. })
    ));
    assert!(!scene.path("new.jsonl").exists());
    // An audit may well read from a disk that knows no rights.
    assert_eq!(
        SessionFolder::open_existing(scene.folder.path())
            .unwrap()
            .list()
            .unwrap()
            .len(),
        1
    );
    allow(0o1777);
    SessionFolder::open(scene.folder.path())
        .unwrap()
        .create(&id("new"))
        .unwrap();
}

#[test]
fn a_folder_swapped_after_it_was_opened_is_still_the_one_that_was_opened() {
    let scene = scene();
    let (there, moved, trap) = (
        scene.folder.path().to_owned(),
        scene.temp.path().join("moved"),
        scene.temp.path().join("trap"),
    );
    fs::create_dir(&trap).unwrap();
    fs::rename(&there, &moved).unwrap();
    symlink(&trap, &there).unwrap();
    let mut journal = scene.folder.create(&id("s")).unwrap();
    record(&mut journal, 0).unwrap();
    assert!(moved.join("s.jsonl").exists());
    assert_eq!(fs::read_dir(&trap).unwrap().count(), 0);
}

#[test]
fn a_path_in_a_message_cannot_act_on_the_terminal() {
    let temp = tempfile::tempdir().unwrap();
    let error = SessionFolder::open_existing(temp.path().join("a\x1b[2J\u{202e}")).unwrap_err();
    let told = error.to_string();
    assert!(told.contains("a^[[2J<U+202E>: cannot be read: "), "{told}");
}
