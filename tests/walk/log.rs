//! The log: every event to text and back, cuts anywhere, and events in an order that never was.

use proofwalk::walk::{
    Event, State, Wanted, apply, ask, decode, encode, fold, go_on, open_at, rehearse, standing, wanted,
};
use proptest::prelude::*;

use crate::built_in::built_in;
use crate::call::{Call, opened};

/// One line of every kind of event, with all that it can hold.
const LINES: [&str; 28] = [
    r#"{"opened":{"library":{"name":"n","edition":"1","hash":"h"},"tree":"t","technician":"a","site":"b","equipment":"c","program":"0"}}"#,
    r#"{"entered":{"tree":"t","role":"gate"}}"#,
    r#"{"entered":{"tree":"t","role":"danger"}}"#,
    r#"{"took":{"edge":3,"from":"t/a","to":"t/b"}}"#,
    r#"{"returned":{"outcome":"out"}}"#,
    r#"{"left":{"depth":1}}"#,
    r#"{"measured":{"reading":"volts","typed":"24 V","value":24.0,"unit":"V","margin":0.5,"borderline":true}}"#,
    r#"{"measured":{"reading":"rise","value":50.0,"unit":"°F","margin":2.0}}"#,
    r#"{"observed":{"sign":"noise","value":"hum"}}"#,
    r#"{"read_plate":{"field":"low","value":"5 V"}}"#,
    r#"{"read_plate":{"field":"gas","value":"natural"}}"#,
    r#"{"doubted":{"datum":"volts","value":"24 V","why":"implausible","against":"0 V to 9 V"}}"#,
    r#"{"could_not":{"datum":"amps","why":"no clamp"}}"#,
    r#"{"was_unsure":{"sign":"noise"}}"#,
    r#"{"did":{"step":"t/a"}}"#,
    r#"{"voided":{"data":["noise","volts"],"why":"danger"}}"#,
    r#"{"retaking":{"datum":"rise","for_proof":true}}"#,
    r#"{"left_open":{"restores":["door","tap"]}}"#,
    r#"{"restored":{"restores":["door"]}}"#,
    r#"{"withheld":{"fault":"motor_dead"}}"#,
    r#"{"stated":{"fault":"dirty","noted":true}}"#,
    r#"{"ended":{"verdict":{"fault":"fine","danger":true}}}"#,
    r#"{"ended":{"insisted":{"fault":"fine","words":"w"}}}"#,
    r#"{"went_back":{"to":0}}"#,
    r#"{"noted":{"text":"\u001b[2J and „quotes”"}}"#,
    r#"{"put_back":{"restore":"door"}}"#,
    r#"{"kept_open":{"restore":"tap","why":"broken"}}"#,
    r#"{"closed":null}"#,
];

fn lines() -> Vec<Event> {
    let lines = LINES
        .iter()
        .map(|line| line.replace(r#"{"closed":null}"#, r#""closed""#));
    lines.map(|line| decode(&line).unwrap()).collect()
}

#[test]
fn every_event_comes_back_from_its_text() {
    for event in lines() {
        assert_eq!(decode(&encode(&event).unwrap()).unwrap(), event);
    }
    let cut: Event = decode(r#"{"tail_cut":{"bytes":7,"kept":"f"}}"#).unwrap();
    assert_eq!(decode(&encode(&cut).unwrap()).unwrap(), cut);
}

#[test]
fn a_line_with_a_key_too_many_or_too_few_is_none() {
    for line in [
        r#"{"left":{}}"#,
        r#"{"left":{"depth":1,"more":2}}"#,
        r#"{"went_back":{"to":-1}}"#,
        "{}",
        "",
        "[]",
    ] {
        assert!(decode(line).is_err(), "{line}");
    }
}

/// A log may be damaged or another library's: every prefix either fits or is said not to, and every state can be shown.
fn survives(call: &Call, events: &[Event]) {
    let mut state = State::default();
    for event in events {
        if apply(&call.library, &mut state, event).is_err() {
            return;
        }
        ask(&call.library, &state);
        standing(&call.library, &state);
        // Whether it can go on or not, it says so.
        let _ = go_on(&call.library, &state);
    }
}

fn everything() -> Call {
    Call::of(
        "  a: { observe: noise, choices: { hum: b, quiet: c } }\n  b: { measure: volts, bands: { below plate.low: c, at least plate.low: motor_dead } }\n  c: { do: Oil., voids: [noise], go: d }\n  d: { measure: rise, go: valve_dead }\n",
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]
    #[test]
    fn events_in_any_order_never_stop_the_program(
        picks in prop::collection::vec((0..28_usize, 0..12_u32, any::<f64>()), 0..40)
    ) {
        let call = everything();
        let lines = lines();
        let begun = open_at(&call.library, opened("t")).unwrap();
        let events: Vec<Event> = begun.into_iter().chain(picks.into_iter().map(|(at, number, value)| {
            match lines[at].clone() {
                Event::Took { from, to, .. } => Event::Took { edge: number, from, to },
                Event::WentBack { .. } => Event::WentBack { to: number as usize },
                Event::Left { .. } => Event::Left { depth: number as usize },
                Event::Measured { reading, typed, unit, .. } => {
                    Event::Measured { reading, typed, value, unit, margin: value, borderline: false, warnings: Vec::new() }
                }
                other => other,
            }
        })).collect();
        survives(&call, &events);
        survives(&call, &events[1..]);
    }
}

#[test]
fn a_log_cut_after_any_event_is_taken_up_at_a_question_that_was_asked() {
    let library = built_in();
    for scenario in library.scenarios.iter().step_by(7) {
        let run = rehearse(&library, scenario);
        let mut asked = Vec::new();
        let mut uncut = State::default();
        for (cut, event) in run.events.iter().enumerate() {
            apply(&library, &mut uncut, event).unwrap();
            let mut state = fold(&library, &run.events[..=cut]).unwrap();
            for event in go_on(&library, &state).unwrap() {
                apply(&library, &mut state, &event).unwrap();
            }
            assert_eq!(
                state.trail.len(),
                uncut.trail.len(),
                "nothing is answered by itself"
            );
            asked.push((
                uncut.trail.len(),
                wanted(&library, &uncut),
                wanted(&library, &state),
            ));
        }
        for (answers, _, taken_up) in &asked {
            let earlier =
                |(before, question, _): &(usize, Wanted, Wanted)| before <= answers && question == taken_up;
            // A scenario begins in its tree; a log with nothing but its opening is taken up at the gate.
            assert!(
                *answers == 0 || asked.iter().any(earlier),
                "{}: {taken_up:?} was never asked",
                scenario.name
            );
        }
    }
}
