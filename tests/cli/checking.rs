//! `check` and `rehearse`.

use std::fs;
use std::path::Path;

use rustix::fs::{CWD, Mode, mkfifoat};
use serde_json::Value;

use crate::common::scene::{root, run, scene};

fn built_in() -> String {
    root().join("trees").to_str().unwrap().to_owned()
}

#[test]
fn the_built_in_library_has_no_error() {
    let said = run(&["check", &built_in()]).exits(0);
    assert!(!said.out.contains("error["), "{}", said.out);
    let embedded = run(&["check", "--format", "json"]).exits(0);
    let from_folder = run(&["check", &built_in(), "--format", "json"]).exits(0);
    let (embedded, from_folder): (Value, Value) = (
        serde_json::from_str(&embedded.out).unwrap(),
        serde_json::from_str(&from_folder.out).unwrap(),
    );
    for key in ["library", "trees", "steps", "findings"] {
        assert_eq!(embedded[key], from_folder[key], "{key}");
    }
}

#[test]
fn json_has_the_keys_that_others_read() {
    let scene = scene();
    scene.write(
        "library/library.yaml",
        "library: broken\nedition: 2026.1\ntitle: Broken\nnonsense: 1\n",
    );
    let folder = scene.temp.path().join("library");
    let said = run(&["check", folder.to_str().unwrap(), "--format", "json"]).exits(1);
    let report: Value = serde_json::from_str(&said.out).unwrap();
    assert!(
        report["library"].is_string() && report["trees"].is_u64() && report["steps"].is_u64(),
        "{report}"
    );
    let finding = &report["findings"][0];
    assert_eq!(
        (
            &finding["rule"],
            &finding["level"],
            &finding["file"],
            &finding["line"]
        ),
        (
            &"malformed".into(),
            &"error".into(),
            &"library.yaml".into(),
            &4.into()
        )
    );
    assert!(
        finding["column"].is_u64() && finding["message"].is_string() && finding["help"].is_string(),
        "{finding}"
    );
    assert!(
        finding
            .get("witness")
            .is_none_or(|witness| witness.is_array() || witness.is_null()),
        "{finding}"
    );
}

#[test]
fn sarif_is_one_log_with_the_rule_of_each_result() {
    let scene = scene();
    scene.write("library/library.yaml", "library: broken\nnonsense: 1\n");
    let folder = scene.temp.path().join("library");
    let said = run(&["check", folder.to_str().unwrap(), "--format", "sarif"]).exits(1);
    let log: Value = serde_json::from_str(&said.out).unwrap();
    let run = &log["runs"][0];
    let result = &run["results"][0];
    let place = &result["locations"][0]["physicalLocation"];
    assert_eq!(
        (&log["version"], &result["level"]),
        (&"2.1.0".into(), &"error".into())
    );
    assert_eq!(place["artifactLocation"]["uri"], "library.yaml");
    assert_eq!(place["region"]["startLine"], 2);
    let rule = result["ruleIndex"].as_u64().unwrap() as usize;
    assert_eq!(run["tool"]["driver"]["rules"][rule]["id"], "malformed");
}

#[test]
fn text_names_the_place_and_the_rule() {
    let scene = scene();
    scene.write(
        "library/library.yaml",
        "library: broken\nedition: 2026.1\ntitle: Broken\nnonsense: 1\n",
    );
    let folder = scene.temp.path().join("library");
    let said = run(&["check", folder.to_str().unwrap()]).exits(1);
    assert!(
        said.out.contains("library.yaml:4") && said.out.contains("malformed"),
        "{}",
        said.out
    );
    assert!(!said.out.contains('\u{1b}'), "a pipe gets no colours");
}

#[test]
fn every_rule_explains_itself_and_an_unknown_one_exits_2() {
    let said = run(&["check", "--explain", "band-gap"]).exits(0);
    assert!(said.out.contains("band-gap"), "{}", said.out);
    let said = run(&["check", "--explain", "band-gpa"]).exits(2);
    assert!(said.err.contains("did you mean `band-gap`?"), "{}", said.err);
}

#[test]
fn the_rules_are_listed_with_their_levels() {
    let said = run(&["check", "--explain"]).exits(0);
    for line in [
        "band-gap          error    A value lies in none of a step's bands",
        "unused-name       warning  A reading, sign, part",
        "draft-tree        error    A tree of a library that is to be released",
    ] {
        assert!(said.out.contains(line), "{}", said.out);
    }
    let (_, release) = said.out.split_once("`proofwalk check --release`").unwrap();
    assert!(
        release.contains("missing-edition") && !release.contains("unused-name"),
        "{release}"
    );
    assert_eq!(run(&["check", "trees", "--explain"]).exits(0).out, said.out);
}

#[test]
fn a_new_author_is_told_the_next_step() {
    let scene = scene();
    let folder = scene.temp.path().join("pumps");
    fs::create_dir(&folder).unwrap();
    let folder = folder.to_str().unwrap();
    let said = run(&["check", folder]).exits(2);
    assert!(
        said.err
            .contains("write library.yaml with a line `library: NAME`"),
        "{}",
        said.err
    );
    scene.write("pumps/library.yaml", "library: pumps\n");
    let said = run(&["check", folder]).exits(0);
    assert!(
        said.out.contains("there is no tree yet: write NAME.yaml"),
        "{}",
        said.out
    );
    let said = run(&["walk", "no-heat", "--library", folder]).exits(2);
    assert!(
        said.err.contains("no tree of it has a `complaint`"),
        "{}",
        said.err
    );
    scene.write("pumps/library.yaml", "library: pumps\nnonsense: 1\n");
    let said = run(&["check", folder]).exits(1);
    assert!(!said.out.contains("there is no tree yet"), "{}", said.out);
}

