//! Worked calls: where a walk departs from what is expected, on which answer it left the way, and what was walked at all.

use proofwalk::library::Library;
use proofwalk::report::findings::Look;
use proofwalk::report::rehearsal::{Listed, text};
use proofwalk::walk::{Passed, Rehearsal, Run, parting, passed, rehearse};

use crate::call::{library, tree};

/// Two questions on the way to each end, one of them asked for a second time after work.
pub const STEPS: &str = "
  sound: { observe: noise, choices: { hum: level, quiet: sniff }, unsure: sniff }
  level:
    measure: volts
    bands:
      below 10 V: { go: clean, at_most: 1, then: dirty }
      10 V to 20 V: load
      above 20 V: motor_dead
    unable: fine
  clean: { do: Clean it., voids: [volts], go: level }
  load: { measure: amps, bands: { below 5 A: fine, at least 5 A: valve_dead } }
  sniff: { observe: smell, choices: { gas_smell: unsafe_here, nothing: fine } }
";

pub fn with(scenario: &str) -> Library {
    let file = format!("scenario: S\ntree: t\n{scenario}");
    library(&[tree("t", "", STEPS), ("scenarios/s.yaml".to_owned(), file)])
}

pub fn walked(library: &Library) -> (Run, Vec<Passed>) {
    let run = rehearse(library, &library.scenarios[0]);
    let passed = passed(library, &run.events).unwrap();
    (run, passed)
}

/// Where the first departure left the way: the step, and the answers that would have kept to it.
#[track_caller]
fn left(scenario: &str) -> (String, Vec<String>) {
    let library = with(scenario);
    let (run, passed) = walked(&library);
    let goal = run.departures[0].goal.unwrap();
    let parting = parting(&library, &passed, goal).unwrap();
    let step = &library[passed[parting.at].step];
    let exits = step.exits().into_iter();
    let keeping = exits
        .filter(|exit| parting.keeping.contains(&exit.edge.id))
        .map(|exit| exit.words(&library, step));
    (step.name.clone(), keeping.collect())
}

#[test]
fn a_walk_is_told_step_by_step() {
    let library =
        with("readings: { volts: [5 V, 25 V] }\nsigns: { noise: hum }\nexpect: { verdict: motor_dead }\n");
    let (run, passed) = walked(&library);
    assert_eq!(run.departures, []);
    let steps: Vec<&str> = passed.iter().map(|at| library[at.step].name.as_str()).collect();
    assert_eq!(steps, ["sound", "level", "clean", "level", "motor_dead"]);
    assert!(
        passed[4].by.is_none() && passed[4].stated.is_some(),
        "{:?}",
        passed[4]
    );
    assert_eq!(passed[1].said.len(), 1);
    assert!(passed[1].before.values.len() == 1 && passed[3].before.values.len() == 1);
}

#[test]
fn the_last_question_that_could_still_have_led_there_is_named_with_the_answers_that_would() {
    assert_eq!(
        left(
            "readings: { volts: 15 V, amps: 2 A }\nsigns: { noise: hum }\nexpect: { verdict: valve_dead }\n"
        ),
        ("load".to_owned(), vec!["at least 5 A".to_owned()])
    );
    assert_eq!(
        left("signs: { noise: quiet, smell: nothing }\nexpect: { verdict: dirty }\n"),
        ("sound".to_owned(), vec!["hum".to_owned()])
    );
}

#[test]
fn an_edge_that_was_taken_as_often_as_it_may_keeps_nothing_within_reach() {
    // The second low reading leads to `dirty`, no longer to the work.
    assert_eq!(
        left("readings: { volts: [5 V, 25 V] }\nsigns: { noise: hum }\nexpect: { verdict: dirty }\n"),
        ("level".to_owned(), vec!["below 10 V, after 1 time".to_owned()])
    );
    assert_eq!(
        left("readings: { volts: 5 V }\nsigns: { noise: hum }\nexpect: { verdict: valve_dead }\n"),
        ("level".to_owned(), vec!["10 V to 20 V".to_owned()])
    );
}

#[test]
fn a_value_that_stands_from_before_is_the_one_that_decided() {
    let steps = "
  first: { measure: volts, go: second }
  second: { measure: volts, bands: { below 10 V: dirty, at least 10 V: fine } }
";
    let scenario = "scenario: S\ntree: t\nreadings: { volts: 5 V }\nexpect: { verdict: fine }\n";
    let library = library(&[
        tree("t", "", steps),
        ("scenarios/s.yaml".to_owned(), scenario.to_owned()),
    ]);
    let (run, passed) = walked(&library);
    let parting = parting(&library, &passed, run.departures[0].goal.unwrap()).unwrap();
    assert_eq!(library[passed[parting.at].step].name, "second");
    assert!(passed[1].said.is_empty(), "it is not asked again");
}

