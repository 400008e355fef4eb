//! `--watch`: files that are saved while the program looks on.

use std::fs;
use std::path::PathBuf;
use std::process::Stdio;
use std::thread;
use std::time::Duration;

use rustix::process::{Pid, Signal, kill_process};

use crate::common::scene::{Said, Scene, program, run, scene};
use crate::common::spoken::Spoken;
use crate::common::wait::until;

const TREE: &str = "\
tree: hums
title: It hums
complaint: It hums
start: hear
steps:
  hear: { observe: noise, choices: { hum: stuck, quiet: fine } }
  stuck: { verdict: stuck, because: So. }
  fine: { verdict: fine, because: So. }
";
const SCENARIO: &str = "scenario: Stuck\ntree: hums\nsigns: { noise: hum }\nexpect: { verdict: stuck }\n";
/// The line under a result of `check` where all is well.
const SOUND: &str = "no errors, no warnings in 1 tree, 3 steps";

/// A folder with a library, and the program watching it.
struct Watching {
    scene: Scene,
    spoken: Spoken,
}

fn folder(scene: &Scene) -> PathBuf {
    scene.temp.path().join("library")
}

fn written() -> Scene {
    let scene = scene();
    scene.write("library/library.yaml", "library: pumps\n");
    scene.write(
        "library/registry/signs.yaml",
        "signs: { noise: { ask: Heard?, values: { hum: Hum, quiet: Nothing } } }\n",
    );
    scene.write(
        "library/registry/faults.yaml",
        "faults:\n  stuck: { title: Stuck, remedy: correct }\n  fine: { title: Fine, remedy: none }\n",
    );
    scene.write("library/hums.yaml", TREE);
    scene.write("library/scenarios/stuck.yaml", SCENARIO);
    scene
}

/// Saves a file in one stroke, so that no half of it can be read in between.
fn save(scene: &Scene, name: &str, text: &str) {
    let beside = scene.write("library/.beside", text);
    fs::rename(beside, folder(scene).join(name)).unwrap();
}

/// Starts to watch, and waits for the first result.
fn watching(arguments: &[&str], first: &str) -> Watching {
    let scene = written();
    let mut command = program();
    command.args(arguments).arg(folder(&scene));
    let spoken = Spoken::start(command);
    spoken.says(first);
    Watching { scene, spoken }
}

impl Watching {
    /// Does something to the folder, and waits for the words that come of it.
    #[track_caller]
    fn on(&mut self, change: impl FnOnce(&Scene), words: &[&str]) {
        self.spoken.forget();
        change(&self.scene);
        for words in words {
            self.spoken.says(words);
        }
    }

    fn is_sent(&self, signal: Signal) {
        let pid = Pid::from_raw(self.spoken.child.id() as i32).unwrap();
        kill_process(pid, signal).unwrap();
    }

    fn ends(self) -> Said {
        self.is_sent(Signal::TERM);
        self.spoken.ends()
    }
}

#[test]
fn a_file_is_broken_and_mended_and_each_is_told() {
    let mut watching = watching(&["check", "--watch"], SOUND);
    let broken = TREE.replace("hum: stuck", "hum: stuk");
    watching.on(
        |scene| drop(scene.write("library/hums.yaml", &broken)),
        &[
            "hums.yaml changed",
            "error[unknown-name]",
            "1 error in 1 tree, 3 steps",
        ],
    );
    watching.on(
        |scene| drop(scene.write("library/hums.yaml", TREE)),
        &["hums.yaml changed", SOUND],
    );
    let said = watching.ends().exits(0);
    assert_eq!(said.err, "");
    assert!(
        !said.out.contains('\u{1b}'),
        "a pipe gets no colours: {}",
        said.out
    );
}

#[test]
fn an_editor_that_writes_beside_the_file_and_renames_is_followed() {
    let mut watching = watching(&["check", "--watch"], SOUND);
    for title in ["It still hums", "It hums again"] {
        let text = TREE.replace("title: It hums", &format!("title: {title}"));
        watching.on(
            |scene| save(scene, "hums.yaml", &text),
            &["hums.yaml changed", SOUND],
        );
    }
    watching.ends().exits(0);
}

#[test]
fn files_and_folders_come_and_go() {
    let mut watching = watching(&["check", "--watch"], SOUND);
    let more = SCENARIO.replace("Stuck", "More");
    watching.on(
        |scene| drop(scene.write("library/scenarios/more/other.yaml", &more)),
        &["scenarios/more/other.yaml new", SOUND],
    );
    // The folder that is new is watched as well.
    watching.on(
        |scene| drop(scene.write("library/scenarios/more/other.yaml", &format!("{more}# one\n"))),
        &["scenarios/more/other.yaml changed", SOUND],
    );
    watching.on(
        |scene| fs::remove_dir_all(folder(scene).join("scenarios/more")).unwrap(),
        &["scenarios/more/other.yaml gone", SOUND],
    );
    watching.ends().exits(0);
}

