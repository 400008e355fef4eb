//! Whole calls through a pipe.

use std::fs;

use crate::common::call::{Answer, first_number_after, turns};
use crate::common::scene::{Scene, scene};
use crate::common::spoken::{Spoken, line};

fn walk(scene: &Scene) -> Spoken {
    Spoken::start(scene.command(&["walk", "no-heat", "--plain", "--technician", "t-07"]))
}

fn resume(scene: &Scene, id: &str) -> Spoken {
    Spoken::start(scene.command(&["resume", id, "--plain"]))
}

#[test]
fn a_call_goes_from_the_gate_to_a_verdict_the_put_backs_and_a_report() {
    let scene = scene();
    let mut call = walk(&scene);
    call.answers(turns());
    let said = call.ends().exits(0);
    let id = scene.id();
    assert!(
        said.err.contains(&format!("proofwalk report {id}")),
        "{}",
        said.err
    );
    let verified = scene.verify(&id).exits(0);
    assert!(verified.out.contains("whole, closed"), "{}", verified.out);
    let report = scene.run(&["report", &id]).exits(0);
    for words in ["Verdict, proven", "t-07", "holds:", "put back:"] {
        assert!(report.out.contains(words), "{words:?} is not in\n{}", report.out);
    }
    assert!(!report.out.contains("STILL OPEN"), "{}", report.out);
    let put_back = turns().iter().filter(|turn| turn.answer == Answer::Back).count();
    assert!(put_back > 2);
    assert_eq!(
        report.out.matches("put back:").count(),
        put_back,
        "{}",
        report.out
    );
    scene.run(&["resume", &id]).exits(2);
}

#[test]
fn all_answers_at_once_from_a_file_do_as_well() {
    let scene = scene();
    let lines: Vec<String> = turns().iter().map(|turn| line(&turn.answer)).collect();
    let mut call = walk(&scene);
    call.write(&(lines.join("\n") + "\n"));
    call.ends().exits(0);
    let verified = scene.verify(&scene.id()).exits(0);
    assert!(verified.out.contains("whole, closed"), "{}", verified.out);
}

#[test]
fn a_call_that_is_killed_stands_at_the_same_question_wherever_that_was() {
    let scene = scene();
    let turns = turns();
    let last_question = turns.iter().position(|turn| turn.answer == Answer::Back).unwrap();
    let stops = [0, 1, first_number_after(turns, 6), last_question, turns.len() - 1];
    let mut call = walk(&scene);
    let mut answered = 0;
    for stop in stops {
        call.answers(&turns[answered..stop]);
        answered = stop;
        call.is_asked(&turns[stop]);
        // Half an answer is none.
        call.write("2");
        call.child.kill().unwrap();
        call.child.wait().unwrap();
        let id = scene.id();
        scene.verify(&id).exits(0);
        call = resume(&scene, &id);
    }
    call.answers(&turns[answered..]);
    call.ends().exits(0);
    let report = scene.run(&["report", &scene.id()]).exits(0);
    assert!(report.out.contains("Verdict, proven"), "{}", report.out);
}

#[test]
fn the_end_of_the_input_leaves_the_call_open_and_says_how_to_go_on() {
    let scene = scene();
    let mut call = walk(&scene);
    call.answers(&turns()[..3]);
    call.is_asked(&turns()[3]);
    let said = call.ends().exits(0);
    let id = scene.id();
    assert!(
        said.err.contains(&format!("proofwalk resume {id}")),
        "{}",
        said.err
    );
    let call = resume(&scene, &id);
    call.is_asked(&turns()[3]);
    call.ends().exits(0);
}

#[test]
fn two_programs_do_not_walk_one_call() {
    let scene = scene();
    let call = walk(&scene);
    call.is_asked(&turns()[0]);
    let id = scene.id();
    let said = scene.run(&["resume", &id, "--plain"]).exits(2);
    assert!(
        said.err
            .contains(&format!("this session is open in process {}", call.child.id())),
        "{}",
        said.err
    );
    assert_eq!(said.out, "");
    // Reading it meanwhile is no trouble.
    scene.run(&["report", &id]).exits(0);
    scene.run(&["sessions"]).exits(0);
    call.ends().exits(0);
}

#[test]
fn what_is_no_answer_changes_nothing() {
    let scene = scene();
    let mut call = walk(&scene);
    let at = first_number_after(turns(), 0);
    call.answers(&turns()[..at]);
    call.is_asked(&turns()[at]);
    let before = fs::read(scene.file(&scene.id())).unwrap();
    for nonsense in [
        "warm",
        "1 2 3",
        "5 °F",
        "\u{1b}[2J\u{1b}]0;x\u{7}",
        &"9".repeat(5000),
        "nan",
        "-",
        "1e999",
    ] {
        call.say(nonsense);
        call.says(": ");
    }
    call.say("");
    call.is_asked(&turns()[at]);
    assert_eq!(fs::read(scene.file(&scene.id())).unwrap(), before);
    call.answers(&turns()[at..=at]);
    call.is_asked(&turns()[at + 1]);
    let said = call.ends().exits(0);
    assert!(
        !said.out.contains(['\u{1b}', '\u{7}']),
        "what was typed does not act on the terminal"
    );
}

#[test]
fn a_full_disk_keeps_the_question_and_loses_no_answer() {
    let scene = scene();
    scene.closed();
    let before = scene.ids();
    let mut bash = std::process::Command::new("bash");
    bash.args([
        "-c",
        "ulimit -f 3; exec \"$0\" walk no-heat --plain --sessions \"$1\"",
    ]);
    bash.arg(crate::common::scene::PROGRAM).arg(scene.sessions());
    let mut call = Spoken::start(bash);
    let mut stop = 0;
    for turn in turns() {
        call.is_asked(turn);
        call.say(&line(&turn.answer));
        call.says(": ");
        if call.has_said("NOT SAVED") {
            break;
        }
        stop += 1;
    }
    assert!(stop > 1 && stop < turns().len(), "{stop}");
    // The disk is as full as before: the answer is refused again, and the question stands.
    call.say(&line(&turns()[stop].answer));
    call.says("NOT SAVED");
    call.ends();
    let ids = scene.ids();
    let id = ids.iter().find(|id| !before.contains(id)).unwrap();
    scene.verify(id).exits(0);
    let mut call = resume(&scene, id);
    call.answers(&turns()[stop..]);
    call.ends().exits(0);
    assert!(scene.verify(id).exits(0).out.contains("whole, closed"));
}
