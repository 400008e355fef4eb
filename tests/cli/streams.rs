//! What goes where, and readers that go away.

use std::process::{Command, Stdio};

use crate::common::scene::{PROGRAM, Said, root, run, scene};

fn piped(line: &str, scene: &crate::common::scene::Scene) -> Said {
    let mut bash = Command::new("bash");
    bash.args(["-c", &format!("set -o pipefail; {line}; exit ${{PIPESTATUS[0]}}")]);
    bash.env("PROGRAM", PROGRAM)
        .env("SESSIONS", scene.sessions())
        .env("TREES", root().join("trees"));
    bash.stdin(Stdio::null()).output().unwrap().into()
}

#[test]
fn a_reader_that_goes_away_is_no_error() {
    let scene = scene();
    for _ in 0..3 {
        scene.closed();
    }
    for line in [
        "$PROGRAM sessions --sessions $SESSIONS | head -1 >/dev/null",
        "$PROGRAM verify $SESSIONS | head -1 >/dev/null",
        "$PROGRAM report --sessions $SESSIONS $(ls $SESSIONS | grep -m1 jsonl | cut -d. -f1) | head -1",
        "$PROGRAM walk no-heat --plain --sessions $SESSIONS < <(yes '') | head -1",
        "$PROGRAM walk no-heat --answers $TREES/scenarios/nothing-found-runs-through.yaml --sessions $SESSIONS | head -1",
        "$PROGRAM check $TREES | head -1",
        "$PROGRAM man | head -1",
        "$PROGRAM completions bash | head -1",
        "$PROGRAM --help | head -1",
    ] {
        let said = piped(line, &scene);
        assert!(
            said.code == Some(0) && !said.err.contains("proofwalk:") && !said.err.contains("panicked"),
            "{line}: {said:?}"
        );
    }
}

#[test]
fn output_that_is_closed_before_it_begins_is_no_error() {
    let scene = scene();
    scene.closed();
    for command in [
        "sessions --sessions $SESSIONS",
        "verify $SESSIONS",
        "check --format json",
        "man",
    ] {
        // The reader of the pipe is gone for certain before the program starts.
        let line = format!("{{ sleep 0.2; $PROGRAM {command}; }} | true");
        let said = piped(&line, &scene);
        assert_eq!(
            (said.code, said.err.contains("proofwalk:")),
            (Some(0), false),
            "{command}: {said:?}"
        );
    }
}

#[test]
fn output_that_cannot_be_written_is_one() {
    let said = piped("$PROGRAM check --format json >/dev/full", &scene());
    assert!(
        said.code.is_some_and(|code| code != 0) && said.err.contains("proofwalk:"),
        "{said:?}"
    );
}

#[test]
fn without_a_terminal_there_is_advice_and_exit_2() {
    let said = run(&[]).exits(2);
    assert_eq!(said.out, "");
    assert!(
        said.err.contains("proofwalk walk no-heat --plain"),
        "{}",
        said.err
    );
}

#[test]
fn help_and_version_go_to_standard_output_and_misuse_to_standard_error() {
    for arguments in [["--help"], ["--version"], ["help"]] {
        let said = run(&arguments).exits(0);
        assert!(!said.out.is_empty() && said.err.is_empty(), "{said:?}");
    }
    for arguments in [
        &["nonsense"] as &[&str],
        &["walk"],
        &["check", "--format", "pictures"],
    ] {
        let said = run(arguments).exits(2);
        assert!(said.out.is_empty() && !said.err.is_empty(), "{said:?}");
    }
}

#[test]
fn what_cannot_be_printed_is_not_saved() {
    let scene = scene();
    for command in ["check --format json", "formula", "man"] {
        let said = piped(&format!("$PROGRAM {command} > /dev/full"), &scene);
        assert_eq!(said.code, Some(3), "{command}: {said:?}");
        assert!(
            said.err.contains("what was to be printed could not be written"),
            "{said:?}"
        );
    }
}

#[test]
fn what_was_typed_comes_back_without_what_turns_the_line_round() {
    let said = run(&["walk", "no-heat", "--technician", "a\u{202e}b"]).exits(2);
    assert!(
        said.err.contains("<U+202E>") && !said.err.contains('\u{202e}'),
        "{said:?}"
    );
}

#[test]
fn a_folder_without_sessions_is_said_to_be_one() {
    let scene = scene();
    let folder = scene.temp.path().to_str().unwrap();
    let said = run(&["verify", folder]).exits(0);
    assert!(said.err.contains("No sessions in "), "{said:?}");
    let said = run(&["audit", folder, "--window", "-1"]).exits(2);
    assert!(said.err.contains("write a whole number of days"), "{said:?}");
    let said = run(&["audit", folder, "--window", "0"]).exits(2);
    assert!(said.err.contains("write at least 1"), "{said:?}");
}