#[test]
fn what_cannot_be_read_is_told_and_looked_at_again() {
    let mut watching = watching(&["check", "--watch"], SOUND);
    watching.on(
        |scene| fs::write(folder(scene).join("hums.yaml"), b"tree: \x9b\n").unwrap(),
        &["hums.yaml cannot be read", "not UTF-8"],
    );
    watching.on(
        |scene| drop(scene.write("library/hums.yaml", TREE)),
        &["hums.yaml changed", SOUND],
    );
    // Even the whole folder may be away for a while.
    watching.on(
        |scene| fs::rename(folder(scene), scene.temp.path().join("away")).unwrap(),
        &["there is no such folder"],
    );
    watching.on(
        |scene| fs::rename(scene.temp.path().join("away"), folder(scene)).unwrap(),
        &["can be read again", SOUND],
    );
    let other = TREE.replace("title: It hums", "title: It still hums");
    watching.on(
        |scene| drop(scene.write("library/hums.yaml", &other)),
        &["hums.yaml changed", SOUND],
    );
    watching.ends().exits(0);
}

#[test]
fn a_save_that_changes_nothing_runs_nothing() {
    let mut watching = watching(&["check", "--watch"], SOUND);
    save(&watching.scene, "hums.yaml", TREE);
    // Time for a needless run; where the machine is slower, the two saves are one and the test shows less.
    thread::sleep(Duration::from_millis(500));
    watching.on(
        |scene| save(scene, "hums.yaml", &format!("{TREE}# one\n")),
        &["hums.yaml changed", SOUND],
    );
    let said = watching.ends().exits(0);
    assert_eq!(said.out.matches(SOUND).count(), 2, "{}", said.out);
}

#[test]
fn scenarios_are_run_again_too() {
    let held = "1 scenario, 1 as expected, 0 not";
    let mut watching = watching(&["rehearse", "--watch"], held);
    let departs = SCENARIO.replace("verdict: stuck", "verdict: fine");
    watching.on(
        |scene| drop(scene.write("library/scenarios/stuck.yaml", &departs)),
        &[
            "scenarios/stuck.yaml changed",
            "expected the verdict `fine`",
            "0 as expected, 1 not",
        ],
    );
    let broken = TREE.replace("hum: stuck", "hum: stuk");
    watching.on(
        |scene| drop(scene.write("library/hums.yaml", &broken)),
        &[
            "hums.yaml changed",
            "the library has 1 error, so it is not walked",
        ],
    );
    watching.on(
        |scene| {
            scene.write("library/hums.yaml", TREE);
            scene.write("library/scenarios/stuck.yaml", SCENARIO);
        },
        &[held],
    );
    watching.ends().exits(0);
}

#[test]
fn for_another_program_the_results_stand_alone() {
    let mut watching = watching(&["check", "--watch", "--format", "json"], "\"findings\": []");
    watching.on(
        |scene| save(scene, "hums.yaml", &TREE.replace("hum: stuck", "hum: stuk")),
        &["unknown-name"],
    );
    let said = watching.ends().exits(0);
    let results = serde_json::Deserializer::from_str(&said.out).into_iter::<serde_json::Value>();
    let counts: Vec<usize> = results
        .map(|result| result.unwrap()["findings"].as_array().unwrap().len())
        .collect();
    assert_eq!(counts, [0, 1]);
    assert!(said.err.contains("hums.yaml changed"), "{}", said.err);
}

#[test]
fn every_signal_that_ends_a_program_ends_it_well() {
    for signal in [Signal::INT, Signal::TERM, Signal::HUP] {
        let watching = watching(&["check", "--watch"], SOUND);
        watching.is_sent(signal);
        let said = watching.spoken.ends().exits(0);
        assert_eq!(said.err, "", "{signal:?}");
    }
}

#[test]
fn nobody_who_reads_ends_it_too() {
    let scene = written();
    let mut command = program();
    command.args(["check", "--watch"]).arg(folder(&scene));
    command.stdout(Stdio::piped()).stderr(Stdio::null());
    let mut child = command.spawn().unwrap();
    drop(child.stdout.take());
    let status = until(|| child.try_wait().unwrap());
    if status.is_none() {
        child.kill().unwrap();
    }
    assert_eq!(status.and_then(|status| status.code()), Some(0));
}

#[test]
fn without_a_folder_there_is_nothing_to_watch() {
    for command in ["check", "rehearse"] {
        let said = run(&[command, "--watch"]).exits(2);
        assert!(
            said.out.is_empty() && said.err.contains("there is nothing to watch"),
            "{said:?}"
        );
        let said = run(&[command, "--watch", "/nowhere/trees"]).exits(2);
        assert!(said.out.is_empty() || !said.out.contains("no errors"), "{said:?}");
        assert!(said.err.contains("/nowhere/trees"), "{said:?}");
    }
}
