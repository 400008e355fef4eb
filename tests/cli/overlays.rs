//! Overlays, as the commands lay them.

use std::fs;

use serde_json::Value;

use crate::common::scene::{Scene, run, scene};

/// Replaces the put-back of the built-in library that every call with a meter opens, and a tree by one that ends at once.
fn company(scene: &Scene) -> String {
    let files = [
        (
            "library.yaml",
            "library: north\ntitle: The north branch\nedition: 7\n",
        ),
        (
            "registry/restores.yaml",
            "restores:\n  flag: Take the flag off the gas cock\n",
        ),
        (
            "no-heat.yaml",
            "tree: no-heat\ntitle: No heat, our way\ncomplaint: No heat\nstart: flag\nsteps:\n  \
             flag: { do: Hang a flag on the gas cock., leaves: [flag], go: look }\n  \
             look: { observe: inducer, go: end }\n  \
             end: { verdict: nothing_found, because: We only look. }\n",
        ),
    ];
    for (name, text) in files {
        scene.write(&format!("company/{name}"), text);
    }
    let folder = scene.temp.path().join("company");
    folder.to_str().unwrap().to_owned()
}

fn answers(scene: &Scene) -> String {
    scene.write(
        "answers.yaml",
        "scenario: We look\ntree: no-heat\nsigns: { inducer: runs }\nexpect: { verdict: nothing_found, put_back: [flag] }\n",
    )
}

#[test]
fn a_check_takes_both_as_one_library_and_names_what_was_replaced() {
    let scene = scene();
    let folder = company(&scene);
    let said = run(&["check", "--overlay", &folder]);
    let first =
        format!("overlay The north branch, edition 7: replaces 1\n  tree `no-heat`: {folder}/no-heat.yaml:1");
    assert!(said.out.contains(&first), "{}", said.out);
    let said = run(&["check", "--overlay", &folder, "--format", "json"]);
    let report: Value = serde_json::from_str(&said.out).unwrap();
    assert_eq!(report["library"], "residential-gas-furnace");
    assert_eq!(report["replaced"][0]["name"], "no-heat");
    assert_eq!(report["replaced"][0]["instead_of"]["file"], "no-heat.yaml");
}

#[test]
fn what_is_wrong_in_an_overlay_is_told_with_its_folder_and_keeps_it_from_being_walked() {
    let scene = scene();
    let folder = company(&scene);
    scene.write(
        "company/registry/restores.yaml",
        "restores:\n  flagg: Take it off\n",
    );
    let said = run(&["check", "--overlay", &folder]).exits(1);
    assert!(
        said.out.contains(&format!("{folder}/no-heat.yaml:6:")),
        "{}",
        said.out
    );
    let said = scene.run(&["walk", "no-heat", "--overlay", &folder]).exits(1);
    let command = format!("`proofwalk check --overlay {folder}`");
    assert!(said.err.contains(&command), "{}", said.err);
    assert!(scene.ids().is_empty());
}

#[test]
fn a_worked_call_of_the_library_runs_against_what_replaced_its_tree() {
    let scene = scene();
    let said = run(&["rehearse", "--overlay", &company(&scene)]).exits(1);
    assert!(said.out.contains("scenarios/no-heat-"), "{}", said.out);
}

