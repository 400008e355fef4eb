//! The verdict against the truth: right, referred, missed, wrong.

use proofwalk::bench::faults::Fault;
use proofwalk::bench::trials::{Outcome, Walked, judge};
use proofwalk::library::Library;
use proofwalk::walk::{End, State};

use crate::told::with;

const fn fault(part: Option<&'static str>, verdicts: &'static [&'static str]) -> Fault {
    Fault {
        name: "truth",
        title: "What is wrong",
        part,
        verdicts,
        fits: |_| true,
        strike: |_, _, _| {},
    }
}

static VALVE: Fault = fault(Some("gas_valve"), &["gas_valve_falls", "valve_leaks_through"]);
static MODULE: Fault = fault(Some("blower_module"), &[]);
static FILTER: Fault = fault(None, &["filter_loaded"]);

/// A walk that stated these verdicts and then ended so.
fn walked(library: &Library, stated: &[&str], end: End) -> Walked {
    let mut state = State {
        ended: Some(end),
        ..State::default()
    };
    state.moment.stated = stated
        .iter()
        .map(|name| library.faults.find(name).unwrap())
        .collect();
    Walked {
        events: Vec::new(),
        state,
        minutes: 0.0,
        steps: 0,
        mended: false,
    }
}

fn verdict(library: &Library, name: &str) -> Walked {
    let end = End::Verdict {
        fault: name.to_owned(),
        danger: false,
    };
    walked(library, &[name], end)
}

fn outcome() -> End {
    End::Outcome {
        outcome: "combustion_safe".to_owned(),
    }
}

#[test]
fn a_verdict_is_held_against_the_true_part() {
    let library = with(None);
    for (said, truth, outcome) in [
        ("gas_valve_falls", &VALVE, Outcome::Right),
        // Another fault of the true part condemns the same part.
        ("gas_valve_coil_open", &VALVE, Outcome::Right),
        ("board_no_valve_output", &VALVE, Outcome::Wrong),
        // One of a group that no field measurement tells apart.
        ("blower_or_module", &MODULE, Outcome::Right),
        ("filter_loaded", &FILTER, Outcome::Right),
        ("coil_loaded", &FILTER, Outcome::Wrong),
        ("filter_loaded", &VALVE, Outcome::Wrong),
        // Stopped safely, but not for what is wrong; or for it.
        ("flue_gas_unsafe", &FILTER, Outcome::Referred),
        ("valve_leaks_through", &VALVE, Outcome::Right),
        ("utility_gas_supply", &VALVE, Outcome::Referred),
        ("nothing_found", &VALVE, Outcome::Missed),
    ] {
        assert_eq!(
            judge(&library, &verdict(&library, said), &[truth]),
            outcome,
            "{said}"
        );
    }
}

#[test]
fn a_walk_without_a_verdict_refers_or_misses() {
    let library = with(None);
    let unproven = End::Unproven {
        why: "it could not be taken".to_owned(),
    };
    assert_eq!(
        judge(&library, &walked(&library, &[], unproven), &[&VALVE]),
        Outcome::Referred
    );
    assert_eq!(
        judge(&library, &walked(&library, &[], outcome()), &[&VALVE]),
        Outcome::Missed
    );
    // What the walk's own work has put right needs no verdict.
    let mended = Walked {
        mended: true,
        ..walked(&library, &[], outcome())
    };
    assert_eq!(judge(&library, &mended, &[&FILTER]), Outcome::Right);
}

#[test]
fn a_sound_furnace_is_right_only_without_a_fault() {
    let library = with(None);
    assert_eq!(
        judge(&library, &walked(&library, &[], outcome()), &[]),
        Outcome::Right
    );
    assert_eq!(
        judge(&library, &verdict(&library, "nothing_found"), &[]),
        Outcome::Right
    );
    assert_eq!(
        judge(&library, &verdict(&library, "filter_loaded"), &[]),
        Outcome::Wrong
    );
    assert_eq!(
        judge(&library, &verdict(&library, "comes_and_goes"), &[]),
        Outcome::Referred
    );
}

#[test]
fn a_good_part_condemned_on_the_way_stays_wrong() {
    let library = with(None);
    let noted = walked(&library, &["thermostat_open", "filter_loaded"], outcome());
    assert_eq!(judge(&library, &noted, &[&FILTER]), Outcome::Wrong);
    let noted = walked(&library, &["filter_loaded"], outcome());
    assert_eq!(judge(&library, &noted, &[&FILTER]), Outcome::Right);
}

#[test]
fn one_of_two_faults_that_is_found_is_right() {
    let library = with(None);
    assert_eq!(
        judge(&library, &verdict(&library, "filter_loaded"), &[&VALVE, &FILTER]),
        Outcome::Right
    );
}
