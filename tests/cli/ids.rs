//! Ids that are none.

use crate::common::scene::{Said, program, run, scenario, scene};

#[test]
fn a_session_id_that_is_none_exits_2_and_nothing_is_made() {
    let long = "a".repeat(300);
    for id in [
        "../x",
        "",
        ".",
        "..",
        "a/b",
        &long,
        "a\nb",
        "%00",
        "A",
        "x;sh",
        "\u{202e}x",
        "$(id)",
    ] {
        for command in ["resume", "report", "brief"] {
            let scene = scene();
            std::fs::create_dir(scene.sessions()).unwrap();
            let said = scene.run(&[command, id]).exits(2);
            assert!(
                !said.err.is_empty() && said.out.is_empty(),
                "{command} {id:?}: {said:?}"
            );
            assert!(
                said.err.len() < 1000 && !said.err.contains(['\u{202e}', '\0']),
                "{}",
                said.err
            );
            let beside: Vec<_> = std::fs::read_dir(scene.temp.path()).unwrap().collect();
            assert_eq!(beside.len(), 1, "{command} {id:?}");
            assert_eq!(
                std::fs::read_dir(scene.sessions()).unwrap().count(),
                0,
                "{command} {id:?}"
            );
        }
    }
}

#[test]
fn what_looks_like_an_option_is_taken_for_none() {
    let scene = scene();
    scene.run(&["resume", "-rf"]).exits(2);
    scene.run(&["report", "--", "-rf"]).exits(2);
    assert_eq!(scene.ids(), Vec::<String>::new());
}

#[test]
fn a_session_that_is_not_there_exits_2() {
    let scene = scene();
    std::fs::create_dir(scene.sessions()).unwrap();
    for command in ["resume", "report", "brief"] {
        let said = scene.run(&[command, "no-such-session"]).exits(2);
        assert!(said.err.contains("no-such-session"), "{}", said.err);
    }
    assert_eq!(scene.ids(), Vec::<String>::new());
}

#[test]
fn the_beginning_of_an_id_is_enough_where_no_other_session_has_it() {
    let scene = scene();
    let walked = |technician: &str| {
        let before = scene.ids();
        let answers = scenario("igniter-open-cold");
        let tree = "no-heat";
        scene
            .run(&["walk", tree, "--answers", &answers, "--technician", technician])
            .exits(0);
        let mut ids = scene.ids();
        ids.retain(|id| !before.contains(id));
        ids.remove(0)
    };
    let only = walked("ana");
    for command in ["report", "brief", "replay"] {
        let whole = scene.run(&[command, &only]).exits(0);
        assert_eq!(
            scene.run(&[command, &only[..6]]).exits(0).out,
            whole.out,
            "{command}"
        );
    }
    // A closed call is found, and not taken up.
    let said = scene.run(&["resume", &only[..6]]).exits(2);
    assert!(
        said.err.contains(&format!("the call {only} is closed")),
        "{}",
        said.err
    );

    // An id of its own that others begin with is that one.
    for id in ["s", "s-1", "s-2", "s-3", "s-4", "s-5", "s-6", "s-7"] {
        std::fs::copy(scene.file(&only), scene.file(id)).unwrap();
    }
    assert!(scene.run(&["brief", "s-7"]).exits(0).err.is_empty());
    scene.run(&["brief", "s"]).exits(0);
    for command in ["report", "brief", "replay", "resume"] {
        let said = scene.run(&[command, "s-"]).exits(2);
        let named = "7 sessions begin with `s-`: s-1, s-2, s-3, s-4, s-5 and 2 more";
        assert!(said.err.contains(named) && said.out.is_empty(), "{}", said.err);
    }
}

#[test]
fn a_mistyped_folder_of_sessions_is_named_and_not_made() {
    for arguments in [
        &["sessions"][..],
        &["resume"],
        &["resume", "some-session"],
        &["report", "some-session"],
        &["brief", "some-session"],
        &["replay", "some-session"],
        &["history", "f-1"],
        &["pack"],
    ] {
        let scene = scene();
        let said = scene.run(arguments).exits(2);
        let folder = scene.sessions();
        assert!(
            said.err.contains(folder.to_str().unwrap()) && said.err.contains("does not exist"),
            "{arguments:?}: {}",
            said.err
        );
        assert!(said.err.contains("help: check its name"), "{}", said.err);
        assert!(!folder.exists(), "{arguments:?}");
    }
}

#[test]
fn a_file_that_is_not_there_is_no_damaged_one() {
    let scene = scene();
    std::fs::create_dir(scene.sessions()).unwrap();
    let folder = scene.sessions().to_str().unwrap().to_owned();
    for (file, words) in [
        ("2026-01.sessions.zip", "there is no pack"),
        ("2026-01.zip", "is no pack of sessions"),
    ] {
        let said = scene.run(&["pack", "--unpack", file]).exits(2);
        assert!(
            said.err.contains(words) && said.err.contains(file),
            "{}",
            said.err
        );
        let missing = format!("{folder}/{file}");
        let said = run(&["verify", &missing]).exits(2);
        assert!(said.err.contains("there is no file or folder"), "{}", said.err);
    }
}

#[test]
fn without_sessions_yet_the_usual_folder_is_no_mistake() {
    let home = tempfile::tempdir().unwrap();
    let listed = program().arg("sessions").env("HOME", home.path()).output();
    let said = Said::from(listed.unwrap()).exits(0);
    assert!(said.err.starts_with("No sessions in "), "{}", said.err);
}

#[test]
fn who_and_where_are_ids_too() {
    let long = "a".repeat(300);
    for option in ["--technician", "--site", "--equipment"] {
        for id in ["", " ", "a\u{1b}[2Jb", "a\nb", &long] {
            let scene = scene();
            let said = scene.run(&["walk", "no-heat", "--plain", option, id]).exits(2);
            assert!(!said.err.contains('\u{1b}'), "{:?}", said.err);
            assert!(!scene.sessions().exists(), "{option} {id:?}");
        }
    }
}
