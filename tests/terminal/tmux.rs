//! A call in tmux.

use std::path::PathBuf;
use std::process::{Command, Output};

use crate::common::call::{first_number_after, turns};
use crate::common::scene::{PROGRAM, Scene, scene};
use crate::pty::proofwalk;
use crate::seat::{ENTER, Terminal, answers, is_asked, leaves_closed, shows};
use crate::tools::tool;

/// A tmux server of its own with one window.
struct Tmux {
    socket: PathBuf,
}

impl Tmux {
    fn start(scene: &Scene, line: &str) -> Self {
        let tmux = Self {
            socket: scene.temp.path().join("tmux.socket"),
        };
        let size = ["-x", "80", "-y", "24"];
        tmux.run(
            &[
                &["-u", "-f", "/dev/null", "new-session", "-d"][..],
                &size,
                &[line],
            ]
            .concat(),
        );
        tmux
    }

    fn run(&self, arguments: &[&str]) -> Output {
        let mut command = Command::new("tmux");
        command
            .env("LANG", "C.UTF-8")
            .env_remove("TMUX")
            .arg("-S")
            .arg(&self.socket)
            .args(arguments);
        let output = command.output().unwrap();
        assert!(output.status.success(), "{arguments:?}: {output:?}");
        output
    }
}

impl Terminal for Tmux {
    fn screen(&self) -> String {
        String::from_utf8(self.run(&["capture-pane", "-p"]).stdout).unwrap()
    }

    fn send(&mut self, keys: &str) {
        let bytes: Vec<String> = keys.bytes().map(|byte| format!("{byte:02x}")).collect();
        let bytes: Vec<&str> = bytes.iter().map(String::as_str).collect();
        self.run(&[&["send-keys", "-H"], &bytes[..]].concat());
    }
}

impl Drop for Tmux {
    fn drop(&mut self) {
        let mut command = Command::new("tmux");
        let _ = command.arg("-S").arg(&self.socket).arg("kill-server").output();
    }
}

#[test]
fn a_call_goes_from_the_first_screen_to_a_verdict_and_a_report() {
    if tool("tmux").is_none() {
        return;
    }
    let scene = scene();
    let sessions = scene.sessions();
    let line = format!(
        "{PROGRAM} --sessions {}; echo \"it ended with $?\"; exec cat",
        sessions.display()
    );
    let mut tmux = Tmux::start(&scene, &line);
    shows(&tmux, "1 No heat");
    tmux.send("1");
    tmux.send(ENTER);
    answers(&mut tmux, &scene, turns());
    leaves_closed(&mut tmux);
    shows(&tmux, "it ended with 0");
    let id = scene.id();
    assert!(scene.verify(&id).exits(0).out.contains("whole, closed"));
    let report = scene.run(&["report", &id]).exits(0);
    assert!(
        report.out.contains("Verdict, proven") && !report.out.contains("STILL OPEN"),
        "{}",
        report.out
    );
}

#[test]
fn a_window_that_is_closed_ends_the_program_and_leaves_the_call_to_be_taken_up() {
    if tool("tmux").is_none() {
        return;
    }
    let scene = scene();
    let at = first_number_after(turns(), 4);
    let line = format!(
        "exec {PROGRAM} walk no-heat --sessions {}",
        scene.sessions().display()
    );
    let mut tmux = Tmux::start(&scene, &line);
    answers(&mut tmux, &scene, &turns()[..at]);
    is_asked(&tmux, &turns()[at]);
    tmux.send("2.");
    shows(&tmux, "2.");
    drop(tmux);
    let id = scene.id();
    assert!(scene.is_let_go(&id), "the program goes on");
    assert!(scene.verify(&id).exits(0).out.contains("whole, open"));
    let terminal = proofwalk(&scene, &["resume"], 80, 24);
    is_asked(&terminal, &turns()[at]);
}