#[test]
fn a_folder_that_is_none_exits_2() {
    for arguments in [["check", "/nowhere/trees"], ["rehearse", "/nowhere/trees"]] {
        let said = run(&arguments).exits(2);
        assert!(
            said.err.contains("/nowhere/trees") && said.out.is_empty(),
            "{said:?}"
        );
    }
}

/// What a check of a folder finds, each as `file:line rule: message`.
fn found(folder: &Path) -> Vec<String> {
    let said = run(&["check", folder.to_str().unwrap(), "--format", "json"]).exits(1);
    let report: Value = serde_json::from_str(&said.out).unwrap();
    let findings = report["findings"].as_array().unwrap().iter().map(|finding| {
        let text = |key: &str| finding[key].as_str().unwrap().to_owned();
        format!(
            "{}:{} {}: {}",
            text("file"),
            finding["line"],
            text("rule"),
            text("message")
        )
    });
    findings.collect()
}

#[test]
fn what_cannot_be_read_is_a_finding_and_hides_no_other() {
    let scene = scene();
    let folder = scene.temp.path().join("library");
    scene.write("library/library.yaml", "library: broken\nnonsense: 1\n");
    scene.write("library/old.yml", "tree: old\n");
    fs::write(folder.join("wide.yaml"), b"\xff\xfet\0").unwrap();
    fs::write(folder.join("latin.yaml"), b"tree: latin\ntitle: 70 \xb0F\n").unwrap();
    mkfifoat(CWD, folder.join("pipe.yaml"), Mode::RWXU).unwrap();
    assert_eq!(
        found(&folder),
        [
            "latin.yaml:2 malformed: not UTF-8 from byte 22 on",
            "library.yaml:2 malformed: `nonsense` is not a key of the format here",
            "old.yml:1 malformed: the ending of a tree file is .yaml, not .yml",
            "pipe.yaml:1 malformed: this is no regular file",
            "wide.yaml:1 malformed: this is UTF-16, by the byte order mark at its start",
        ]
    );
    let said = run(&["check", folder.to_str().unwrap()]).exits(1);
    assert!(said.out.contains("latin.yaml:2:11\n"), "{}", said.out);
    let said = scene
        .run(&["walk", "old", "--library", folder.to_str().unwrap()])
        .exits(1);
    assert!(said.err.contains("5 errors, so it is not walked"), "{}", said.err);
}

#[test]
fn a_library_without_library_yaml_is_told_what_to_write() {
    let scene = scene();
    scene.write("library/registry/restores.yaml", "restores: {}\n");
    let folder = scene.temp.path().join("library");
    assert_eq!(
        found(&folder),
        ["library.yaml:1 malformed: the library has no `library.yaml`"]
    );
    let said = run(&["check", folder.to_str().unwrap()]).exits(1);
    assert!(said.out.contains("`library: NAME`"), "{}", said.out);
}

#[test]
fn drafts_are_refused_for_release_alone() {
    let scene = scene();
    copy(&root().join("trees"), &scene.temp.path().join("library"));
    let folder = scene.temp.path().join("library");
    let file = folder.join("flood.yaml");
    let text = fs::read_to_string(&file).unwrap();
    fs::write(&file, text.replace("status: field-trial", "status: draft")).unwrap();
    let folder = folder.to_str().unwrap();
    run(&["check", folder]).exits(0);
    let said = run(&["check", folder, "--release"]).exits(1);
    assert!(
        said.out
            .starts_with("flood.yaml:5:1\nerror[draft-tree]: the tree `flood` is a draft\n"),
        "{}",
        said.out
    );
    let said = run(&["check", "--explain", "draft-tree"]).exits(0);
    assert!(said.out.contains("--release"), "{}", said.out);
}

#[test]
fn the_built_in_library_may_be_released() {
    run(&["check", "--release"]).exits(0);
}

#[test]
fn a_scenario_that_departs_exits_1_with_its_place() {
    let scene = scene();
    copy(&root().join("trees"), &scene.temp.path().join("trees"));
    let file = scene
        .temp
        .path()
        .join("trees/scenarios/nothing-found-runs-through.yaml");
    let text = fs::read_to_string(&file).unwrap();
    fs::write(
        &file,
        text.replace("verdict: nothing_found", "verdict: comes_and_goes"),
    )
    .unwrap();
    let said = run(&["rehearse", scene.temp.path().join("trees").to_str().unwrap()]).exits(1);
    assert!(
        said.out.contains("scenarios/nothing-found-runs-through.yaml:"),
        "{}",
        said.out
    );
    assert!(
        said.out.trim_end().ends_with(" as expected, 1 not"),
        "{}",
        said.out
    );
}

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let path = entry.unwrap().path();
        let target = to.join(path.file_name().unwrap());
        if path.is_dir() {
            copy(&path, &target);
        } else {
            fs::copy(&path, &target).unwrap();
        }
    }
}
