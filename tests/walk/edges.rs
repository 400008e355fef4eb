//! Bounded edges, and the findings that edges leave.

use proofwalk::walk::Command;

use crate::call::{Call, library, tree};

const LOOP: &str = "
  a:
    observe: noise
    choices:
      quiet: fine
      hum: { go: b, at_most: 2, then: dirty, finding: { severity: advise, text: It hums } }
  b: { do: Oil it., voids: [noise], go: a }
";

#[test]
fn a_bounded_edge_is_taken_so_often_and_then_no_more() {
    let mut call = Call::of(LOOP);
    for _ in 0..2 {
        call.chooses("hum");
        assert_eq!(call.wants(), "do b");
        call.does(Command::Done);
    }
    call.chooses("hum");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"dirty"}}}"#);
}

#[test]
fn a_finding_stands_once_an_edge() {
    let mut call = Call::of(LOOP);
    call.chooses("hum");
    call.does(Command::Done);
    call.chooses("hum");
    assert_eq!(call.findings(), ["It hums"]);
}

#[test]
fn a_tree_that_is_entered_again_counts_from_nothing() {
    let inner = "  a: { observe: noise, choices: { quiet: back, hum: { go: b, at_most: 1, then: back } } }\n  b: { do: Oil., voids: [noise], go: a }\n  back: { return: done }\n";
    let outer = "  one: { visit: inner, returns: { done: between } }\n  between: { do: Wait., voids: [noise], go: two }\n  two: { visit: inner, returns: { done: fine } }\n";
    let mut call = Call::open(library(&[
        tree("t", "", outer),
        tree("inner", "outcomes: [done]\n", inner),
    ]));
    for step in ["do b", "do between", "do b"] {
        // The second hum in the first visit takes `then`.
        if call.wants() == "noise" {
            call.chooses("hum");
        }
        assert_eq!(call.wants(), step);
        call.does(Command::Done);
        if step == "do b" {
            assert_eq!(call.wants(), "noise");
            call.chooses("hum");
        }
    }
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"fine"}}}"#);
}