#[test]
fn a_call_keeps_its_overlay_however_that_changes_or_goes() {
    let scene = scene();
    let folder = company(&scene);
    let call = [
        "walk",
        "no-heat",
        "--overlay",
        &folder,
        "--answers",
        &answers(&scene),
    ];
    scene.run(&call).exits(0);
    let id = scene.id();
    fs::remove_dir_all(&folder).unwrap();
    let verified = scene.verify(&id).exits(0);
    assert!(verified.out.contains("whole, closed"), "{}", verified.out);
    let report = scene.run(&["report", &id]).exits(0);
    for words in [
        "Overlay     The north branch, edition 7; it replaces the tree no-heat",
        "Tree        No heat, our way (draft)",
        "NOT RELEASED: walked by a draft of the tree “No heat, our way”.",
        "put back: Take the flag off the gas cock",
    ] {
        assert!(report.out.contains(words), "{words:?} is not in\n{}", report.out);
    }
    let report = scene.run(&["report", &id, "--format", "json"]).exits(0);
    let report: Value = serde_json::from_str(&report.out).unwrap();
    assert_eq!(report["trees"][0]["status"], "draft");
    let brief = scene.run(&["brief", &id]).exits(0);
    assert!(
        brief.out.contains("DRAFT was walked: No heat, our way\n"),
        "{}",
        brief.out
    );
    let log = fs::read_to_string(scene.file(&id)).unwrap();
    assert!(
        log.contains(r#""overlays":[{"name":"north","edition":"7"}]"#),
        "{log}"
    );
}

#[test]
fn a_call_that_was_left_goes_on_with_the_overlay_it_began_with() {
    let scene = scene();
    let folder = company(&scene);
    let call = ["walk", "no-heat", "--overlay", &folder, "--plain"];
    let said = scene.run(&call).exits(0);
    assert!(
        said.out.contains("Overlay: The north branch, edition 7"),
        "{}",
        said.out
    );
    scene.write("company/no-heat.yaml", "no tree any more");
    let said = scene
        .run(&["resume", "--plain", "--overlay", "/nowhere"])
        .exits(0);
    assert!(
        said.err.contains("goes on with the library it began with"),
        "{}",
        said.err
    );
    assert!(
        said.out.contains("Overlay: The north branch, edition 7"),
        "{}",
        said.out
    );
}

#[test]
fn of_two_overlays_the_later_wins() {
    let scene = scene();
    let one = company(&scene);
    scene.write("two/library.yaml", "title: The night shift\n");
    scene.write("two/registry/restores.yaml", "restores:\n  flag: Burn the flag\n");
    let two = scene.temp.path().join("two");
    let two = two.to_str().unwrap();
    let text = |overlays: [&str; 2]| {
        let [first, second] = overlays;
        let said = run(&["check", "--overlay", first, "--overlay", second]);
        said.out
    };
    assert!(
        text([&one, two]).contains(&format!(
            "overlay The night shift: replaces 1\n  put-back `flag`: {two}/registry/restores.yaml:2 instead of {one}/registry/restores.yaml:2\n"
        )),
        "{}",
        text([&one, two])
    );
    assert!(text([two, &one]).contains("overlay The night shift: replaces nothing\n"));
}

#[test]
fn an_overlay_that_cannot_be_read_exits_2_before_anything_is_done() {
    let scene = scene();
    scene.write("empty/notes.txt", "");
    let temp = scene.temp.path();
    let at = |name: &str| temp.join(name).to_str().unwrap().to_owned();
    for (folder, words) in [
        ("nowhere", "there is no such folder"),
        ("empty", "there is no .yaml file in this folder"),
        ("empty/notes.txt", "this is no folder"),
    ] {
        let folder = at(folder);
        for command in [&["check"][..], &["rehearse"], &["walk", "no-heat"]] {
            let said = scene_run(&scene, command, &folder).exits(2);
            assert!(said.err.contains(&format!("{folder}: {words}")), "{}", said.err);
        }
    }
    assert!(scene.ids().is_empty());
    let trees = company(&scene);
    let said = run(&["check", &trees, "--overlay", &trees]).exits(2);
    assert!(
        said.err.contains("this overlay is the library's own folder"),
        "{}",
        said.err
    );
}

fn scene_run(scene: &Scene, command: &[&str], folder: &str) -> crate::common::scene::Said {
    let arguments = [command, &["--overlay", folder]].concat();
    match command[0] {
        "walk" => scene.run(&arguments),
        _ => run(&arguments),
    }
}
