//! A call walked line by line through pipes, as a script or a screen reader would.

use std::io::{ErrorKind, Read, Write};
use std::process::{Child, ChildStdin, Command, Stdio};
use std::sync::{Arc, Mutex};
use std::thread;

use super::call::{Answer, Turn, squeezed};
use super::scene::Said;
use super::wait::until;

/// The program, its standard input, and what it has said so far.
pub struct Spoken {
    pub child: Child,
    input: Option<ChildStdin>,
    out: Arc<Mutex<String>>,
    err: Arc<Mutex<String>>,
    /// How much of it belongs to questions that have been answered.
    read: usize,
}

impl Spoken {
    pub fn start(mut command: Command) -> Self {
        command
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped());
        let mut child = command.spawn().unwrap();
        Self {
            input: child.stdin.take(),
            out: heard(child.stdout.take().unwrap()),
            err: heard(child.stderr.take().unwrap()),
            read: 0,
            child,
        }
    }

    /// What was said since the last answer.
    pub fn fresh(&self) -> String {
        self.out.lock().unwrap()[self.read..].to_owned()
    }

    /// Waits until the question is asked, to its prompt.
    #[track_caller]
    pub fn is_asked(&self, turn: &Turn) {
        let asked = until(|| {
            let fresh = self.fresh();
            (squeezed(&fresh).contains(&turn.asked) && fresh.ends_with(": ")).then_some(())
        });
        assert!(
            asked.is_some(),
            "{:?} is not asked: {}\n{}",
            turn.asked,
            self.fresh(),
            self.err.lock().unwrap()
        );
    }

    /// Forgets what was said so far.
    pub fn forget(&mut self) {
        self.read = self.out.lock().unwrap().len();
    }

    /// Waits for some words.
    #[track_caller]
    pub fn says(&self, words: &str) {
        let said = until(|| squeezed(&self.fresh()).contains(words).then_some(()));
        assert!(said.is_some(), "{words:?} is not said: {}", self.fresh());
    }

    pub fn has_said(&self, words: &str) -> bool {
        squeezed(&self.fresh()).contains(words)
    }

    pub fn say(&mut self, line: &str) {
        self.forget();
        self.write(&format!("{line}\n"));
    }

    /// Writes without an end of line.
    pub fn write(&mut self, text: &str) {
        match self.input.as_mut().unwrap().write_all(text.as_bytes()) {
            Err(error) if error.kind() == ErrorKind::BrokenPipe => {}
            written => written.unwrap(),
        }
    }

    /// Waits for each question and answers it.
    #[track_caller]
    pub fn answers(&mut self, turns: &[Turn]) {
        for turn in turns {
            self.is_asked(turn);
            self.say(&line(&turn.answer));
        }
    }

    /// Ends the input and waits for the program.
    pub fn ends(mut self) -> Said {
        drop(self.input.take());
        let status = until(|| self.child.try_wait().unwrap()).expect("the program ends");
        // The readers end with their pipes, just after the program.
        let whole = |text: &Arc<Mutex<String>>| {
            until(|| (Arc::strong_count(text) == 1).then(|| text.lock().unwrap().clone()))
        };
        Said {
            code: status.code(),
            out: whole(&self.out).expect("standard output ends"),
            err: whole(&self.err).expect("standard error ends"),
        }
    }
}

impl Drop for Spoken {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn heard(mut stream: impl Read + Send + 'static) -> Arc<Mutex<String>> {
    let text = Arc::new(Mutex::new(String::new()));
    let into = Arc::clone(&text);
    thread::spawn(move || {
        let mut bytes = [0; 4096];
        let mut rest = Vec::new();
        while let Ok(count @ 1..) = stream.read(&mut bytes) {
            rest.extend_from_slice(&bytes[..count]);
            let whole = match std::str::from_utf8(&rest) {
                Ok(_) => rest.len(),
                Err(error) => error.valid_up_to(),
            };
            let after = rest.split_off(whole);
            into.lock().unwrap().push_str(&String::from_utf8(rest).unwrap());
            rest = after;
        }
    });
    text
}

/// An answer in the words of the line face.
pub fn line(answer: &Answer) -> String {
    match answer {
        Answer::Number(text) => text.clone(),
        Answer::Option(number) => number.to_string(),
        Answer::Done | Answer::Back => "done".to_owned(),
        Answer::Close => "close".to_owned(),
    }
}
