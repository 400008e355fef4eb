//! What stands on the rating plate.

use proofwalk::walk::Command;

use crate::call::Call;

const MARKS: &str = "  a: { measure: volts, bands: { below plate.low: dirty, at least plate.low: b } }\n  b: { measure: volts, bands: { below plate.high: fine, at least plate.high: dirty } }\n";

#[test]
fn a_field_is_asked_for_when_a_band_first_needs_it() {
    let mut call = Call::of(MARKS);
    assert_eq!(call.wants(), "low");
    call.types("5");
    assert_eq!(call.wants(), "volts");
    call.types("12");
    assert_eq!(call.wants(), "high");
    call.types("15 V");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"fine"}}}"#);
}

#[test]
fn a_plate_that_breaks_its_order_is_refused() {
    let mut call = Call::of(MARKS);
    call.types("5");
    call.types("12");
    for wrong in ["4 V", "5 V"] {
        let refusal = call.refuses(Command::Type(wrong.to_owned()));
        assert_eq!(
            refusal.message,
            "this must lie above what the plate says for: Lower mark"
        );
    }
    assert_eq!(call.wants(), "high");
}

#[test]
fn an_implausible_field_is_asked_again() {
    let mut call = Call::of(MARKS);
    assert!(call.types("0.5 V")[0].contains("implausible"));
    call.types("0.5 V");
    assert_eq!(call.wants(), "volts");
}

#[test]
fn a_field_with_choices_leads_on() {
    let mut call = Call::of(
        "  a: { plate: gas, choices: { natural: fine, propane: b }, unable: dirty }\n  b: { plate: gas, choices: { natural: fine, propane: dirty } }\n",
    );
    call.refuses(Command::Type("natural".to_owned()));
    call.chooses("propane");
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"dirty"}}}"#);
}

#[test]
fn a_field_that_cannot_be_read_takes_the_questions_way_out() {
    let mut call = Call::of(
        "  a: { plate: low, bands: { below plate.high: fine, at least plate.high: dirty }, unable: dirty }\n",
    );
    // What the bands lean on comes first: without it they could not be shown.
    assert_eq!(call.wants(), "high");
    call.types("8");
    assert_eq!(call.wants(), "low");
    call.does(Command::Unable("painted over".to_owned()));
    assert_eq!(call.ended(), r#"{"ended":{"verdict":{"fault":"dirty"}}}"#);
}
