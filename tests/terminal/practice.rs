//! Practice on the screen.

use crate::common::scene::scene;
use crate::pty::proofwalk;
use crate::seat::{ENTER, LEAVE, Terminal, leaves_closed, pause, says, shows};

const DOWN: &str = "\u{1b}[B";

/// Waits for some words, and does what comes next.
#[track_caller]
fn at(terminal: &mut impl Terminal, words: &str, keys: &[&str]) {
    says(terminal, words);
    pause();
    for key in keys {
        terminal.send(key);
        pause();
    }
}

#[test]
fn a_fault_is_found_by_its_words_named_and_judged_at_any_size() {
    for (columns, rows) in [(80, 24), (40, 20), (120, 40)] {
        let scene = scene();
        let how = ["practice", "--seed", "9"];
        let mut terminal = proofwalk(&scene, &how, columns, rows);
        at(&mut terminal, "Practice: a simulated furnace", &[ENTER]);
        at(&mut terminal, "You stand before the house", &["2", ENTER]);
        at(
            &mut terminal,
            "What do you look at or measure next?",
            &["se", "condary", " load off"],
        );
        at(&mut terminal, "1 found", &[ENTER]);
        at(
            &mut terminal,
            "Measure: Voltage of the transformer's secondary",
            &[ENTER],
        );
        at(
            &mut terminal,
            "What do you look at or measure next?",
            &["transformer dead"],
        );
        at(&mut terminal, "1 found", &[ENTER]);
        says(&terminal, "NOT PROVEN: Transformer dead or low");
        terminal.send(LEAVE);
        at(&mut terminal, "Leave the call for later?", &[ENTER]);
        assert_eq!(terminal.ends(), 0);

        let id = scene.id();
        let mut terminal = proofwalk(&scene, &["resume", &id], columns, rows);
        at(&mut terminal, "Practice: a simulated furnace", &[ENTER]);
        at(
            &mut terminal,
            "What do you look at or measure next?",
            &["transformer dead"],
        );
        at(&mut terminal, "1 found", &[ENTER]);
        // From the end of the list: back to it, and before that the own verdict.
        at(
            &mut terminal,
            "NOT PROVEN: Transformer dead or low",
            &["\u{1b}[A", "\u{1b}[A", ENTER],
        );
        for _ in 0..4 {
            pause();
            if terminal.screen().contains("Everything is answered") {
                break;
            }
            terminal.send(ENTER);
        }
        at(&mut terminal, "Everything is answered", &[ENTER]);
        at(&mut terminal, "What was wrong", &[DOWN, ENTER]);
        leaves_closed(&mut terminal);
        shows(&terminal, "IN SHORT The right name, but not proven");
        assert_eq!(terminal.ends(), 0);
        assert!(scene.verify(&id).exits(0).out.contains("whole, closed"));
    }
}
