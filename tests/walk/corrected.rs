//! A value taken again that leads elsewhere than it did corrects the walk.

use proofwalk::walk::Command;

use crate::call::Call;

const STEPS: &str = "
  a: { measure: volts, bands: { at most 26 V: b, above 26 V: { go: high, finding: { severity: danger, text: Too high } } } }
  b: { observe: noise, go: c }
  c: { observe: smell, go: fine }
  high: { observe: noise, go: fine }
";

fn until_smell() -> Call {
    let mut call = Call::of(STEPS);
    call.types("24 V");
    call.chooses("hum");
    assert_eq!(call.wants(), "smell");
    call
}

#[test]
fn the_walk_goes_back_to_where_the_value_was_asked_and_on_from_there() {
    let mut call = until_smell();
    call.does(Command::Retake(call.datum("volts")));
    call.types("29 V");
    assert_eq!(
        call.wants(),
        "noise",
        "what was answered behind it is asked again"
    );
    assert_eq!(call.findings(), ["Too high"]);
    assert_eq!(call.state.trail.len(), 1);
}

#[test]
fn a_value_that_leads_the_same_way_changes_nothing_else() {
    let mut call = until_smell();
    call.does(Command::Retake(call.datum("volts")));
    call.types("25 V");
    assert_eq!(call.wants(), "smell");
    assert_eq!(call.state.trail.len(), 3);
}
