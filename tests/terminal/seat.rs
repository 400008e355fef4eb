//! A person at a terminal: reads the question, presses keys, sees that the answer was taken.

use std::fs;
use std::thread;
use std::time::Duration;

use crate::common::call::{Answer, Turn, squeezed};
use crate::common::scene::Scene;
use crate::common::wait::until;

pub const ENTER: &str = "\r";
pub const LEAVE: &str = "\u{11}";
pub const UP: &str = "\u{1b}[A";

/// What the screen says of keys that came sooner than anybody reads.
pub const TOO_EARLY: &str = "Keys that came together with the last answer were not taken.";

/// A person needs longer than this to read a question. The program takes no key that comes sooner.
const READING: Duration = Duration::from_millis(150);

/// Anything with a screen and keys.
pub trait Terminal {
    /// What stands on the screen, row by row.
    fn screen(&self) -> String;
    /// Presses keys.
    fn send(&mut self, keys: &str);
}

/// The words of the question's column in one line, without what stands beside it.
pub fn question(terminal: &impl Terminal) -> String {
    let screen = terminal.screen();
    let left: Vec<&str> = screen
        .lines()
        .map(|row| row.split('┊').next().unwrap_or_default())
        .collect();
    squeezed(&left.join("\n"))
}

/// Waits for some words in the question's column.
#[track_caller]
pub fn says(terminal: &impl Terminal, words: &str) {
    let said = until(|| question(terminal).contains(words).then_some(()));
    assert!(said.is_some(), "{words:?} is not said\n{}", terminal.screen());
}

/// Waits for some words anywhere.
#[track_caller]
pub fn shows(terminal: &impl Terminal, words: &str) {
    let shown = until(|| squeezed(&terminal.screen()).contains(words).then_some(()));
    assert!(
        shown.is_some(),
        "{words:?} is not on the screen\n{}",
        terminal.screen()
    );
}

/// Reads what is there.
pub fn pause() {
    thread::sleep(READING);
}

/// Sees that the call is closed, and leaves it.
#[track_caller]
pub fn leaves_closed(terminal: &mut impl Terminal) {
    shows(terminal, "The call is closed.");
    pause();
    terminal.send(ENTER);
}

#[track_caller]
pub fn is_asked(terminal: &impl Terminal, turn: &Turn) {
    let asked = until(|| question(terminal).contains(&turn.asked).then_some(()));
    assert!(
        asked.is_some(),
        "{:?} is not asked\n{}",
        turn.asked,
        terminal.screen()
    );
    pause();
}

/// Waits for each question and answers it.
#[track_caller]
pub fn answers(terminal: &mut impl Terminal, scene: &Scene, turns: &[Turn]) {
    for turn in turns {
        is_asked(terminal, turn);
        answer(terminal, scene, turn);
    }
}

#[track_caller]
fn answer(terminal: &mut impl Terminal, scene: &Scene, turn: &Turn) {
    let saved = || fs::metadata(scene.file(&scene.id())).map_or(0, |file| file.len());
    let before = saved();
    press(terminal, &turn.answer);
    let taken = until(|| {
        if saved() > before {
            return Some(());
        }
        // On a busy machine even an unhurried key can come too early; the screen says so then.
        if question(terminal).contains(TOO_EARLY) {
            pause();
            press(terminal, &turn.answer);
        }
        None
    });
    assert!(taken.is_some(), "{turn:?} is not taken\n{}", terminal.screen());
}

fn press(terminal: &mut impl Terminal, answer: &Answer) {
    let before = terminal.screen();
    match answer {
        Answer::Number(text) => {
            terminal.send(text);
            // What is typed stands on the screen before it counts.
            until(|| question(terminal).contains(&squeezed(text)).then_some(()));
        }
        Answer::Option(number) => {
            assert!(*number <= 9, "there is no key for option {number}");
            terminal.send(&number.to_string());
            until(|| (terminal.screen() != before).then_some(()));
        }
        Answer::Done | Answer::Back | Answer::Close => {}
    }
    terminal.send(ENTER);
}
