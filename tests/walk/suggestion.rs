//! What to add to a worked call that has no answer to a question.

use proofwalk::library::{Datum, Given, Library, Scenario};
use proofwalk::walk::{Goal, Run, Suggestion, rehearse, suggestion};

use crate::built_in::built_in;
use crate::rehearse::{walked, with};

/// What is suggested where the walk stops for want of an answer.
#[track_caller]
fn suggested(scenario: &str) -> (&'static str, String, String) {
    let library = with(scenario);
    let (run, _) = walked(&library);
    let leaf = run.departures[0].unanswered.unwrap();
    let Suggestion { under, name, value } =
        suggestion(&library, &library.scenarios[0], &run.state.moment, leaf).unwrap();
    (under, name, value)
}

#[test]
fn an_answer_that_is_missing_is_suggested_so_that_the_expected_end_stays_within_reach() {
    let owned = |under, name: &str, value: &str| (under, name.to_owned(), value.to_owned());
    assert_eq!(
        suggested("signs: { noise: hum }\nexpect: { verdict: valve_dead }\n"),
        owned("readings", "volts", "15 V")
    );
    assert_eq!(
        suggested("signs: { noise: hum }\nexpect: { verdict: motor_dead }\n"),
        owned("readings", "volts", "25 V")
    );
    assert_eq!(
        suggested("signs: { noise: quiet }\nexpect: { verdict: fine }\n"),
        owned("signs", "smell", "nothing")
    );
    assert_eq!(
        suggested("expect: { verdict: unsafe_here }\n"),
        owned("signs", "noise", "quiet")
    );
}

/// The scenario with nothing but its end, and with every answer that is suggested until the walk comes to an end.
fn written_anew(library: &Library, scenario: &Scenario) -> Run {
    let mut bare = Scenario {
        plate: Vec::new(),
        readings: Vec::new(),
        signs: Vec::new(),
        unable: Vec::new(),
        unsure: Vec::new(),
        ..scenario.clone()
    };
    let at = scenario.at;
    loop {
        let run = rehearse(library, &bare);
        let missing = run.departures.iter().find_map(|departure| departure.unanswered);
        let suggested = missing.and_then(|leaf| {
            let suggested = suggestion(library, scenario, &run.state.moment, leaf)?;
            Some((leaf, suggested.value))
        });
        match suggested {
            None => return run,
            Some((Datum::Reading(of), value)) => bare.readings.push(Given {
                of,
                at,
                answers: vec![value],
            }),
            Some((Datum::Field(of), value)) => bare.plate.push(Given {
                of,
                at,
                answers: vec![value],
            }),
            Some((Datum::Sign(of), value)) => {
                let values = &library.signs[of].values;
                let answer = values.iter().position(|choice| choice.name == value);
                bare.signs.push(Given {
                    of,
                    at,
                    answers: answer.into_iter().collect(),
                });
            }
        }
    }
}

#[test]
fn taking_what_is_suggested_mostly_leads_to_the_expected_end() {
    let library = built_in();
    let scenarios = library.scenarios.iter().step_by(5);
    let (mut led, mut tried) = (0, 0);
    for scenario in scenarios.filter(|scenario| Goal::of(scenario).is_some()) {
        let run = written_anew(&library, scenario);
        let end = scenario.expect.end.as_ref().map(|end| end.at);
        tried += 1;
        led += usize::from(run.departures.iter().all(|departure| Some(departure.at) != end));
        assert!(
            run.departures
                .iter()
                .all(|departure| departure.unanswered.is_none()),
            "{}: {:?}",
            scenario.name,
            run.departures
        );
    }
    // The others hang on two readings together, or on one that is taken twice: what was suggested first does not know.
    assert!(led * 4 > tried * 3, "{led} of {tried}");
}
