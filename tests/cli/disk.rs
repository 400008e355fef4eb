//! Disks and folders that refuse.

use std::fs::{self, Permissions};
use std::os::unix::fs::{PermissionsExt, symlink};
use std::os::unix::process::CommandExt;
use std::process::{Command, Stdio};

use crate::common::scene::{PROGRAM, Said, scenario, scene};

#[test]
fn a_file_that_may_not_grow_is_told_and_what_was_saved_stays() {
    let scene = scene();
    scene.closed();
    let before = scene.ids();
    let answers = scenario("board-lets-the-valve-go");
    // The library is kept already, so that only the session can meet the limit: 4 blocks of 1024 bytes.
    let said: Said = Command::new("bash")
        .args([
            "-c",
            "ulimit -f 4; exec \"$0\" walk no-heat --answers \"$1\" --sessions \"$2\"",
        ])
        .args([PROGRAM, &answers])
        .arg(scene.sessions())
        .stdin(Stdio::null())
        .output()
        .unwrap()
        .into();
    let said = said.exits(3);
    assert!(said.err.contains("NOT SAVED"), "{}", said.err);
    let ids = scene.ids();
    let id = ids.iter().find(|id| !before.contains(id)).unwrap();
    let verified = scene.verify(id).exits(0);
    assert!(verified.out.contains("whole, open"), "{}", verified.out);
    let text = fs::read_to_string(scene.file(id)).unwrap();
    assert!(
        text.ends_with('\n') && text.len() <= 4096 && text.lines().count() > 3,
        "{text}"
    );
}

#[test]
fn a_folder_that_may_only_be_read_is_told_before_the_first_question() {
    let scene = scene();
    fs::create_dir(scene.sessions()).unwrap();
    fs::set_permissions(scene.temp.path(), Permissions::from_mode(0o755)).unwrap();
    fs::set_permissions(scene.sessions(), Permissions::from_mode(0o555)).unwrap();
    let mut command = scene.command(&["walk", "no-heat", "--plain"]);
    if rustix::process::geteuid().is_root() {
        // Rights stop nobody who is root, so the program is run as another user, from where that user may read it.
        let copy = scene.temp.path().join("proofwalk");
        fs::copy(PROGRAM, &copy).unwrap();
        command = Command::new(copy);
        command
            .args(["walk", "no-heat", "--plain", "--sessions"])
            .arg(scene.sessions());
        command.uid(65534).gid(65534);
    }
    let said: Said = command.stdin(Stdio::null()).output().unwrap().into();
    assert!(matches!(said.code, Some(2 | 3)), "{said:?}");
    assert_eq!(said.out, "", "nothing is asked");
    let folder = scene.sessions();
    assert!(said.err.contains(folder.to_str().unwrap()), "{}", said.err);
    assert!(said.err.contains("Permission denied"), "{}", said.err);
    assert_eq!(fs::read_dir(folder).unwrap().count(), 0);
}

#[test]
fn a_sessions_folder_that_is_none_is_refused() {
    let scene = scene();
    let file = scene.write("file", "");
    let real = scene.temp.path().join("real");
    fs::create_dir(&real).unwrap();
    let link = scene.temp.path().join("link");
    symlink(&real, &link).unwrap();
    let open_to_all = scene.temp.path().join("open-to-all");
    fs::create_dir(&open_to_all).unwrap();
    fs::set_permissions(&open_to_all, Permissions::from_mode(0o777)).unwrap();
    for folder in [
        file.as_str(),
        link.to_str().unwrap(),
        open_to_all.to_str().unwrap(),
    ] {
        let said = crate::common::scene::run(&["walk", "no-heat", "--plain", "--sessions", folder]);
        assert!(matches!(said.code, Some(2 | 3)), "{folder}: {said:?}");
        assert!(said.out.is_empty() && said.err.contains(folder), "{said:?}");
    }
    assert_eq!(fs::read_dir(real).unwrap().count(), 0);
}

#[test]
fn schemas_that_a_disk_refuses_are_told_and_leave_nothing_half_written() {
    let scene = scene();
    scene.write("library/a.yaml", "tree: a\n");
    let folder = scene.temp.path().join("library");
    let said: Said = Command::new("bash")
        .args(["-c", "ulimit -f 4; exec \"$0\" schema --modelines --write \"$1\""])
        .arg(PROGRAM)
        .arg(&folder)
        .stdin(Stdio::null())
        .output()
        .unwrap()
        .into();
    let said = said.exits(3);
    assert!(said.err.contains("could not be saved"), "{}", said.err);
    assert_eq!(fs::read_to_string(folder.join("a.yaml")).unwrap(), "tree: a\n");
    for entry in fs::read_dir(folder.join("schema")).unwrap() {
        let text = fs::read_to_string(entry.unwrap().path()).unwrap();
        assert!(serde_json::from_str::<serde_json::Value>(&text).is_ok(), "{text}");
    }
}
