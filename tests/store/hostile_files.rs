//! What stands in the place of a session file and is none.

use std::fs;
use std::os::unix::fs::{chown, symlink};
use std::os::unix::net::UnixListener;
use std::path::Path;
use std::sync::mpsc;
use std::thread;
use std::time::Duration;

use proofwalk::store::{ChainState, StoreError, verify_file};
use rustix::fs::{CWD, FileType, Mode, mkfifoat, mknodat};

use crate::support::{Scene, id, is_root, scene};

const REMOVE: &str = "stands where a regular file should; nothing was read or written; remove it";

/// Every way to a session, and what each says.
#[track_caller]
fn refused(scene: &Scene, message: &str) {
    let path = scene.file();
    let listed = scene.folder.look_at(id("s"));
    let ChainState::Unreadable(listed) = listed.state else {
        panic!("listed as {listed:?}");
    };
    let errors = [
        scene.folder.take_up(&id("s")).map(drop).unwrap_err(),
        scene.folder.read(&id("s")).map(drop).unwrap_err(),
        scene.folder.stream(&id("s")).map(drop).unwrap_err(),
        verify_file(&path).map(drop).unwrap_err(),
        listed,
    ];
    for error in errors {
        assert_eq!(error.to_string(), format!("{}: {message}", path.display()));
        assert_eq!(error.exit_code(), 2);
    }
    assert!(matches!(
        scene.folder.create(&id("s")),
        Err(StoreError::Exists { .. })
    ));
}

#[test]
fn a_symbolic_link_is_not_followed() {
    let scene = scene();
    let target = scene.temp.path().join("target");
    fs::write(&target, "precious").unwrap();
    symlink(&target, scene.file()).unwrap();
    refused(&scene, &format!("a symbolic link {REMOVE}"));
    fs::remove_file(&target).unwrap();
    refused(&scene, &format!("a symbolic link {REMOVE}"));
    assert!(!target.exists());
}

#[test]
fn a_pipe_is_not_waited_for() {
    let scene = scene();
    mkfifoat(CWD, scene.file(), Mode::RWXU).unwrap();
    let (done, waiting) = mpsc::channel();
    thread::spawn(move || {
        refused(&scene, &format!("a named pipe {REMOVE}"));
        done.send(()).unwrap();
    });
    let answer = waiting.recv_timeout(Duration::from_secs(20));
    answer.expect("it is refused, without waiting for somebody to write into it");
}

#[test]
fn a_folder_a_socket_and_a_device_are_told() {
    let scene = scene();
    fs::create_dir(scene.file()).unwrap();
    refused(&scene, &format!("a folder {REMOVE}"));
    fs::remove_dir(scene.file()).unwrap();
    let _socket = UnixListener::bind(scene.file()).unwrap();
    refused(&scene, &format!("a socket {REMOVE}"));
    fs::remove_file(scene.file()).unwrap();
    let zero = rustix::fs::makedev(1, 5);
    if mknodat(CWD, scene.file(), FileType::CharacterDevice, Mode::RWXU, zero).is_err() {
        eprintln!("skipped: no device can be made here");
        return;
    }
    refused(&scene, &format!("a device {REMOVE}"));
}

#[test]
fn a_second_name_of_another_record_is_refused() {
    let scene = scene();
    scene.recorded(1);
    fs::hard_link(scene.file(), scene.path("other")).unwrap();
    refused(
        &scene,
        "this file has a second name, and may be another record; remove the one name, or copy the file",
    );
}

#[test]
fn a_session_of_another_user_may_be_read_but_not_taken_up() {
    if !is_root() {
        eprintln!("skipped: only root can give a file away");
        return;
    }
    let scene = scene();
    scene.recorded(1);
    chown(scene.file(), Some(65534), None).unwrap();
    let error = scene.folder.take_up(&id("s")).unwrap_err();
    let message = "this session belongs to another user; only its owner can take it up";
    assert_eq!(
        error.to_string(),
        format!("{}: {message}", scene.file().display())
    );
    let listed = scene.folder.look_at(id("s"));
    assert!(!listed.ours && listed.count == 1);
}

#[test]
fn a_session_that_is_not_there_is_told() {
    let scene = scene();
    let error = scene.folder.take_up(&id("s")).unwrap_err();
    let message = "there is no such session; `proofwalk sessions` lists those there are";
    assert_eq!(
        error.to_string(),
        format!("{}: {message}", scene.file().display())
    );
    assert!(verify_file(Path::new("")).is_err());
    assert_eq!(fs::read_dir(scene.folder.path()).unwrap().count(), 0);
}
