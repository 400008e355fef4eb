//! What a technician is told of a verdict, and of what was worked out.

use proofwalk::walk::{Command, Standing, ask, standing};

use crate::call::{Call, library, tree};

const STEPS: &str = "
  a: { measure: rise, bands: { below 60.1 °F: { go: s, means: as it should be }, at least 60.1 °F: fine } }
  s: { observe: smell, choices: { gas_smell: stop, nothing: fine } }
  stop: { verdict: unsafe_here, because: It leaks., advice: Call the supplier., cautions: [spark] }
";

fn told(call: &Call) -> Standing {
    standing(&call.library, &call.state)
}

fn risen() -> Call {
    let cautions = "cautions:\n  spark: { text: No flame. }\n";
    let files = [
        tree("t", "", STEPS),
        ("registry/cautions.yaml".to_owned(), cautions.to_owned()),
    ];
    let mut call = Call::open(library(&files));
    call.types("126 °F");
    call.types("70.0004 °F");
    call
}

#[test]
fn a_result_that_decides_is_told_with_its_meaning_and_no_more_digits_than_are_measured() {
    let call = risen();
    let trail = told(&call).trail;
    assert!(trail[0].worked_out.is_empty());
    let [came_out] = &trail[1].worked_out[..] else {
        panic!("{trail:?}");
    };
    assert_eq!(came_out.title.as_str(), "Rise");
    assert_eq!(came_out.value.as_str(), "56 °F");
    assert_eq!(
        came_out.means.as_ref().map(|means| means.as_str()),
        Some("as it should be")
    );
    let kept = call
        .state
        .value(call.datum("rise"))
        .unwrap()
        .value
        .number()
        .unwrap();
    assert!((kept.base() - 55.9996 * 5.0 / 9.0).abs() < 1e-6, "{kept:?}");
}

#[test]
fn a_result_goes_with_the_answer_that_is_taken_back() {
    let mut call = risen();
    call.does(Command::Back(1));
    assert!(told(&call).trail.iter().all(|entry| entry.worked_out.is_empty()));
}

#[test]
fn a_verdict_is_told_with_all_that_its_fault_and_its_step_say() {
    let mut call = risen();
    assert_eq!(told(&call).stated, None);
    call.chooses("gas_smell");
    let stated = told(&call).stated.unwrap();
    assert!(stated.shut_down);
    assert_eq!(stated.remedy.as_str(), "It must not run");
    let texts = [&stated.text, &stated.cautions, &stated.because, &stated.advice];
    let texts: Vec<_> = texts.into_iter().flatten().map(|text| text.as_str()).collect();
    assert_eq!(texts, ["No flame.", "It leaks.", "Call the supplier."]);
}

#[test]
fn an_end_without_a_verdict_asks_for_nothing() {
    let mut call = risen();
    call.does(Command::Stop("no access".to_owned()));
    let told = told(&call);
    assert_eq!(told.stated, None);
    assert_eq!(told.ended.unwrap().as_str(), "Unproven, no verdict: no access");
}

#[test]
fn the_cautions_of_every_call_stand_over_its_first_question_unless_that_is_about_a_danger() {
    let small = "library: small\nstanding_cautions: [local]\ndangers: { It burns: fire }\n";
    let files = [
        tree(
            "t",
            "",
            "  a: { observe: noise, go: b }\n  b: { observe: smell, go: fine }\n",
        ),
        (
            "registry/cautions.yaml".to_owned(),
            "cautions:\n  local: { text: Local codes come first. }\n".to_owned(),
        ),
        ("library.yaml".to_owned(), small.to_owned()),
    ];
    let cautions = |call: &Call| {
        let cautions = ask(&call.library, &call.state).standing_cautions;
        cautions.iter().map(ToString::to_string).collect::<Vec<_>>()
    };
    let mut call = Call::open(library(&files));
    assert_eq!(cautions(&call), ["Local codes come first."]);
    let mut burning = Call::open(library(&files));
    burning.does(Command::Danger(0));
    assert_eq!(cautions(&burning), [""; 0]);
    call.chooses("hum");
    assert_eq!(cautions(&call), [""; 0]);
}
