//! What stands is not asked again, until something voids it.

use proofwalk::face::came_out;
use proofwalk::walk::{Command, standing};

use crate::call::{Call, library, tree};

#[test]
fn a_fresh_value_is_shown_and_not_asked() {
    let mut call = Call::of(
        "  a: { observe: noise, go: b }\n  b: { observe: noise, choices: { hum: dirty, quiet: fine } }\n",
    );
    call.chooses("hum");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"dirty"}}}"#);
}

#[test]
fn a_step_that_is_passed_shows_what_stands_there_and_what_it_means() {
    let mut call = Call::of(
        "  a: { observe: noise, go: b }\n  b: { observe: smell, go: c }\n  c: { observe: noise, choices: { hum: { go: d, means: it turns }, quiet: fine } }\n  d: { observe: noise, go: fine }\n",
    );
    call.chooses("hum");
    call.chooses("nothing");
    let trail = standing(&call.library, &call.state).trail;
    assert_eq!(trail[0].stood, [], "the answer itself gave it");
    let stood: Vec<String> = trail[1]
        .stood
        .iter()
        .map(|value| came_out(value).to_string())
        .collect();
    assert_eq!(
        stood,
        ["Noise? Hum: it turns"],
        "said once, though two steps pass on it"
    );
}

#[test]
fn work_voids_what_was_taken_before_it() {
    let mut call = Call::of(
        "  a: { observe: noise, go: b }\n  b: { do: Oil it., voids: [noise], go: c }\n  c: { observe: noise, go: fine }\n",
    );
    call.chooses("hum");
    assert_eq!(call.wants(), "do b");
    let lines = call.does(Command::Done);
    assert_eq!(lines[1], r#"{"voided":{"data":["noise"],"why":"work"}}"#);
    assert_eq!(call.wants(), "noise");
}

#[test]
fn what_is_worked_out_asks_for_its_inputs_that_are_not_fresh() {
    let mut call = Call::of("  a: { measure: cold, go: b }\n  b: { measure: rise, go: fine }\n");
    call.types("70");
    assert_eq!(call.wants(), "warm");
    let lines = call.types("120");
    assert!(
        lines[1].starts_with(r#"{"measured":{"reading":"rise","value":50.0,"unit":"°F","margin":2.0"#),
        "{lines:?}"
    );
}

#[test]
fn why_a_result_is_to_be_trusted_less_is_recorded_with_it() {
    let mut call = Call::of("  a: { measure: rise, go: fine }\n");
    call.types("65");
    let lines = call.types("70");
    assert!(
        lines[1].contains(
            r#""warnings":["the supply is colder than the return; look whether the probes are swapped"#
        ),
        "{lines:?}"
    );
    let rise = call.library.datum("rise").unwrap();
    assert!(
        call.state
            .value(rise)
            .unwrap()
            .typed
            .starts_with("-5 °F (to be trusted less: the supply is colder"),
        "{:?}",
        call.state.value(rise)
    );
}

fn after_voiding(datum: &str) -> Call {
    let mut call = Call::of(&format!(
        "  a: {{ measure: rise, go: b }}\n  b: {{ do: Clean., voids: [{datum}], go: c }}\n  c: {{ measure: cold, go: d }}\n  d: {{ measure: rise, go: fine }}\n"
    ));
    call.types("120");
    call.types("70");
    call.does(Command::Done);
    call
}

#[test]
fn voiding_what_is_worked_out_voids_what_it_came_from() {
    let mut call = after_voiding("rise");
    assert_eq!(call.wants(), "cold");
    call.types("70");
    assert_eq!(call.wants(), "warm");
}

#[test]
fn voiding_an_input_voids_what_is_worked_out_and_no_other_input() {
    let mut call = after_voiding("warm");
    assert_eq!(call.wants(), "warm", "cold stands, and the rise does not");
    call.types("100");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"fine"}}}"#);
}

#[test]
fn a_retake_asks_although_the_value_stands() {
    let mut call = Call::of("  a: { observe: noise, go: b }\n  b: { observe: smell, go: fine }\n");
    call.chooses("hum");
    call.does(Command::Retake(call.datum("noise")));
    assert_eq!(call.wants(), "noise");
    call.chooses("quiet");
    assert_eq!(call.wants(), "smell");
}

#[test]
fn what_was_never_taken_is_not_taken_again() {
    let call = Call::of("  a: { observe: noise, go: fine }\n");
    let refusal = call.refuses(Command::Retake(call.datum("volts")));
    assert_eq!(
        refusal.message,
        "this has not been taken, so it cannot be taken again"
    );
}

#[test]
fn what_a_proof_lacks_is_worked_out_at_once_where_all_its_inputs_stand() {
    let proof = "parts:\n  motor: { title: Motor, proof: [ { volts: 20 V to 30 V } ] }\n  valve: { title: Valve, proof: [ { rise: above 20 °F } ] }\n";
    let steps = "  a: { measure: warm, go: b }\n  b: { measure: cold, go: valve_dead }\n";
    let files = [
        tree("t", "", steps),
        ("registry/parts.yaml".to_owned(), proof.to_owned()),
    ];
    let mut call = Call::open(library(&files));
    call.types("120 °F");
    call.types("70 °F");
    assert_eq!(call.wants(), "decide valve_dead");
    call.takes("rise");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"valve_dead"}}}"#);
}
