//! A session walked again, step by step.

use std::fs;

use jiff::{SignedDuration, Timestamp};
use proofwalk::library::load;
use proofwalk::report::replay::{replay, text};
use proofwalk::source::Files;
use proofwalk::store::read_library;
use proofwalk::walk::{Command, Event, Opened, State, apply, decide, decode, open_at};
use unicode_width::UnicodeWidthStr;

use crate::common::scene::{root, scenario, scene};
use crate::told::at;

#[test]
fn a_replay_tells_every_answer_and_what_came_of_it() {
    let scene = scene();
    let answers = scenario("board-lets-the-valve-go");
    scene
        .run(&[
            "walk",
            "no-heat",
            "--answers",
            &answers,
            "--clock",
            "2026-01-05T10:00:00Z",
        ])
        .exits(0);
    let replayed = scene.run(&["replay", &scene.id()]).exits(0).out;
    for part in [
        "1 of ",
        "2026-01-05 10:00:00 UTC",
        "Answer       3.1 uA",
        "No longer    reached: ",
        "Proven       Control board lets its gas-valve output go",
        "To put back  Release the door switch",
        "Put back     Release the door switch",
        "Closed       by the technician",
    ] {
        assert!(replayed.contains(part), "{part}: {replayed}");
    }
    assert!(replayed.lines().all(|line| line.width() <= 80));
}

#[test]
fn what_was_taken_back_is_shown_too() {
    let files = read_library(&root().join("trees")).unwrap();
    let (library, _) = load(Files::new(files));
    let opened = Opened {
        library: Default::default(),
        tree: "airflow".to_owned(),
        technician: Some("kim".to_owned()),
        site: None,
        equipment: Some("e1".to_owned()),
        program: "test".to_owned(),
        answered_from: None,
    };
    let mut state = State::default();
    let mut events: Vec<(Timestamp, Event)> = Vec::new();
    let mut now = at("2026-01-05T10:00:00Z");
    let mut take = |state: &mut State, new: Vec<Event>| {
        now += SignedDuration::from_secs(60);
        for event in new {
            apply(&library, state, &event).unwrap();
            events.push((now, event));
        }
    };
    take(&mut state, open_at(&library, opened).unwrap());
    for command in [
        Command::Choose(0),
        Command::Back(0),
        Command::Choose(1),
        Command::Stop("called away".to_owned()),
    ] {
        let new = decide(&library, &state, &command).unwrap();
        take(&mut state, new);
    }
    let (moments, misfit) = replay(&library, &events);
    assert_eq!(misfit, None);
    let labels: Vec<Vec<&str>> = moments
        .iter()
        .map(|moment| moment.lines.iter().map(|line| line.0).collect())
        .collect();
    assert_eq!(labels[1][..2], ["Question", "Answer"]);
    assert_eq!(labels[2], ["Went back"]);
    assert_eq!(labels[3][..2], ["Question", "Answer"]);
    assert_eq!(labels[4], ["Ended"]);
    assert_ne!(moments[1].lines[1], moments[3].lines[1]);
    let shown = text(&moments[4], 5, moments.len(), true, None);
    assert_eq!(
        shown.lines().next(),
        Some("5 of 5  2026-01-05 10:05:00 UTC, after 1 min 0 s  Airflow")
    );
    assert!(shown.contains("called away"), "{shown}");
}

#[test]
fn what_an_answer_opens_stands_with_it_also_where_the_clock_ran_on_between() {
    let scene = scene();
    let answers = scenario("board-lets-the-valve-go");
    let walk = ["walk", "no-heat", "--answers", &answers];
    scene.run(&walk).exits(0);
    let told = fs::read_to_string(scene.file(&scene.id())).unwrap();
    let mut events = Vec::new();
    for (second, line) in (0..).zip(told.lines()) {
        let record: serde_json::Value = serde_json::from_str(line).unwrap();
        let event = decode(&record["event"].to_string()).unwrap();
        let is_opening = matches!(event, Event::LeftOpen { .. });
        // Recorded with the answer, and a second before it by the clock.
        let time =
            at("2026-01-05T10:00:00Z") + SignedDuration::from_secs(10 * second - i64::from(is_opening));
        events.push((time, event));
    }
    let files = read_library(&root().join("trees")).unwrap();
    let (library, _) = load(Files::new(files));
    let (moments, misfit) = replay(&library, &events);
    assert_eq!(misfit, None);
    assert!(moments.iter().all(|moment| !moment.lines.is_empty()));
    // And where the log ends with what was opened.
    let last = events
        .iter()
        .rposition(|(_, event)| matches!(event, Event::LeftOpen { .. }))
        .unwrap();
    let (moments, misfit) = replay(&library, &events[..=last]);
    assert_eq!(misfit, None);
    let last = moments.last().unwrap();
    assert!(last.lines.iter().any(|(label, _)| *label == "To put back"));
}
