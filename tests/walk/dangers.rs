//! Dangers, offered from every step.

use proofwalk::library::Datum;
use proofwalk::walk::Command;

use crate::call::Call;

const STEPS: &str = "  g: { plate: gas, choices: { natural: a, propane: a } }\n  a: { measure: volts, go: b }\n  b: { observe: noise, go: fine }\n";

fn interrupted() -> Call {
    let mut call = Call::of(STEPS);
    call.chooses("natural");
    call.types("24 V");
    assert_eq!(call.wants(), "noise");
    call.does(Command::Danger(0));
    assert_eq!(call.wants(), "smell");
    call
}

#[test]
fn a_verdict_ends_the_call_at_once_and_put_backs_are_not_demanded() {
    let mut call = interrupted();
    call.chooses("gas_smell");
    assert_eq!(
        call.ended(),
        r#"{"ended":{"verdict":{"fault":"unsafe_here","danger":true}}}"#
    );
    assert_eq!(call.state.open.len(), 1, "the door is listed");
    assert_eq!(call.wants(), "close");
    call.does(Command::Close);
}

#[test]
fn a_danger_is_offered_while_things_are_put_back_and_a_return_leads_back_there() {
    let mut call = Call::of(STEPS);
    call.chooses("natural");
    call.types("24 V");
    call.chooses("quiet");
    let ended = call.ended();
    let putting_back = call.wants();
    call.does(Command::Danger(0));
    assert_eq!(call.wants(), "smell");
    // One danger may come on top of another.
    call.does(Command::Danger(0));
    call.chooses("nothing");
    assert_eq!(call.wants(), "smell");
    call.chooses("nothing");
    assert_eq!((call.ended(), call.wants()), (ended, putting_back));
    let value = call.state.value(call.datum("volts"));
    assert!(value.is_some(), "what was proven stays for the report");
    call.does(Command::Danger(0));
    call.chooses("gas_smell");
    assert_eq!(call.wants(), "close");
}

#[test]
fn a_return_goes_back_to_the_question_with_every_reading_and_sign_void() {
    let mut call = interrupted();
    call.chooses("nothing");
    assert_eq!(call.wants(), "noise");
    let left: Vec<Datum> = call.state.moment.values.keys().copied().collect();
    assert_eq!(left, [call.datum("gas")], "the plate stands");
}

#[test]
fn a_danger_comes_before_what_is_being_taken_again() {
    let mut call = Call::of(STEPS);
    call.chooses("natural");
    call.types("24 V");
    call.does(Command::Retake(call.datum("volts")));
    call.does(Command::Danger(0));
    assert_eq!(call.wants(), "smell");
    call.chooses("nothing");
    assert_eq!(call.wants(), "noise");
}

#[test]
fn a_danger_inside_a_danger_goes_back_there() {
    let mut call = interrupted();
    call.does(Command::Danger(0));
    call.chooses("nothing");
    assert_eq!(
        (call.wants().as_str(), call.state.moment.frames.len()),
        ("smell", 2)
    );
}
