//! Terminals that change their size, or have none to speak of.

use crate::common::call::{first_number_after, turns};
use crate::common::scene::scene;
use crate::pty::proofwalk;
use crate::seat::{LEAVE, Terminal, answers, is_asked, shows};

#[test]
fn a_storm_of_sizes_leaves_the_question_and_what_was_typed() {
    let scene = scene();
    let at = first_number_after(turns(), 0);
    let mut terminal = proofwalk(&scene, &["walk", "no-heat"], 80, 24);
    answers(&mut terminal, &scene, &turns()[..at]);
    is_asked(&terminal, &turns()[at]);
    terminal.send("12.5");
    shows(&terminal, "12.5");
    let sizes = [
        (1, 1),
        (10, 3),
        (200, 60),
        (0, 0),
        (40, 20),
        (65535, 65535),
        (2, 100),
        (300, 2),
        (80, 24),
    ];
    for round in 0..60 {
        for (columns, rows) in sizes {
            terminal.resize(columns, rows);
            // The program must get to see some of them.
            if round % 10 == 0 {
                std::thread::sleep(std::time::Duration::from_millis(5));
            }
        }
    }
    for (columns, rows) in [(120, 40), (40, 20), (80, 24)] {
        terminal.show(columns, rows);
        is_asked(&terminal, &turns()[at]);
        shows(&terminal, "12.5");
    }
    terminal.show(10, 3);
    shows(&terminal, "too small");
    terminal.show(80, 24);
    is_asked(&terminal, &turns()[at]);
    scene.verify(&scene.id()).exits(0);
}

#[test]
fn it_starts_in_a_terminal_that_is_too_small_and_can_be_left() {
    let scene = scene();
    for (columns, rows) in [(1, 1), (10, 3)] {
        let mut terminal = proofwalk(&scene, &[], columns, rows);
        shows(&terminal, "t");
        terminal.send(LEAVE);
        assert_eq!(terminal.ends(), 0, "{columns} by {rows}");
    }
}
