//! Answers that are none, and answers in other words.

use proofwalk::walk::{Command, Question, Way, ask};

use crate::call::Call;

const VOLTS: &str = "  a: { measure: volts, bands: { below 10 V: dirty, at least 10 V: fine } }\n";

#[test]
fn a_bare_number_is_in_the_readings_own_unit() {
    let mut call = Call::of(VOLTS);
    let lines = call.types("24");
    assert!(
        lines[1].contains(r#""typed":"24 V","value":24.0,"unit":"V""#)
            || lines[1].contains(r#""typed":"24","value":24.0"#),
        "{lines:?}"
    );
}

#[test]
fn another_unit_of_the_dimension_is_converted() {
    let mut call = Call::of(VOLTS);
    let lines = call.types("4500 mV");
    assert!(
        lines[1].contains(r#""typed":"4500 mV","value":4.5,"unit":"V""#),
        "{lines:?}"
    );
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"dirty"}}}"#);
}

#[test]
fn nonsense_and_other_dimensions_are_refused_and_change_nothing() {
    let call = Call::of(VOLTS);
    for text in [
        "",
        "   ",
        "many",
        "24 ohm",
        "1e999",
        "nan",
        "inf V",
        "24 V 3",
        "24 \u{1b}[2J",
    ] {
        let refusal = call.refuses(Command::Type(text.to_owned()));
        assert!(!refusal.message.contains('\u{1b}'), "{text:?}");
    }
    assert_eq!(call.wants(), "volts");
}

#[test]
fn an_answer_of_the_wrong_kind_is_refused() {
    let call = Call::of(VOLTS);
    for command in [
        Command::Choose(0),
        Command::Done,
        Command::Unsure,
        Command::Close,
        Command::Insist("I know".into()),
    ] {
        call.refuses(command);
    }
    let call = Call::of("  a: { observe: noise, go: fine }\n");
    for command in [
        Command::Choose(2),
        Command::Type("24".into()),
        Command::Back(0),
        Command::Danger(9),
    ] {
        call.refuses(command);
    }
}

#[test]
fn without_a_key_what_cannot_be_taken_ends_the_walk_unproven_and_is_named() {
    let mut call = Call::of(VOLTS);
    assert_eq!(ask(&call.library, &call.state).unable, Some(Way::EndsUnproven));
    call.does(Command::Unable("no meter".to_owned()));
    assert_eq!(
        call.ended(),
        r#"{"ended":{"unproven":{"why":"this could not be taken: Volts (no meter)"}}}"#
    );
}

#[test]
fn with_a_key_what_cannot_be_taken_goes_on_there() {
    let mut call = Call::of(
        "  a: { measure: volts, go: fine, unable: b }\n  b: { observe: noise, go: fine, unsure: dirty }\n",
    );
    assert_eq!(ask(&call.library, &call.state).unable, Some(Way::GoesOn));
    call.does(Command::Unable(String::new()));
    assert_eq!(call.wants(), "noise");
    assert_eq!(ask(&call.library, &call.state).unsure, Some(Way::GoesOn));
    call.does(Command::Unsure);
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"dirty"}}}"#);
}

#[test]
fn without_a_key_unsure_ends_the_walk_unproven() {
    let mut call = Call::of("  a: { observe: noise, go: fine }\n");
    call.does(Command::Unsure);
    assert_eq!(
        call.ended(),
        r#"{"ended":{"unproven":{"why":"the technician could not tell: Noise?"}}}"#
    );
}

#[test]
fn a_walk_can_be_stopped_in_writing() {
    let mut call = Call::of(VOLTS);
    call.refuses(Command::Stop(" ".to_owned()));
    call.does(Command::Stop("The owner came home".to_owned()));
    assert_eq!(
        call.ended(),
        r#"{"ended":{"unproven":{"why":"The owner came home"}}}"#
    );
    call.refuses(Command::Type("24".to_owned()));
}

#[test]
fn every_band_of_the_question_is_shown_lowest_first() {
    let call = Call::of("  a: { measure: volts, bands: { at least 10 V: fine, below 10 V: dirty } }\n");
    let Question::Number { bands, .. } = ask(&call.library, &call.state).question else {
        unreachable!("a number is asked for");
    };
    let words: Vec<String> = bands.iter().map(|band| band.words.to_string()).collect();
    assert_eq!(words, ["below 10 V", "at least 10 V"]);
}
