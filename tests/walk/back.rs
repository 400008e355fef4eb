//! Going back.

use proofwalk::walk::Command;

use crate::call::Call;

const STEPS: &str = "
  a: { observe: noise, choices: { hum: { go: b, at_most: 1, then: fine, finding: { severity: note, text: Hums } }, quiet: fine } }
  b: { measure: volts, go: c }
  c: { do: Oil it., voids: [noise], leaves: [tap], go: d }
  d: { observe: smell, go: a }
";

fn until_smell() -> Call {
    let mut call = Call::of(STEPS);
    call.chooses("hum");
    call.types("24 V");
    call.does(Command::Done);
    assert_eq!(call.wants(), "smell");
    call
}

#[test]
fn answers_findings_and_counts_are_taken_back() {
    let mut call = until_smell();
    assert_eq!(call.findings(), ["Hums"]);
    call.does(Command::Back(0));
    assert_eq!(call.wants(), "noise");
    assert!(call.findings().is_empty());
    assert!(call.state.value(call.datum("volts")).is_none());
    call.chooses("hum");
    assert_eq!(call.wants(), "volts", "the edge may be taken again");
}

#[test]
fn what_was_opened_stays_open_and_nothing_is_erased() {
    let mut call = until_smell();
    let before = call.events.len();
    let lines = call.does(Command::Back(0));
    assert_eq!(lines, [r#"{"went_back":{"to":0}}"#]);
    assert_eq!(call.state.open.len(), 2);
    assert_eq!(call.events.len(), before + 1);
}

#[test]
fn what_performed_work_voided_stays_void() {
    let mut call = until_smell();
    call.does(Command::Back(1));
    assert_eq!(call.wants(), "volts");
    assert!(
        call.state.value(call.datum("noise")).is_none(),
        "it was oiled since"
    );
}

#[test]
fn a_value_taken_after_the_work_is_void_only_with_its_answer() {
    let mut call = Call::of(
        "  c: { do: Oil it., voids: [noise], go: a }\n  a: { observe: noise, go: b }\n  b: { measure: volts, go: d }\n  d: { observe: smell, go: fine }\n",
    );
    call.does(Command::Done);
    call.chooses("hum");
    call.types("24 V");
    call.does(Command::Back(2));
    assert!(call.state.value(call.datum("noise")).is_some());
}

#[test]
fn what_could_not_be_taken_after_that_may_be_taken_again() {
    let mut call = Call::of(
        "  a: { observe: noise, go: b }\n  b: { measure: amps, go: c, unable: c }\n  c: { measure: volts, go: motor_dead }\n",
    );
    call.chooses("quiet");
    call.does(Command::Unable("no clamp".to_owned()));
    call.does(Command::Back(0));
    assert!(call.state.could_not.is_empty());
}

#[test]
fn a_doubt_is_taken_back_too() {
    let mut call = Call::of(
        "  a: { observe: noise, go: b }\n  b: { measure: volts, bands: { below 10 V: dirty, at least 10 V: fine } }\n",
    );
    call.chooses("hum");
    call.types("10.1 V");
    call.does(Command::Back(0));
    call.chooses("hum");
    assert!(call.types("10.1 V")[0].contains("doubted"), "it is asked anew");
}
