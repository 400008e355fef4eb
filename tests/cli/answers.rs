//! A call that a scenario file answers.

use crate::common::scene::{HALF, scenario, scene};

#[test]
fn a_call_that_ends_as_expected_exits_0_and_is_on_record() {
    let scene = scene();
    let said = scene
        .run(&[
            "walk",
            "no-heat",
            "--answers",
            &scenario("board-lets-the-valve-go"),
        ])
        .exits(0);
    assert!(said.out.contains("Verdict, proven"), "{}", said.out);
    let id = scene.id();
    assert!(said.out.contains(&format!("Session {id}\n")), "{}", said.out);
    let verified = scene.verify(&id).exits(0);
    assert!(
        verified.out.starts_with(&format!("{id}  whole, closed")),
        "{}",
        verified.out
    );
}

#[test]
fn a_call_that_ends_otherwise_exits_1_and_says_how() {
    let scene = scene();
    let text = std::fs::read_to_string(scenario("nothing-found-runs-through")).unwrap();
    let other = text.replace("verdict: nothing_found", "verdict: comes_and_goes");
    let said = scene
        .run(&["walk", "no-heat", "--answers", &scene.write("other.yaml", &other)])
        .exits(1);
    let departs: Vec<&str> = said
        .out
        .lines()
        .filter(|line| line.starts_with("DEPARTS"))
        .collect();
    assert_eq!(departs.len(), 1, "{}", said.out);
    assert!(
        departs[0].contains("comes_and_goes") && departs[0].contains("nothing_found"),
        "{departs:?}"
    );
}

#[test]
fn answers_that_do_not_suffice_exit_1_name_the_question_and_leave_the_call_open() {
    let scene = scene();
    let said = scene
        .run(&["walk", "no-heat", "--answers", &scene.write("half.yaml", HALF)])
        .exits(1);
    assert!(
        said.out.starts_with("DEPARTS  the walk asks for "),
        "{}",
        said.out
    );
    let listed = scene.run(&["sessions"]).exits(0);
    assert!(listed.out.trim_end().ends_with("open"), "{}", listed.out);
}

#[test]
fn answers_that_cannot_be_used_exit_2_and_open_nothing() {
    let scene = scene();
    let missing = scene.temp.path().join("missing.yaml");
    let unknown = scene.write("unknown.yaml", &HALF.replace("inducer: runs", "inducer: flies"));
    let other_tree = scenario("gas-smell-released");
    for (file, told) in [
        (missing.to_str().unwrap(), "cannot be read"),
        (&unknown, "do not fit the library"),
        // Where it stands in the file, by the file's own name.
        (&unknown, "unknown.yaml:3:"),
        (&other_tree, "the answers are for the tree `gas-smell`"),
    ] {
        let said = scene.run(&["walk", "no-heat", "--answers", file]).exits(2);
        assert!(said.err.contains(told), "{}", said.err);
        assert_eq!(said.out, "");
    }
    assert_eq!(scene.ids(), Vec::<String>::new());
}

#[test]
fn a_tree_that_is_not_there_exits_2_with_the_one_that_may_be_meant() {
    let scene = scene();
    let said = scene.run(&["walk", "no-haet", "--plain"]).exits(2);
    assert_eq!(
        said.err,
        "proofwalk: the built-in library has no tree `no-haet`\n  help: did you mean `no-heat`?\n"
    );
    assert!(!scene.sessions().exists());
}

#[test]
fn no_call_begins_with_a_tree_that_is_only_visited() {
    let scene = scene();
    for (name, text) in [
        (
            "library.yaml",
            "library: pumps\ngate: safe\ndangers: { Someone is hurt: hurt }\n",
        ),
        (
            "registry/faults.yaml",
            "faults: { fine: { title: Fine, remedy: none }, stop: { title: Stop, remedy: shut_down } }\n",
        ),
        (
            "hums.yaml",
            "tree: hums\ntitle: T\ncomplaint: It hums\nstart: deep\nsteps:\n  deep: { visit: deep }\n",
        ),
        (
            "deep.yaml",
            "tree: deep\ntitle: T\nstart: fine\nsteps:\n  fine: { verdict: fine, because: So. }\n",
        ),
        (
            "safe.yaml",
            "tree: safe\ntitle: T\noutcomes: [safe]\nstart: go\nsteps:\n  go: { return: safe }\n",
        ),
        (
            "hurt.yaml",
            "tree: hurt\ntitle: T\nstart: stop\nsteps:\n  stop: { verdict: stop, because: So. }\n",
        ),
        (
            "scenarios/deep.yaml",
            "scenario: S\ntree: deep\nexpect: { verdict: fine }\n",
        ),
    ] {
        scene.write(&format!("library/{name}"), text);
    }
    let folder = scene.temp.path().join("library");
    let folder = folder.to_str().unwrap();
    let walk = |tree: &str, more: &[&str]| {
        scene.run(&[&["walk", tree, "--plain", "--library", folder], more].concat())
    };
    let said = walk("deep", &[]).exits(2);
    assert_eq!(
        said.err,
        "proofwalk: no call begins with `deep`: it has no `complaint`, so it is only visited\n  help: the complaints are hums\n"
    );
    assert!(!scene.sessions().exists());
    // A worked call may start anywhere; a danger and the gate stand for themselves.
    walk("deep", &["--answers", &format!("{folder}/scenarios/deep.yaml")]).exits(0);
    for tree in ["hums", "hurt", "safe"] {
        walk(tree, &[]).exits(0);
    }
}

#[test]
fn answers_without_end_are_not_read_without_end() {
    let said = scene()
        .run(&["walk", "no-heat", "--answers", "/dev/zero"])
        .exits(2);
    assert!(said.err.contains("larger than the 64 MiB"), "{}", said.err);
}

#[test]
fn a_library_with_an_error_is_not_walked() {
    let scene = scene();
    scene.write(
        "library/library.yaml",
        "library: broken\nedition: 2026.1\ntitle: Broken\nnonsense: 1\n",
    );
    let folder = scene.temp.path().join("library");
    let folder = folder.to_str().unwrap();
    let said = scene
        .run(&["walk", "no-heat", "--plain", "--library", folder])
        .exits(1);
    assert!(said.err.contains("so it is not walked"), "{}", said.err);
    assert!(
        said.err.contains("malformed") && said.err.contains("library.yaml:4"),
        "{}",
        said.err
    );
    assert_eq!((said.out.as_str(), scene.sessions().exists()), ("", false));
}

#[test]
fn a_library_that_is_not_there_exits_2() {
    let said = scene()
        .run(&["walk", "no-heat", "--library", "/nowhere/trees"])
        .exits(2);
    assert!(said.err.contains("/nowhere/trees"), "{}", said.err);
}

#[test]
fn the_clock_that_is_given_is_the_one_recorded() {
    let scene = scene();
    let answers = scenario("nothing-found-runs-through");
    scene
        .run(&[
            "walk",
            "no-heat",
            "--clock",
            "2026-01-31T14:05:00Z",
            "--answers",
            &answers,
        ])
        .exits(0);
    let text = std::fs::read_to_string(scene.file(&scene.id())).unwrap();
    assert!(text.lines().count() > 10);
    assert!(
        text.lines()
            .all(|line| line.contains(r#""time":"2026-01-31T14:05:00Z""#)),
        "{text}"
    );
    let said = scene.run(&["walk", "no-heat", "--clock", "yesterday"]).exits(2);
    assert!(
        said.err.contains("write a time like 2026-01-31T14:05:00Z"),
        "{}",
        said.err
    );
}
