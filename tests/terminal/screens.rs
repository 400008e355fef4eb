//! From the first screen into a call, out of it and back.

use crate::common::call::{first_number_after, turns};
use crate::common::scene::scene;
use crate::common::wait::until;
use crate::pty::proofwalk;
use crate::seat::{
    ENTER, LEAVE, TOO_EARLY, Terminal, UP, answers, is_asked, leaves_closed, pause, says, shows,
};

#[test]
fn a_call_is_started_left_and_taken_up_from_the_first_screen_at_any_size() {
    for (columns, rows) in [(80, 24), (40, 20), (120, 40)] {
        let scene = scene();
        let mut terminal = proofwalk(&scene, &[], columns, rows);
        shows(&terminal, "1 No heat");
        shows(&terminal, "danger");
        terminal.send("1");
        terminal.send(ENTER);
        answers(&mut terminal, &scene, &turns()[..2]);
        is_asked(&terminal, &turns()[2]);
        terminal.send(LEAVE);
        shows(&terminal, "Leave the call for later?");
        terminal.send(ENTER);
        assert_eq!(terminal.ends(), 0);
        let id = scene.id();
        // A narrow screen breaks the id in two.
        let told = until(|| terminal.screen().replace('\n', "").contains(&id).then_some(()));
        assert!(told.is_some(), "{}", terminal.screen());
        assert!(terminal.is_given_back(), "{}", terminal.screen());
        scene.verify(&id).exits(0);

        let mut terminal = proofwalk(&scene, &[], columns, rows);
        shows(&terminal, "1 No heat");
        // The calls not finished come last.
        terminal.send(UP);
        terminal.send(ENTER);
        is_asked(&terminal, &turns()[2]);
        terminal.send(LEAVE);
        shows(&terminal, "Leave the call for later?");
        terminal.send(LEAVE);
        assert_eq!(terminal.ends(), 0);
        assert_eq!(scene.ids(), [id]);
    }
}

#[test]
fn the_first_screen_is_left_without_a_trace() {
    let scene = scene();
    let mut terminal = proofwalk(&scene, &[], 80, 24);
    shows(&terminal, "1 No heat");
    terminal.send(LEAVE);
    assert_eq!(terminal.ends(), 0);
    assert!(terminal.is_given_back());
    assert_eq!(scene.ids(), Vec::<String>::new());
}

#[test]
fn a_call_goes_to_its_end_on_a_narrow_screen() {
    let scene = scene();
    let mut terminal = proofwalk(&scene, &["walk", "no-heat"], 40, 20);
    answers(&mut terminal, &scene, turns());
    leaves_closed(&mut terminal);
    assert_eq!(terminal.ends(), 0);
    assert!(scene.verify(&scene.id()).exits(0).out.contains("whole, closed"));
}

#[test]
fn a_danger_is_two_keys_away_and_leads_out() {
    let scene = scene();
    let mut terminal = proofwalk(&scene, &["walk", "no-heat"], 80, 24);
    is_asked(&terminal, &turns()[0]);
    terminal.send("\u{4}");
    shows(&terminal, "I smell gas");
    terminal.send("1");
    terminal.send(ENTER);
    let text = until(|| {
        let text = std::fs::read_to_string(scene.file(&scene.id())).unwrap();
        text.contains(r#""tree":"gas-smell""#).then_some(text)
    });
    assert!(text.is_some(), "{}", terminal.screen());
}

#[test]
fn pasted_lines_are_not_taken_for_many_answers() {
    let scene = scene();
    let at = first_number_after(turns(), 0);
    let mut terminal = proofwalk(&scene, &["walk", "no-heat"], 80, 24);
    answers(&mut terminal, &scene, &turns()[..at]);
    is_asked(&terminal, &turns()[at]);
    let before = std::fs::read(scene.file(&scene.id())).unwrap();
    terminal.send("\u{1b}[200~0\r1\r1\r1\r\u{1b}[201~");
    says(&terminal, "What was pasted stands in one line.");
    pause();
    terminal.send(LEAVE);
    shows(&terminal, "Leave the call for later?");
    assert_eq!(
        std::fs::read(scene.file(&scene.id())).unwrap(),
        before,
        "nothing is answered by a paste"
    );
    // Where the terminal marks no pastes, at most the question that stood there is answered.
    terminal.send("\u{1b}");
    is_asked(&terminal, &turns()[at]);
    terminal.send("\u{15}");
    pause();
    terminal.send("0\r1\r1\r1\r");
    says(&terminal, TOO_EARLY);
    is_asked(&terminal, &turns()[at + 1]);
}
