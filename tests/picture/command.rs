//! `proofwalk picture` as its user runs it.

use crate::common::scene::{Scene, root, run, scene};
use crate::libraries::{FILES, SOCKET};
use crate::sheet::Sheet;

/// A folder with the sump pumps, one of its files changed.
fn library(name: &str, change: impl Fn(&str) -> String) -> (Scene, String) {
    let scene = scene();
    for (file, text) in FILES.into_iter().chain([SOCKET]) {
        let text = if file == name {
            change(text)
        } else {
            text.to_owned()
        };
        scene.write(&format!("library/{file}"), &text);
    }
    let folder = scene.temp.path().join("library").to_str().unwrap().to_owned();
    (scene, folder)
}

#[test]
fn a_tree_is_drawn_on_standard_output() {
    let said = run(&["picture", "no-heat"]).exits(0);
    assert!(said.err.is_empty() && !Sheet::read(&said.out).steps.is_empty());
    let folder = root().join("trees");
    let same = run(&[
        "picture",
        "no-heat",
        "--library",
        folder.to_str().unwrap(),
        "--format",
        "svg",
    ])
    .exits(0);
    assert_eq!(said.out, same.out);
    let said = run(&["picture", "no-heat", "--format", "dot"]).exits(0);
    assert!(said.out.starts_with("digraph \"no-heat\" {\n"), "{}", said.out);
}

#[test]
fn a_part_is_drawn() {
    let said = run(&["picture", "no-heat", "--from", "flame", "--depth", "1"]).exits(0);
    let sheet = Sheet::read(&said.out);
    assert_eq!(sheet.steps[0], "flame");
    assert!(sheet.steps.len() < 6, "{:?}", sheet.steps);
}

#[test]
fn what_is_not_there_exits_2_and_says_what_is() {
    for (arguments, message) in [
        (&["picture", "no-heet"][..], "did you mean `no-heat`?"),
        (&["picture", "no-heat", "--from", "flam"], "did you mean `flame`?"),
        (
            &["picture", "no-heat", "--from", "\u{1b}[2J"],
            "has no step `^[[2J`",
        ),
        (&["picture", "no-heat", "--depth=-1"], "--depth"),
        (&["picture", "no-heat", "--library", "/nowhere"], "/nowhere"),
    ] {
        let said = run(arguments).exits(2);
        assert!(said.out.is_empty() && said.err.contains(message), "{said:?}");
    }
}

#[test]
fn a_tree_that_is_too_large_exits_2_and_names_the_way_out() {
    let steps: String = (0..5000)
        .map(|at| format!("  s{at}: {{ do: Wait., go: s{} }}\n", at + 1))
        .collect();
    let large = format!(
        "tree: socket\ntitle: Large\nstart: s0\nsteps:\n{steps}  s5000: {{ verdict: wet, because: So. }}\n"
    );
    let (_scene, folder) = library("socket.yaml", |_| large.clone());
    let said = run(&["picture", "socket", "--library", &folder]).exits(2);
    assert!(said.out.is_empty() && said.err.contains("--from STEP") && said.err.contains("--depth N"));
}

#[test]
fn a_tree_whose_file_cannot_be_read_exits_2_and_points_to_the_check() {
    let (_scene, folder) = library("pump.yaml", |text| text.replace("steps:", "steps: ["));
    let said = run(&["picture", "pump", "--library", &folder]).exits(2);
    assert!(
        said.err.contains(&format!("proofwalk check {folder}")),
        "{}",
        said.err
    );
}

#[test]
fn a_library_with_an_error_is_drawn_and_marked() {
    let (_scene, folder) = library("pump.yaml", |text| text.replace("go: lift", "go: lifft"));
    let said = run(&["picture", "pump", "--library", &folder]).exits(1);
    assert!(said.err.contains("proofwalk check"), "{}", said.err);
    assert!(said.out.contains("NOT TO BE WALKED: the library has 1 error;"));
    let sheet = Sheet::read(&said.out);
    assert!(sheet.steps.contains(&"lift".to_owned()));
    assert!(sheet.texts.iter().any(|text| text.words == "no way leads here"));
    assert!(sheet.texts.iter().any(|text| text.words.ends_with("UNRESOLVED")));
}
