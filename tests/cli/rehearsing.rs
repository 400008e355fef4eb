//! `rehearse`: what it prints, and what it exits with.

use serde_json::Value;

use crate::common::scene::{Said, Scene, run, scene};

/// A library of one tree whose edges two scenarios walk, all but one.
fn write(scene: &Scene) {
    for (name, text) in [
        ("library.yaml", "library: pumps\n"),
        (
            "registry/signs.yaml",
            "signs: { noise: { ask: What is heard?, values: { hum: It hums, quiet: Nothing, knock: It knocks } } }\n",
        ),
        (
            "registry/faults.yaml",
            "faults:\n  stuck: { title: Stuck, remedy: correct }\n  fine: { title: Fine, remedy: none }\n",
        ),
        (
            "hums.yaml",
            "\
tree: hums
title: It hums
complaint: It hums
start: hear
steps:
  hear:
    observe: noise
    choices:
      hum: stuck
      quiet: fine
      knock: stuck
  stuck: { verdict: stuck, because: So. }
  fine: { verdict: fine, because: So. }
",
        ),
        (
            "scenarios/stuck-fast.yaml",
            "scenario: Stuck\ntree: hums\nsigns: { noise: hum }\nexpect: { verdict: stuck }\n",
        ),
        (
            "scenarios/runs.yaml",
            "scenario: Fine\ntree: hums\nsigns: { noise: quiet }\nexpect: { verdict: fine }\n",
        ),
    ] {
        scene.write(&format!("library/{name}"), text);
    }
}

fn rehearse(scene: &Scene, options: &[&str]) -> Said {
    let folder = scene.temp.path().join("library");
    let mut arguments = vec!["rehearse", folder.to_str().unwrap()];
    arguments.extend(options);
    run(&arguments)
}

/// What was said, without the folder that the count names.
#[track_caller]
fn unnamed(scene: &Scene, said: &Said) -> String {
    let folder = scene.temp.path().join("library");
    let named = format!("{}: ", folder.display());
    assert_eq!(said.out.matches(&named).count(), 1, "{said:?}");
    said.out.replace(&named, "")
}

fn written() -> Scene {
    let scene = scene();
    write(&scene);
    scene
}

/// The library with its first scenario expecting the other verdict.
fn failing() -> Scene {
    let scene = written();
    scene.write(
        "library/scenarios/stuck-fast.yaml",
        "scenario: Stuck\ntree: hums\nsigns: { noise: hum }\nexpect: { verdict: fine }\n",
    );
    scene
}

#[test]
fn what_was_walked_is_counted_and_what_was_not_is_named_where_it_stands() {
    let scene = written();
    let said = rehearse(&scene, &[]).exits(0);
    let expected = "\
walked              steps              edges
hums            3/3 100 %          2/3  66 %
1 tree          3/3 100 %          2/3  66 %

no scenario takes:
  hums.yaml:11  hear: knock → stuck

2 scenarios, 2 as expected, 0 not
";
    assert_eq!(unnamed(&scene, &said), expected);
}

#[test]
fn what_is_required_and_not_walked_exits_1() {
    let scene = written();
    rehearse(&scene, &["--require", "steps"]).exits(0);
    let said = rehearse(&scene, &["--require", "edges"]).exits(1);
    assert!(
        said.out.ends_with("\n1 of 3 edges is in no scenario\n"),
        "{}",
        said.out
    );
}

#[test]
fn a_step_that_no_scenario_comes_to_is_named_where_it_stands() {
    let scene = written();
    std::fs::remove_file(scene.temp.path().join("library/scenarios/runs.yaml")).unwrap();
    let said = rehearse(&scene, &["--require", "steps"]).exits(1);
    assert!(
        said.out
            .ends_with("1 of 3 steps is in no scenario\n  hums.yaml:13  hums/fine\n"),
        "{}",
        said.out
    );
}

