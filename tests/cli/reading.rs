//! Reading what was recorded: `sessions`, `report`, `brief`, `verify`, `resume` without an id.

use serde_json::Value;

use crate::common::scene::{run, scenario, scene};

#[test]
fn an_empty_folder_is_no_error() {
    let scene = scene();
    std::fs::create_dir(scene.sessions()).unwrap();
    let said = scene.run(&["sessions"]).exits(0);
    assert!(
        said.out.is_empty() && said.err.starts_with("No sessions in "),
        "{said:?}"
    );
    let said = scene.run(&["resume"]).exits(2);
    assert!(said.err.contains("there is no call to take up"), "{}", said.err);
}

#[test]
fn open_and_closed_sessions_are_told_apart_oldest_first() {
    let scene = scene();
    let (open, closed) = (scene.left_open(), scene.closed());
    let said = scene.run(&["sessions"]).exits(0);
    let lines: Vec<&str> = said.out.lines().collect();
    assert!(
        lines[0].starts_with(&open) && lines[0].ends_with("open"),
        "{lines:?}"
    );
    assert!(
        lines[1].starts_with(&closed) && lines[1].ends_with("closed"),
        "{lines:?}"
    );
    assert!(lines.iter().all(|line| line.contains("no-heat")));
}

#[test]
fn the_report_tells_the_call() {
    let scene = scene();
    let answers = scenario("board-lets-the-valve-go");
    let who = [
        "--technician",
        "t-07",
        "--site",
        "14 Mill Lane",
        "--equipment",
        "furnace 1",
    ];
    let walk = ["walk", "no-heat", "--answers", &answers];
    scene.run(&[&walk[..], &who].concat()).exits(0);
    let id = scene.id();
    let said = scene.run(&["report", &id]).exits(0);
    for words in [
        "JOB REPORT",
        "t-07",
        "14 Mill Lane",
        "furnace 1",
        "RESULT",
        "PROOF",
        "holds:",
        "put back:",
        &id,
    ] {
        assert!(said.out.contains(words), "{words:?} is not in\n{}", said.out);
    }
    assert!(
        said.out.lines().all(|line| line.chars().count() <= 80),
        "{}",
        said.out
    );
    let brief = scene.run(&["brief", &id]).exits(0);
    assert!(brief.out.lines().count() <= 12, "{}", brief.out);
    let json = scene.run(&["report", &id, "--format", "json"]).exits(0);
    let json: Value = serde_json::from_str(&json.out).unwrap();
    assert!(json.is_object(), "{json}");
}

#[test]
fn an_open_call_is_reported_as_open() {
    let scene = scene();
    let id = scene.left_open();
    let said = scene.run(&["report", &id]).exits(0);
    assert!(
        said.out.contains("The call is not finished.") && said.out.contains("STILL OPEN"),
        "{}",
        said.out
    );
    let brief = scene.run(&["brief", &id]).exits(0);
    assert!(
        brief.out.contains("Still walking.") && brief.out.contains("Still open, to be put back, 1: "),
        "{}",
        brief.out
    );
}

#[test]
fn verify_takes_files_and_folders_and_refuses_the_rest() {
    let scene = scene();
    let id = scene.closed();
    let folder = scene.sessions();
    let both = run(&[
        "verify",
        folder.to_str().unwrap(),
        scene.file(&id).to_str().unwrap(),
    ])
    .exits(0);
    assert_eq!(both.out.lines().count(), 2, "{}", both.out);
    assert!(both.err.contains("compare the head"), "{}", both.err);
    run(&["verify"]).exits(2);
    run(&["verify", &scene.write("notes.txt", "")]).exits(2);
    run(&["verify", "/nowhere/sessions"]).exits(2);
}

#[test]
fn a_closed_call_is_not_taken_up_again() {
    let scene = scene();
    let id = scene.closed();
    let said = scene.run(&["resume", &id]).exits(2);
    assert!(
        said.err.contains("is closed") && said.err.contains("proofwalk report"),
        "{}",
        said.err
    );
    scene.run(&["resume"]).exits(2);
}

#[test]
fn resume_without_an_id_takes_the_newest_of_the_technician() {
    let scene = scene();
    let answers = scene.write("half.yaml", crate::common::scene::HALF);
    for technician in ["t-07", "t-08", "t-07", "t-09"] {
        scene
            .run(&[
                "walk",
                "no-heat",
                "--answers",
                &answers,
                "--technician",
                technician,
            ])
            .exits(1);
    }
    let third = &scene.ids()[2];
    let said = scene.run(&["resume", "--technician", "t-07", "--plain"]).exits(0);
    assert!(
        said.err.contains(&format!("proofwalk resume {third}")),
        "{}",
        said.err
    );
    scene.run(&["resume", "--technician", "t-10", "--plain"]).exits(2);
}
