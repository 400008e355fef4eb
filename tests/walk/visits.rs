//! Trees that visit trees, and the gate.

use crate::call::{Call, library, tree};

const INNER: &str =
    "  a: { observe: noise, choices: { hum: dirty, quiet: back } }\n  back: { return: good }\n";
const SAD: &str =
    "  a: { observe: smell, choices: { gas_smell: unsafe_here, nothing: back } }\n  back: { return: good }\n";

fn outer(steps: &str) -> Call {
    let inner = tree("inner", "outcomes: [good]\n", INNER);
    let sad = tree("sad", "outcomes: [good]\n", SAD);
    Call::open(library(&[tree("t", "", steps), inner, sad]))
}

#[test]
fn an_outcome_leads_on() {
    let mut call = outer("  v: { visit: inner, returns: { good: fine } }\n");
    call.chooses("quiet");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"fine"}}}"#);
}

#[test]
fn a_verdict_inside_ends_the_walk() {
    let mut call = outer("  v: { visit: inner, returns: { good: fine } }\n");
    call.chooses("hum");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"dirty"}}}"#);
}

#[test]
fn a_verdict_inside_is_noted_where_the_visit_says_so() {
    let mut call = outer(
        "  v: { visit: inner, returns: { good: fine }, on_verdict: next }\n  next: { observe: smell, go: fine }\n",
    );
    let lines = call.chooses("hum");
    assert!(
        lines.contains(&r#"{"stated":{"fault":"dirty","noted":true}}"#.to_owned()),
        "{lines:?}"
    );
    assert_eq!(call.wants(), "smell");
    assert_eq!(call.possible(), ["fine"]);
}

#[test]
fn the_nearest_visit_around_that_notes_verdicts_notes_it() {
    let middle = tree(
        "middle",
        "outcomes: [good]\n",
        "  v: { visit: inner, returns: { good: back } }\n  back: { return: good }\n",
    );
    let inner = tree("inner", "outcomes: [good]\n", INNER);
    let steps = "  v: { visit: middle, returns: { good: fine }, on_verdict: next }\n  next: { observe: smell, go: fine }\n";
    let mut call = Call::open(library(&[tree("t", "", steps), inner, middle]));
    assert_eq!(call.possible(), ["dirty", "fine"]);
    call.chooses("hum");
    assert_eq!(
        (call.wants().as_str(), call.state.moment.frames.len()),
        ("smell", 1)
    );
}

#[test]
fn a_shut_down_is_never_caught() {
    let mut call = outer(
        "  v: { visit: sad, returns: { good: fine }, on_verdict: next }\n  next: { observe: noise, go: fine }\n",
    );
    call.chooses("gas_smell");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"unsafe_here"}}}"#);
}

#[test]
fn a_return_in_the_first_tree_ends_the_call_without_a_verdict() {
    let mut call = Call::open(library(&[tree("t", "outcomes: [good]\n", INNER)]));
    call.chooses("quiet");
    assert_eq!(call.ended(), r#"{"ended":{"outcome":{"outcome":"good"}}}"#);
}

fn gated() -> Call {
    let about = (
        "library.yaml".to_owned(),
        "library: small\ngate: sad\n".to_owned(),
    );
    let steps = "  a: { observe: noise, choices: { hum: dirty, quiet: fine } }\n";
    Call::open(library(&[
        about,
        tree("sad", "outcomes: [good]\n", SAD),
        tree("t", "", steps),
    ]))
}

#[test]
fn the_gate_is_walked_first_and_its_return_goes_on() {
    let mut call = gated();
    assert_eq!(call.wants(), "smell");
    assert_eq!(call.possible(), ["unsafe_here", "dirty", "fine"]);
    let lines = call.chooses("nothing");
    assert_eq!(
        lines.last().unwrap(),
        r#"{"entered":{"tree":"t","role":"complaint"}}"#
    );
    assert_eq!(call.wants(), "noise");
}

#[test]
fn a_verdict_in_the_gate_ends_the_call() {
    let mut call = gated();
    call.chooses("gas_smell");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"unsafe_here"}}}"#);
}