#[test]
fn only_what_is_chosen_is_walked_by_title_file_or_tree() {
    let scene = failing();
    for (word, count) in [("runs", 1), ("FINE", 1), ("hums", 2), ("stuck-f", 1)] {
        let said = rehearse(&scene, &["--only", word]);
        let out = unnamed(&scene, &said);
        let last = out.lines().next_back().unwrap_or_default();
        assert!(last.starts_with(&format!("{count} scenario")), "{word}: {said:?}");
    }
    let said = rehearse(&scene, &["--only", "runs", "--only", "stuck-fast"]).exits(1);
    assert!(
        said.out.ends_with("2 scenarios, 1 as expected, 1 not\n"),
        "{}",
        said.out
    );
    let said = rehearse(&scene, &["--only", "runs"]).exits(0);
    assert_eq!(unnamed(&scene, &said), "1 scenario, 1 as expected, 0 not\n");
    let said = rehearse(&scene, &["--only", "nothing\u{1b}"]).exits(2);
    assert!(
        said.out.is_empty() && said.err.contains("no scenario has `nothing^[`"),
        "{said:?}"
    );
}

#[test]
fn a_scenario_that_departs_exits_1_and_shows_its_line() {
    let said = rehearse(&failing(), &[]).exits(1);
    for words in [
        "scenarios/stuck-fast.yaml:4:11  Stuck\nerror: expected the verdict `fine`\n",
        "  happened: the verdict `stuck`, at hums/stuck\n",
        "    hums.yaml:10  quiet → fine\n",
    ] {
        assert!(said.out.contains(words), "{words:?} is missing: {}", said.out);
    }
    assert!(
        said.out.ends_with(": 2 scenarios, 1 as expected, 1 not\n"),
        "{}",
        said.out
    );
}

#[test]
fn json_says_the_same() {
    let said = rehearse(&failing(), &["--format", "json"]).exits(1);
    let report: Value = serde_json::from_str(&said.out).unwrap();
    assert_eq!(
        [&report["scenarios"], &report["as_expected"], &report["failed"]],
        [&2.into(), &1.into(), &1.into()] as [&Value; 3]
    );
    let failure = &report["failures"][0];
    assert_eq!(
        [
            &failure["scenario"],
            &failure["file"],
            &failure["line"],
            &failure["column"]
        ],
        [
            &"stuck-fast".into(),
            &"scenarios/stuck-fast.yaml".into(),
            &4.into(),
            &11.into()
        ] as [&Value; 4]
    );
    assert_eq!(failure["left"]["step"], "hums/hear");
    assert_eq!(failure["left"]["keeping"][0]["answer"], "quiet");
    assert_eq!(failure["walk"].as_array().unwrap().len(), 2);
    let tree = &report["coverage"]["trees"][0];
    assert_eq!(
        (&tree["edges"]["covered"], &tree["edges"]["total"]),
        (&2.into(), &3.into())
    );
    assert_eq!(
        tree["uncovered_edges"][0],
        serde_json::json!({
            "step": "hear", "answer": "knock", "go": "stuck", "file": "hums.yaml", "line": 11, "reachable": true
        })
    );
}

#[test]
fn an_answer_that_is_missing_is_shown_as_the_file_would_write_it() {
    let scene = written();
    scene.write(
        "library/scenarios/runs.yaml",
        "scenario: Fine\ntree: hums\nexpect: { verdict: fine }\n",
    );
    let said = rehearse(&scene, &[]).exits(1);
    assert!(
        said.out
            .contains("  add to the scenario, for instance:\n    signs:\n      noise: quiet\n"),
        "{}",
        said.out
    );
}

#[test]
fn a_library_with_an_error_is_not_rehearsed() {
    let scene = written();
    scene.write(
        "library/hums.yaml",
        "tree: hums\ntitle: It hums\nstart: hear\nsteps: {}\n",
    );
    let said = rehearse(&scene, &[]).exits(1);
    assert!(
        said.out.is_empty() && said.err.contains("so it is not walked"),
        "{said:?}"
    );
}

#[test]
fn every_step_of_the_built_in_library_is_in_a_worked_call() {
    run(&["rehearse", "--require", "steps"]).exits(0);
}
