//! What is still possible, and what ruled out the rest.

use proofwalk::walk::{Command, at_worst, ruled_out};

use crate::call::Call;

const STEPS: &str = "
  a: { observe: noise, choices: { hum: b, quiet: c } }
  b: { measure: volts, bands: { below 10 V: dirty, at least 10 V: unsafe_here } }
  c: { observe: smell, choices: { gas_smell: unsafe_here, nothing: fine } }
";

#[test]
fn every_answer_rules_out_what_it_rules_out() {
    let mut call = Call::of(STEPS);
    assert_eq!(call.possible(), ["dirty", "unsafe_here", "fine"]);
    call.chooses("hum");
    assert_eq!(call.possible(), ["dirty", "unsafe_here"]);
    call.types("5 V");
    assert_eq!(call.possible(), ["dirty"]);
    let names: Vec<Vec<&str>> = ruled_out(&call.library, &call.state)
        .into_iter()
        .map(|faults| {
            faults
                .into_iter()
                .map(|fault| call.library.faults[fault].name.as_str())
                .collect()
        })
        .collect();
    assert_eq!(names, [vec!["fine"], vec!["unsafe_here"]]);
}

#[test]
fn what_work_on_the_way_may_void_rules_nothing_out() {
    let mut call = Call::of(
        "  a: { observe: noise, go: b }\n  b: { do: Oil it., voids: [noise], go: c }\n  c: { observe: noise, choices: { hum: dirty, quiet: fine } }\n",
    );
    call.chooses("hum");
    assert_eq!(call.possible(), ["dirty", "fine"]);
}

#[track_caller]
fn worst(call: &Call, expected: usize) {
    assert_eq!(at_worst(&call.library, &call.state.moment), expected);
}

#[test]
fn at_worst_counts_what_is_asked_and_done() {
    let mut call = Call::of(STEPS);
    worst(&call, 2);
    call.chooses("hum");
    worst(&call, 1);
    call.types("5 V");
    worst(&call, 0);
}

#[test]
fn at_worst_counts_the_inputs_of_what_is_worked_out_and_the_plate_fields_of_bands() {
    worst(&Call::of("  a: { measure: rise, go: fine }\n"), 2);
    worst(
        &Call::of("  a: { measure: volts, bands: { below plate.low: dirty, at least plate.low: fine } }\n"),
        2,
    );
    worst(&Call::of("  a: { measure: volts, go: valve_dead }\n"), 2);
}

#[test]
fn at_worst_counts_a_bounded_loop_as_often_as_it_may_be_walked() {
    let mut call = Call::of(
        "  a: { observe: noise, choices: { quiet: fine, hum: { go: b, at_most: 2, then: dirty } } }\n  b: { do: Oil it., voids: [noise], go: a }\n",
    );
    worst(&call, 5);
    call.chooses("hum");
    worst(&call, 4);
    call.does(Command::Done);
    worst(&call, 3);
}

#[test]
fn at_worst_counts_again_what_may_stay_without_an_answer() {
    let mut call =
        Call::of("  a: { measure: volts, go: fine, unable: b }\n  b: { measure: volts, go: fine }\n");
    worst(&call, 2);
    call.does(Command::Unable("no meter".to_owned()));
    worst(&call, 1);
}
