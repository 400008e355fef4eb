//! Values that are asked for once more.

use proofwalk::walk::{Again, Command, ask};

use crate::call::Call;

const VOLTS: &str = "  a: { measure: volts, bands: { below 10 V: dirty, at least 10 V: fine } }\n";

#[test]
fn a_borderline_value_is_asked_once_more_and_the_second_stands() {
    let mut call = Call::of(VOLTS);
    let lines = call.types("10.2 V");
    assert_eq!(
        lines,
        [r#"{"doubted":{"datum":"volts","value":"10.2 V","why":"borderline","against":"10 V"}}"#]
    );
    assert_eq!(call.wants(), "volts");
    assert!(matches!(
        ask(&call.library, &call.state).again,
        Some(Again::Borderline { .. })
    ));
    let lines = call.types("9.8 V");
    assert!(lines[1].contains(r#""borderline":true"#), "{lines:?}");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"dirty"}}}"#);
}

#[test]
fn a_value_exactly_at_the_accuracy_is_borderline_and_one_beyond_it_is_not() {
    let mut call = Call::of(VOLTS);
    assert!(call.types("10.5 V")[0].starts_with(r#"{"doubted""#));
    let mut call = Call::of(VOLTS);
    assert!(!call.types("10.6 V")[0].starts_with(r#"{"doubted""#));
}

#[test]
fn an_implausible_value_is_asked_again_before_it_is_taken() {
    let mut call = Call::of(VOLTS);
    let lines = call.types("240 V");
    assert_eq!(
        lines,
        [r#"{"doubted":{"datum":"volts","value":"240 V","why":"implausible","against":"0 V to 30 V"}}"#]
    );
    assert!(matches!(
        ask(&call.library, &call.state).again,
        Some(Again::Implausible { .. })
    ));
    assert_eq!(call.state.open, [], "nothing was taken, so nothing was opened");
    call.types("240 V");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"fine"}}}"#);
}

#[test]
fn an_implausible_second_taking_of_a_borderline_value_is_asked_again() {
    let mut call = Call::of(VOLTS);
    call.types("10.2 V");
    assert!(call.types("98 V")[0].contains("implausible"));
    let lines = call.types("9.8 V");
    assert!(
        lines[1].contains(r#""borderline":true"#),
        "each doubt is raised once: {lines:?}"
    );
}

#[test]
fn a_doubt_about_a_retake_is_over_when_the_value_is_taken() {
    let mut call = Call::of("  a: { measure: volts, go: b }\n  b: { observe: noise, go: fine }\n");
    call.types("24");
    for _ in 0..2 {
        call.does(Command::Retake(call.datum("volts")));
        assert!(
            call.types("99 V")[0].contains("implausible"),
            "asked again at every taking"
        );
        call.types("99 V");
        assert_eq!(call.wants(), "noise");
        assert_eq!(ask(&call.library, &call.state).again, None);
    }
}

const RISE: &str = "  a: { measure: rise, bands: { below 50 °F: dirty, at least 50 °F: fine } }\n";

#[test]
fn a_borderline_result_asks_for_what_it_is_worked_out_from_once_more() {
    let mut call = Call::of(RISE);
    call.types("120");
    call.types("71");
    assert_eq!(call.wants(), "warm", "49 °F is within 2 °F of the bound");
    call.types("120");
    let lines = call.types("71");
    assert!(
        lines.iter().any(|line| line.contains(r#""borderline":true"#)),
        "{lines:?}"
    );
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"dirty"}}}"#);
}

#[test]
fn implausible_inputs_do_not_make_a_borderline_result_come_back_for_ever() {
    let mut call = Call::of(RISE);
    for _ in 0..2 {
        for value in ["250", "250", "201", "201"] {
            assert!(call.state.ended.is_none());
            call.types(value);
        }
    }
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"dirty"}}}"#);
}
