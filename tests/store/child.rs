//! What tests run as a process of its own: this test binary, asked for one of the ignored tests below.

use std::env;
use std::io::{self, BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Child, ChildStdout, Command, Stdio};

use proofwalk::store::{SessionFolder, ignore_file_size_signal};
use rustix::process::{Resource, Rlimit, getrlimit, setrlimit};

use crate::support::{id, record};

const FOLDER: &str = "PROOFWALK_TEST_SESSIONS";

/// Runs one of the tests below on a session folder.
pub fn command(test: &str, folder: &Path) -> Command {
    let mut command = Command::new(env::current_exe().unwrap());
    command
        .args(["--exact", &format!("child::{test}"), "--ignored", "--nocapture"])
        .env(FOLDER, folder)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped());
    command
}

pub fn start(test: &str, folder: &Path) -> (Child, BufReader<ChildStdout>) {
    let mut child = command(test, folder).spawn().unwrap();
    let output = BufReader::new(child.stdout.take().unwrap());
    (child, output)
}

/// Waits for the next line of the child that begins with `word`, and gives the rest of it.
pub fn wait_for(output: &mut impl BufRead, word: &str) -> Option<String> {
    let mut lines = output.lines().map_while(Result::ok);
    lines.find_map(|line| line.strip_prefix(word).map(|rest| rest.trim().to_owned()))
}

fn say(text: &str) {
    // The test runner may have left a line open.
    let mut output = io::stdout();
    writeln!(output, "\n{text}").unwrap();
    output.flush().unwrap();
}

/// The folder that the test which started this process wants used; `None` where somebody else started it.
fn folder() -> Option<SessionFolder> {
    env::var_os(FOLDER).map(|path| SessionFolder::open(path).unwrap())
}

#[test]
#[ignore = "run by other tests as a process of its own"]
fn takes_up_and_waits() {
    let Some(folder) = folder() else { return };
    let _taken_up = folder.take_up(&id("s")).unwrap();
    say("holding");
    io::stdin().lines().for_each(drop);
}

#[test]
#[ignore = "run by other tests as a process of its own"]
fn appends_until_killed() {
    let Some(folder) = folder() else { return };
    let mut journal = folder.take_up(&id("s")).unwrap().journal;
    loop {
        let number = journal.len();
        record(&mut journal, number).unwrap();
        say(&format!("saved {number}"));
    }
}

#[test]
#[ignore = "run by other tests as a process of its own"]
fn appends_beyond_a_size_limit() {
    let Some(folder) = folder() else { return };
    ignore_file_size_signal().unwrap();
    let mut journal = folder.take_up(&id("s")).unwrap().journal;
    let limit = getrlimit(Resource::Fsize);
    let lower = Rlimit {
        current: Some(1000),
        ..limit
    };
    setrlimit(Resource::Fsize, lower).unwrap();
    let error = loop {
        let number = journal.len();
        if let Err(error) = record(&mut journal, number) {
            break error;
        }
    };
    say(&format!(
        "refused {} {} {error}",
        journal.len(),
        error.exit_code()
    ));
    setrlimit(Resource::Fsize, limit).unwrap();
    let number = journal.len();
    record(&mut journal, number).unwrap();
    say("saved after all");
}

#[test]
#[ignore = "run by other tests as a process of its own"]
fn makes_a_session() {
    let Some(path) = env::var_os(FOLDER) else { return };
    let made = SessionFolder::open(path).and_then(|folder| folder.create(&id("new")));
    match made {
        Ok(_) => say("made"),
        Err(error) => say(&format!("refused {} {error}", error.exit_code())),
    }
}