#[test]
fn what_could_never_be_reached_has_no_such_question() {
    let steps = "  a: { observe: noise, choices: { hum: dirty, quiet: fine } }\n";
    let scenario = "scenario: S\ntree: t\nsigns: { noise: hum }\nexpect: { verdict: valve_dead }\n";
    let library = library(&[
        tree("t", "", steps),
        ("scenarios/s.yaml".to_owned(), scenario.to_owned()),
    ]);
    let (run, passed) = walked(&library);
    assert_eq!(parting(&library, &passed, run.departures[0].goal.unwrap()), None);
}

#[test]
fn what_is_asked_and_what_is_opened_is_left_on_an_answer_too() {
    let quiet = "signs: { noise: quiet, smell: nothing }\n";
    for expected in ["asked: [volts]", "put_back: [door]"] {
        assert_eq!(
            left(&format!("{quiet}expect: {{ verdict: fine, {expected} }}\n")),
            ("sound".to_owned(), vec!["hum".to_owned()]),
            "{expected}"
        );
    }
}

#[test]
fn an_empty_list_says_that_nothing_was_left_open() {
    let answers = "readings: { volts: 15 V, amps: 2 A }\nsigns: { noise: hum }";
    let walk = |put_back: &str| {
        let library = with(&format!("{answers}\nexpect: {{ verdict: fine{put_back} }}\n"));
        let (run, _) = walked(&library);
        run.departures.first().map(|departure| departure.happened.clone())
    };
    assert_eq!(walk(""), None);
    assert_eq!(walk(", put_back: []"), Some("`door` was left open".to_owned()));
}

#[test]
fn what_a_step_put_back_is_not_left_to_be_put_back() {
    let steps = "
  level: { measure: volts, go: look }
  look: { do: Look inside., leaves: [door, tap], restores: [tap], go: shut }
  shut: { do: Shut it., restores: [door], go: fine }
";
    let walk = |expected: &str| {
        let scenario = format!(
            "scenario: S\ntree: t\nreadings: {{ volts: 15 V }}\nexpect: {{ verdict: fine, put_back: [{expected}] }}\n"
        );
        let library = library(&[tree("t", "", steps), ("scenarios/s.yaml".to_owned(), scenario)]);
        let (run, _) = walked(&library);
        run.departures.first().map(|departure| departure.happened.clone())
    };
    assert_eq!(walk(""), None);
    assert_eq!(walk("door"), Some("it was put back on the way".to_owned()));
}

#[test]
fn each_departure_points_at_the_key_that_is_not_met() {
    let library = with(
        "signs: { noise: quiet, smell: nothing }\nexpect:\n  verdict: dirty\n  asked: [smell, volts]\n  put_back: [door]\n  findings: [note]\n",
    );
    let (run, _) = walked(&library);
    let places = run.departures.iter().map(|departure| {
        let place = library.files.place(departure.at);
        (place.line, place.column, library.files.excerpt(departure.at))
    });
    assert_eq!(
        places.collect::<Vec<_>>(),
        [
            (5, 3, "verdict: dirty"),
            (6, 18, "volts"),
            (7, 14, "door"),
            (8, 3, "findings")
        ]
    );
}

#[test]
fn an_answer_that_nothing_asks_for_is_no_departure_and_is_told() {
    let library = with(
        "plate: { gas: natural }\nreadings: { amps: 1 A }\nsigns: { noise: quiet, smell: nothing }\nunable: [volts]\nexpect: { verdict: fine }\n",
    );
    let (run, _) = walked(&library);
    assert_eq!(run.departures, []);
    let idle: Vec<&str> = run.idle.iter().map(|idle| library.name_of(idle.what)).collect();
    assert_eq!(idle, ["amps", "volts"], "a plate is written down whole");
}

