//! What was opened is put back, or left open in writing.

use proofwalk::walk::Command;

use crate::call::Call;

const OPENS: &str = "  a: { do: Open the tap., leaves: [tap], go: b }\n  b: { measure: volts, go: c }\n  c: { observe: noise, choices: { hum: d, quiet: fine } }\n  d: { do: Refit the tap., restores: [tap], go: fine }\n";

fn until_noise() -> Call {
    let mut call = Call::of(OPENS);
    call.does(Command::Done);
    call.types("24 V");
    call
}

fn restore(call: &Call, name: &str) -> proofwalk::library::Id<proofwalk::library::Restore> {
    call.library.restores.find(name).unwrap()
}

#[test]
fn an_answer_opens_what_taking_it_leaves_open() {
    let call = until_noise();
    assert_eq!(call.state.open, [restore(&call, "tap"), restore(&call, "door")]);
}

#[test]
fn what_is_open_is_asked_for_one_by_one_the_last_opened_first_before_the_call_closes() {
    let mut call = until_noise();
    call.chooses("quiet");
    assert_eq!(call.wants(), "put back door");
    call.refuses(Command::Close);
    call.refuses(Command::LeaveOpen(restore(&call, "door"), " ".to_owned()));
    call.does(Command::LeaveOpen(
        restore(&call, "door"),
        "The latch is broken".to_owned(),
    ));
    assert_eq!(call.wants(), "put back tap");
    call.does(Command::PutBack(restore(&call, "tap")));
    assert_eq!(call.wants(), "close");
    call.does(Command::Close);
    assert_eq!(call.wants(), "nothing");
    call.refuses(Command::Note("Too late".to_owned()));
}

#[test]
fn a_step_may_put_back_what_was_opened() {
    let mut call = until_noise();
    call.chooses("hum");
    call.does(Command::Done);
    assert_eq!(call.wants(), "put back door");
}

#[test]
fn nothing_is_left_open_while_the_walk_goes_on() {
    let call = until_noise();
    call.refuses(Command::LeaveOpen(restore(&call, "door"), "Why not".to_owned()));
}

#[test]
fn what_is_not_open_is_not_put_back() {
    let call = Call::of(OPENS);
    call.refuses(Command::PutBack(restore(&call, "door")));
}

#[test]
fn a_log_cut_after_an_answer_has_what_the_answer_opened() {
    let mut call = Call::of("  a: { measure: volts, go: fine }\n");
    let lines = call.types("24 V");
    assert_eq!(lines[0], r#"{"left_open":{"restores":["door"]}}"#);
    assert!(lines[1].starts_with(r#"{"measured""#));
}
