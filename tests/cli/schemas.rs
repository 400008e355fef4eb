//! `schema`.

use std::fs;
use std::path::Path;

use proofwalk::library::with_modeline;
use proofwalk::store::read_library;
use serde_json::Value;

use crate::common::scene::{root, run, scene};

const KINDS: [&str; 11] = [
    "library", "plate", "readings", "signs", "parts", "faults", "restores", "cautions", "sources", "tree",
    "scenario",
];

#[test]
fn the_kinds_are_listed_and_each_is_printed() {
    let list = run(&["schema"]).exits(0).out;
    let listed: Vec<&str> = list
        .lines()
        .take(11)
        .map(|line| line.split_whitespace().next().unwrap())
        .collect();
    assert_eq!(listed, KINDS);
    for hint in [
        "proofwalk schema --write DIR",
        "--modelines",
        "# yaml-language-server: $schema=",
    ] {
        assert!(list.contains(hint), "{list}");
    }
    for kind in KINDS {
        let printed: Value = serde_json::from_str(&run(&["schema", kind]).exits(0).out).unwrap();
        assert_eq!(printed["$schema"], "http://json-schema.org/draft-07/schema#");
    }
    let wrong = run(&["schema", "trees"]).exits(2);
    assert!(
        wrong.err.contains("possible values: library, plate"),
        "{}",
        wrong.err
    );
    run(&["schema", "--modelines"]).exits(2);
    run(&["schema", "tree", "--write", "x"]).exits(2);
}

#[test]
fn the_schemas_beside_the_built_in_library_are_those_that_are_printed() {
    for kind in KINDS {
        let committed = fs::read_to_string(root().join(format!("trees/schema/{kind}.json"))).unwrap();
        let printed = run(&["schema", kind]).exits(0).out;
        assert!(
            committed == printed,
            "trees/schema/{kind}.json is out of date: run `cargo run -- schema --write trees --modelines`"
        );
    }
}

#[test]
fn every_file_of_the_built_in_library_names_its_schema() {
    let files = read_library(&root().join("trees")).unwrap();
    let untold = files
        .iter()
        .filter(|file| with_modeline(file.name(), file.text()).is_some());
    let untold: Vec<&str> = untold.map(|file| file.name()).collect();
    assert!(
        untold.is_empty(),
        "run `cargo run -- schema --write trees --modelines` for {untold:?}"
    );
}

/// Copies the tree files of a folder, without what stands beside them.
fn copy(from: &Path, into: &Path) {
    fs::create_dir_all(into).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let path = entry.unwrap().path();
        let target = into.join(path.file_name().unwrap());
        if path.is_dir() && !path.ends_with("schema") {
            copy(&path, &target);
        } else if path.extension().is_some_and(|ending| ending == "yaml") {
            fs::copy(&path, target).unwrap();
        }
    }
}

#[test]
fn a_library_is_told_of_its_schemas_once_and_is_the_same_library_after_it() {
    let scene = scene();
    let folder = scene.temp.path().join("library");
    copy(&root().join("tests/library/every-key"), &folder);
    let shown = folder.to_str().unwrap();
    let checked = run(&["check", shown]).exits(0).out;
    let before = fs::read_to_string(folder.join("registry/plate.yaml")).unwrap();

    let said = run(&["schema", "--write", shown]).exits(0).out;
    assert_eq!(said, format!("11 schemas written; all is in place in {shown}\n"));
    assert_eq!(
        fs::read_to_string(folder.join("registry/plate.yaml")).unwrap(),
        before
    );

    let said = run(&["schema", "--write", shown, "--modelines"]).exits(0).out;
    assert_eq!(
        said,
        format!("0 schemas written, 16 files told of them; all is in place in {shown}\n")
    );
    let told = fs::read_to_string(folder.join("registry/plate.yaml")).unwrap();
    assert_eq!(
        told,
        format!("# yaml-language-server: $schema=../schema/plate.json\n{before}")
    );
    assert!(folder.join("registry/../schema/plate.json").is_file());

    let said = run(&["schema", "--write", shown, "--modelines"]).exits(0).out;
    assert_eq!(
        said,
        format!("0 schemas written, 0 files told of them; all is in place in {shown}\n")
    );
    assert_eq!(run(&["check", shown]).exits(0).out, checked);
}

#[test]
fn what_cannot_be_told_is_left_as_it_is() {
    let scene = scene();
    scene.write("library/a.yaml", "tree: a\n");
    let folder = scene.temp.path().join("library");
    fs::write(folder.join("b.yaml"), b"\xff\xfeb\0").unwrap();
    let said = run(&["schema", "--write", folder.to_str().unwrap(), "--modelines"]).exits(2);
    assert!(said.err.contains("b.yaml: this is UTF-16"), "{}", said.err);
    assert_eq!(fs::read_to_string(folder.join("a.yaml")).unwrap(), "tree: a\n");
    let missing = folder.join("missing");
    let said = run(&["schema", "--write", missing.to_str().unwrap()]).exits(2);
    assert!(said.err.contains("there is no such folder"), "{}", said.err);
}