#[test]
fn a_departure_is_shown_with_the_walk_and_the_answer_that_left_the_way() {
    let library = with(
        "readings: { volts: 15 V, amps: 2 A }\nsigns: { noise: hum, smell: nothing }\nexpect:\n  verdict: valve_dead\n",
    );
    let rehearsal = Rehearsal::of(&library, &library.scenarios);
    let look = Look {
        ascii: true,
        ..Look::default()
    };
    let expected = "\
scenarios/s.yaml:6:3  S
error: expected the verdict `valve_dead`
  |
6 |   verdict: valve_dead
  |   ^^^^^^^^^^^^^^^^^^^
  happened: the verdict `fine`, at t/fine
  it could last have come to that at number 3 of the walk, t.yaml:16  t/load
      amps: 2 A, below 5 A -> fine
  what would have kept it within reach there:
    t.yaml:16  at least 5 A -> valve_dead
  never asked for: `smell`
  the walk:
     1  t/sound  noise: hum -> level
     2  t/level  volts: 15 V, 10 V to 20 V -> load
  >  3  t/load  amps: 2 A, below 5 A -> fine
     4  t/fine  verdict fine, proven

1 scenario, 0 as expected, 1 not
";
    assert_eq!(text(&rehearsal, Listed::Nothing, None, look), expected);
}

#[test]
fn a_verdict_that_is_not_proven_says_what_its_proof_lacks_and_what_to_add() {
    let steps = "  a: { observe: smell, go: motor_dead }\n";
    let scenario =
        "scenario: S\ntree: t\nsigns: { smell: nothing, noise: quiet }\nexpect: { verdict: motor_dead }\n";
    let library = library(&[
        tree("t", "", steps),
        ("scenarios/s.yaml".to_owned(), scenario.to_owned()),
    ]);
    let page = text(
        &Rehearsal::of(&library, &library.scenarios),
        Listed::Nothing,
        None,
        Look::default(),
    );
    for words in [
        "the walk came to that verdict, and its proof does not hold:\n",
        "registry/parts.yaml:2  Volts: 20 V to 30 V: not taken\n",
        "  add to the scenario, for instance:\n    readings:\n      volts: 25 V\n",
    ] {
        assert!(page.contains(words), "{words:?} is missing:\n{page}");
    }
}

#[test]
fn a_page_fits_80_columns_and_nothing_in_it_acts_on_a_terminal() {
    let scenario = "scenario: \"Long \\e[2J and longer and longer and longer and longer and longer and longer\"\ntree: t\nsigns: { noise: hum }\nexpect: { verdict: fine }\n";
    let files = [
        tree("t", "", STEPS),
        ("scenarios/s.yaml".to_owned(), scenario.to_owned()),
    ];
    let library = library(&files);
    let page = text(
        &Rehearsal::of(&library, &library.scenarios),
        Listed::All,
        None,
        Look::default(),
    );
    assert!(page.contains("^[[2J") && !page.contains('\u{1b}'), "{page}");
    let wide: Vec<&str> = page.lines().filter(|line| line.chars().count() > 80).collect();
    assert_eq!(wide, [""; 0]);
}

#[test]
fn of_many_departures_the_first_are_shown_with_their_walk() {
    let scenario = "tree: t\nsigns: { noise: quiet, smell: nothing }\nexpect: { verdict: dirty }\n";
    let scenarios = (10..22).map(|number| {
        let text = format!("scenario: Number {number}\n{scenario}");
        (format!("scenarios/s{number}.yaml"), text)
    });
    let files: Vec<_> = [tree("t", "", STEPS)].into_iter().chain(scenarios).collect();
    let library = library(&files);
    let page = text(
        &Rehearsal::of(&library, &library.scenarios),
        Listed::Nothing,
        None,
        Look::default(),
    );
    assert_eq!(page.matches("  the walk:\n").count(), 10);
    let short = "scenarios/s21.yaml:4:11  Number 21: expected the verdict `dirty`; happened: the\n    verdict `fine`, at t/fine\n";
    assert!(page.contains(short), "{page}");
}

#[test]
fn an_answer_that_is_refused_is_told_and_nothing_else_is() {
    let steps = "  a: { plate: low, bands: { below 5 V: b, at least 5 V: b } }\n  b: { plate: high, bands: { below 9 V: fine, at least 9 V: fine } }\n";
    let scenario = "scenario: S\ntree: t\nplate: { low: 8 V, high: 6 V }\nexpect: { verdict: fine }\n";
    let files = [
        tree("t", "", steps),
        ("scenarios/s.yaml".to_owned(), scenario.to_owned()),
    ];
    let library = library(&files);
    let rehearsal = Rehearsal::of(&library, &library.scenarios);
    let page = text(&rehearsal, Listed::Nothing, None, Look::default());
    assert!(
        page.contains("error: expected the answer to `high` (Upper mark) at t/b to be taken\n"),
        "{page}"
    );
    assert!(
        page.contains("happened: this must lie above what the plate says"),
        "{page}"
    );
    assert!(!page.contains("job report"), "{page}");
}
