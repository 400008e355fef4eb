//! A process that is told to end, and a terminal that goes away.

use std::time::{Duration, Instant};

use rustix::process::{Pid, Signal, kill_process};

use crate::common::call::{first_number_after, turns};
use crate::common::scene::{Scene, scene};
use crate::pty::{Pty, proofwalk};
use crate::seat::{Terminal, answers, is_asked, shows};

/// What a process has that is told to end; ten times what it needs, since the machine may be busy.
const SOON: Duration = Duration::from_secs(2);

fn half_typed(scene: &Scene) -> (Pty, usize) {
    let at = first_number_after(turns(), 4);
    let mut terminal = proofwalk(scene, &["walk", "no-heat"], 80, 24);
    answers(&mut terminal, scene, &turns()[..at]);
    is_asked(&terminal, &turns()[at]);
    terminal.send("2.");
    shows(&terminal, "2.");
    (terminal, at)
}

#[track_caller]
fn stands_at(scene: &Scene, at: usize) {
    let id = scene.id();
    let verified = scene.verify(&id).exits(0);
    assert!(verified.out.contains("whole, open"), "{}", verified.out);
    let terminal = proofwalk(scene, &["resume"], 80, 24);
    is_asked(&terminal, &turns()[at]);
}

#[test]
fn a_signal_ends_the_program_at_once_and_leaves_the_call_to_be_taken_up() {
    for signal in [Signal::TERM, Signal::HUP, Signal::INT] {
        let scene = scene();
        let (mut terminal, at) = half_typed(&scene);
        let pid = terminal.child.process_id().unwrap();
        let start = Instant::now();
        kill_process(Pid::from_raw(pid as i32).unwrap(), signal).unwrap();
        terminal.ends();
        assert!(start.elapsed() < SOON, "{signal:?}: {:?}", start.elapsed());
        assert!(terminal.is_given_back(), "{signal:?}");
        stands_at(&scene, at);
    }
}

#[test]
fn the_first_screen_ends_on_a_signal_too() {
    let scene = scene();
    let mut terminal = proofwalk(&scene, &[], 80, 24);
    shows(&terminal, "1 No heat");
    let pid = Pid::from_raw(terminal.child.process_id().unwrap() as i32).unwrap();
    kill_process(pid, Signal::TERM).unwrap();
    terminal.ends();
    assert!(terminal.is_given_back());
}

#[test]
fn lines_in_a_terminal_end_on_a_signal_too() {
    for signal in [Signal::TERM, Signal::HUP, Signal::INT] {
        let scene = scene();
        let mut terminal = proofwalk(&scene, &["walk", "no-heat", "--plain"], 80, 24);
        shows(&terminal, "Answer (");
        let pid = Pid::from_raw(terminal.child.process_id().unwrap() as i32).unwrap();
        kill_process(pid, signal).unwrap();
        terminal.ends();
        stands_at(&scene, 0);
    }
}
