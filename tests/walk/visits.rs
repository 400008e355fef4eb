//! Trees that visit trees, and the gate.

use proofwalk::walk::{Command, standing, unchecked};

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

/// A library that says how work is proven.
fn proven_after_work(steps: &str) -> Call {
    let about = (
        "library.yaml".to_owned(),
        "library: small\nafter_work: prove-it\n".to_owned(),
    );
    Call::open(library(&[
        about,
        tree("prove-it", "outcomes: [good]\n", INNER),
        tree("t", "", steps),
    ]))
}

#[test]
fn who_has_work_to_do_is_told_how_to_prove_it_and_nobody_else_is() {
    let steps = "  a: { observe: smell, choices: { gas_smell: unsafe_here, nothing: b } }
  b: { observe: noise, choices: { hum: dirty, quiet: fine } }\n";
    let then = |choices: &[&str]| {
        let mut call = proven_after_work(steps);
        choices.iter().for_each(|choice| drop(call.chooses(choice)));
        let stated = standing(&call.library, &call.state).stated.unwrap();
        stated.then.map(|then| then.to_string())
    };
    let told = "Once that is done, walk prove-it: “C”";
    assert_eq!(then(&["nothing", "hum"]).as_deref(), Some(told));
    assert_eq!(then(&["nothing", "quiet"]), None, "nothing is done");
    assert_eq!(then(&["gas_smell"]), None, "it is shut down");
}

#[test]
fn the_job_report_tells_how_to_prove_it_in_every_form() {
    let steps = "  a: { observe: noise, choices: { hum: dirty, quiet: fine } }\n";
    let job = |choice: &str| {
        let mut call = proven_after_work(steps);
        call.chooses(choice);
        call.report()
    };
    let told = "Once that is done, walk prove-it: “C”";
    let job_done = job("hum");
    let text = job_done.text(None);
    assert!(text.contains(&format!("\n  - {told}\n")), "{text}");
    let page = job_done.html();
    // It follows what is to be done, in a paragraph of its own.
    let after = page.split_once("What to do: ").unwrap().1;
    assert!(after.contains(&format!("</strong></p><p>{told}.</p>")), "{after}");
    let json: serde_json::Value = serde_json::from_str(&job_done.json()).unwrap();
    assert_eq!(json["then"], told);
    let nothing = job("quiet");
    assert!(!nothing.html().contains("Once that is done"));
    assert_eq!(nothing.then, None);
}

/// A visit with three checks; the first may come to a verdict, and is asked for how bad it is.
const LONG: &str = "  a: { observe: noise, choices: { hum: how_bad, quiet: kind } }
  how_bad: { measure: amps, bands: { below 1 A: dirty, at least 1 A: fine } }
  kind: { plate: gas, choices: { natural: b, propane: w } }
  w: { measure: warm, go: b }
  b: { measure: volts, bands: { below 5 V: b_again, at least 5 V: c } }
  b_again: { measure: cold, go: dirty }
  c: { observe: smell, choices: { gas_smell: dirty, nothing: back } }
  back: { return: good }
";

/// What each visit that was cut short left out, by name.
#[track_caller]
fn left_out(call: &Call, expected: &[(&str, &[&str])]) {
    let cut_short = unchecked(&call.library, &call.state);
    let cut_short: Vec<(&str, Vec<&str>)> = (cut_short.iter())
        .map(|visit| {
            let checks = visit.checks.iter().map(|datum| call.library.name_of(*datum));
            (call.library.faults[visit.because].name.as_str(), checks.collect())
        })
        .collect();
    let expected: Vec<(&str, Vec<&str>)> = expected
        .iter()
        .map(|(fault, checks)| (*fault, checks.to_vec()))
        .collect();
    assert_eq!(cut_short, expected);
}

#[test]
fn what_a_noted_verdict_cut_short_is_known_until_it_is_looked_at() {
    let steps = "  v: { visit: long, returns: { good: next }, on_verdict: next }\n  next: { observe: smell, go: more }\n  more: { measure: cold, go: fine }\n";
    let mut call = Call::open(library(&[
        tree("t", "", steps),
        tree("long", "outcomes: [good]\n", LONG),
    ]));
    left_out(&call, &[]);
    call.chooses("hum");
    left_out(&call, &[]);
    call.types("0.5 A");
    // What only a further verdict lay behind is no check of the round; of the unknown gas both ways are.
    left_out(&call, &[("dirty", &["warm", "volts", "smell"])]);
    call.chooses("nothing");
    left_out(&call, &[("dirty", &["warm", "volts"])]);
    call.does(Command::Back(0));
    left_out(&call, &[]);
}

#[test]
fn what_stands_decides_what_a_visit_would_have_asked() {
    let steps = "  gas: { plate: gas, choices: { natural: v, propane: v } }\n  v: { visit: long, returns: { good: next }, on_verdict: next }\n  next: { observe: noise, go: fine }\n";
    let mut call = Call::open(library(&[
        tree("t", "", steps),
        tree("long", "outcomes: [good]\n", LONG),
    ]));
    call.chooses("natural");
    call.chooses("hum");
    call.types("0.5 A");
    left_out(&call, &[("dirty", &["volts", "smell"])]);
}

#[test]
fn a_visit_that_was_cut_short_deep_inside_is_told_up_to_where_the_walk_goes_on() {
    let middle = tree(
        "middle",
        "outcomes: [good]\n",
        "  v: { visit: inner, returns: { good: m } }\n  m: { measure: volts, go: back }\n  back: { return: good }\n",
    );
    let inner = tree("inner", "outcomes: [good]\n", INNER);
    let steps = "  v: { visit: middle, returns: { good: fine }, on_verdict: next }\n  next: { measure: amps, go: fine }\n";
    let mut call = Call::open(library(&[tree("t", "", steps), inner, middle]));
    call.chooses("hum");
    left_out(&call, &[("dirty", &["volts"])]);
}

#[test]
fn a_visit_that_is_made_again_after_the_fault_was_put_right_leaves_nothing_out() {
    let steps = "  v: { visit: long, returns: { good: next }, on_verdict: { go: put_right, at_most: 1, then: next } }\n  put_right: { do: Clean it., voids: [noise], go: v }\n  next: { measure: cold, go: fine }\n";
    let mut call = Call::open(library(&[
        tree("t", "", steps),
        tree("long", "outcomes: [good]\n", LONG),
    ]));
    call.chooses("hum");
    call.types("0.5 A");
    call.does(Command::Done);
    left_out(&call, &[("dirty", &["warm", "volts", "smell"])]);
    call.chooses("quiet");
    call.chooses("natural");
    call.types("12 V");
    call.chooses("nothing");
    assert_eq!(call.wants(), "cold");
    left_out(&call, &[]);
}
