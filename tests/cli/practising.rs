//! Practice through a pipe.

use std::fs;

use crate::common::scene::{Said, Scene, run, scene};
use crate::common::spoken::Spoken;
use crate::common::wait::until;

/// Answers each question as an apprentice does who knows nothing: does what is to be done, tries one place after the other,
/// stops where a verdict is not proven.
struct Apprentice {
    place: usize,
}

impl Apprentice {
    fn answer(&mut self, asked: &str) -> String {
        let prompt = asked.lines().last().unwrap_or_default();
        // The sentence follows what was measured, so that it may be broken over two lines.
        self.place = if squeezed(asked).contains("That is not what is asked.") {
            self.place + 1
        } else {
            1
        };
        let word = match prompt {
            "Answer (done): " => "done",
            "Answer (close): " => "close",
            "Say yes to do it: " => "yes",
            _ if prompt.contains("insist") => "stop it is not proven",
            _ => return self.place.to_string(),
        };
        word.to_owned()
    }
}

/// Answers that no call of these tests comes near: whoever gives more goes round in a circle.
const MOST_ANSWERS: usize = 500;

/// Walks a call by what it asks, until it ends.
pub fn plays(mut call: Spoken, mut answer: impl FnMut(&str) -> String) -> Said {
    for _ in 0..MOST_ANSWERS {
        let asked = until(|| {
            let fresh = call.fresh();
            (fresh.ends_with(": ") || fresh.contains("WHAT WAS WRONG")).then_some(fresh)
        });
        let asked = asked.expect("the next question, or the end");
        if asked.contains("WHAT WAS WRONG") {
            return call.ends();
        }
        call.say(&answer(&asked));
    }
    panic!("the call does not end: {}", call.fresh());
}

pub fn practice(scene: &Scene, arguments: &[&str]) -> Spoken {
    let all: Vec<&str> = ["practice", "--plain"]
        .into_iter()
        .chain(arguments.iter().copied())
        .collect();
    Spoken::start(scene.command(&all))
}

/// What is said up to the next prompt.
pub fn asks(call: &Spoken) -> String {
    let asked = until(|| Some(call.fresh()).filter(|fresh| fresh.ends_with(": ")));
    asked.expect("the next prompt")
}

/// The number of the entry with some words.
pub fn number_of(asked: &str, words: &str) -> String {
    let entry = asked.lines().find(|entry| entry.contains(words)).unwrap();
    entry.split_whitespace().next().unwrap().to_owned()
}

/// The lines of the debrief below a heading, those that are broken put together again.
pub fn below(said: &str, heading: &str) -> Vec<String> {
    let after = said
        .split_once(&format!("\n{heading}\n"))
        .unwrap_or_else(|| panic!("{heading} in {said}"))
        .1;
    let mut lines: Vec<String> = Vec::new();
    for line in after.lines().take_while(|line| !line.is_empty()) {
        match (line.strip_prefix("    "), lines.last_mut()) {
            (Some(rest), Some(last)) => last.push_str(&format!(" {rest}")),
            _ => lines.push(line.trim().to_owned()),
        }
    }
    lines
}

pub fn squeezed(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn number_before(text: &str, words: &str) -> f64 {
    let before = text.split(words).next().unwrap();
    before.split_whitespace().last().unwrap().parse().unwrap()
}

#[test]
fn guided_practice_goes_to_a_debrief_whose_minutes_add_up() {
    let scene = scene();
    let mut apprentice = Apprentice { place: 1 };
    let call = practice(&scene, &["--guided", "--seed", "3"]);
    let said = plays(call, |asked| apprentice.answer(asked)).exits(0);

    // Nothing that is said before the end names the fault.
    let (before, after) = said.out.split_once("\nEnded: ").unwrap();
    let truth = below(after, "WHAT WAS WRONG").remove(0);
    assert!(!squeezed(before).contains(&truth), "{truth} in {before}");
    let found = below(after, "WHAT YOU FOUND");
    assert_eq!(found[0], "Right, and proven");
    let verdict = found[1]
        .strip_prefix("You ended with: Verdict, proven: ")
        .unwrap();
    assert!(!squeezed(before).contains(verdict), "{verdict} in {before}");

    // With the right place each time it would have taken as long as the tree; the wrong places come on top.
    let took = below(after, "WHAT IT TOOK");
    let (all, tree) = (
        number_before(&took[0], " min;"),
        number_before(took[0].trim_end_matches(" min"), "$"),
    );
    let elsewhere = number_before(&took[1], " min of that");
    assert_eq!(all, tree + elsewhere, "{took:?}");
    let wrong = squeezed(&said.out).matches("That is not what is asked.").count();
    assert!(
        wrong > 0 && took[1].contains(&format!(" for {wrong} probe")),
        "{took:?}, {wrong} wrong places"
    );
    assert!(
        after.contains("proofwalk practice --guided --level 1 --seed 3"),
        "{after}"
    );
}

#[test]
fn practice_is_a_session_like_any_other_that_says_what_it_is() {
    let scene = scene();
    let call = practice(&scene, &["--seed", "8", "--level", "2", "--technician", "t-07"]);
    let mut lines = ["2", "stop I only look", "yes", "close"].into_iter();
    let said = plays(call, |_| lines.next().unwrap().to_owned()).exits(0);
    assert!(said.out.contains("Seed 8, level 2"), "{}", said.out);
    let id = scene.id();
    let verified = scene.verify(&id).exits(0);
    assert!(verified.out.contains("whole, closed"), "{}", verified.out);
    let log = fs::read_to_string(scene.file(&id)).unwrap();
    assert!(
        log.contains(r#""answered_from":"practice seed 8 level 2""#),
        "{log}"
    );
    let report = scene.run(&["report", &id]).exits(0);
    assert!(
        squeezed(&report.out).contains("NO FIELD CALL: practice seed 8 level 2; a simulated"),
        "{}",
        report.out
    );
    assert!(
        squeezed(&report.out)
            .contains("Practice: stopped: nothing condemned, and the fault not found; 0 min"),
        "{}",
        report.out
    );
    let listed = scene.run(&["sessions"]).exits(0);
    assert!(
        listed.out.contains("t-07, practice seed 8 level 2  closed"),
        "{}",
        listed.out
    );
}

#[test]
fn free_practice_counts_what_was_taken_condemned_overlooked_and_left_open() {
    let scene = scene();
    let call = practice(&scene, &["--seed", "3"]);
    let mut lines = [
        // Straight to the furnace.
        "2",
        // What the inducer does: 3 minutes.
        "call for heat has stood",
        "1",
        "done",
        // R to C: 2 minutes, and the door switch is held.
        "voltage at the board, r to c",
        "1",
        "done",
        // A good thermostat is condemned, without its proof.
        "says it calls",
        "1",
        "all the same",
        "open it is stuck",
        "yes",
        "close",
    ]
    .into_iter();
    let said = plays(call, |asked| {
        let line = lines.next().unwrap();
        if line != "all the same" {
            return line.to_owned();
        }
        number_of(asked, "Name it all the same")
    })
    .exits(0);
    let out = &said.out;
    // Said aloud, each of its minutes: 3 + 2.
    assert!(
        below(out, "WHAT IT TOOK")[0].starts_with("5 min; the tree takes"),
        "{out}"
    );
    assert_eq!(below(out, "WHAT YOU FOUND")[0], "Wrong, and not proven");
    assert_eq!(below(out, "PARTS CONDEMNED FOR NOTHING"), ["Thermostat"]);
    let overlooked = below(out, "DANGERS OVERLOOKED");
    assert_eq!(
        overlooked.len(),
        5,
        "the meter, gas, people, CO and the look of it: {overlooked:?}"
    );
    assert_eq!(below(out, "LEFT OPEN").len(), 1, "{out}");
    let before = out.split_once("\nEnded: ").unwrap().0;
    let truth = below(out, "WHAT WAS WRONG").remove(0);
    assert!(!squeezed(before).contains(&truth), "{truth}");
    assert!(!out.contains("On this way no longer reached"), "{out}");
    assert!(scene.verify(&scene.id()).exits(0).out.contains("whole, closed"));
}

#[test]
fn practice_that_was_left_is_taken_up_where_it_stood_with_the_minutes_it_took() {
    let scene = scene();
    let mut call = practice(&scene, &["--seed", "3"]);
    // The inducer: 3 minutes. Then the line ends.
    for line in ["2", "call for heat has stood", "1", "done"] {
        asks(&call);
        call.say(line);
    }
    let said = asks(&call);
    assert!(said.contains("Practice, 3 min so far"), "{said}");
    let said = call.ends().exits(0);
    let id = scene.id();
    assert!(
        said.err.contains(&format!("proofwalk resume {id}")),
        "{}",
        said.err
    );
    assert!(
        said.err.contains("proofwalk practice --level 1 --seed 3"),
        "{}",
        said.err
    );

    // Without an id: there is no call at a house that would go before it.
    let mut call = Spoken::start(scene.command(&["resume", "--plain"]));
    let said = asks(&call);
    assert!(
        said.contains("Seed 3, level 1") && said.contains("Practice, 3 min so far"),
        "{said}"
    );
    let mut lines = ["stop I hand it on", "yes", "close"].into_iter();
    call.say(lines.next().unwrap());
    let said = plays(call, |_| lines.next().unwrap().to_owned()).exits(0);
    assert!(
        below(&said.out, "WHAT IT TOOK")[0].starts_with("3 min; "),
        "{}",
        said.out
    );
    assert!(scene.verify(&id).exits(0).out.contains("whole, closed"));
    let closed = scene.run(&["resume", &id]).exits(2);
    assert!(closed.err.contains("is closed"), "{}", closed.err);
}

#[test]
fn a_list_takes_a_number_of_two_digits_and_says_where_there_is_none() {
    let scene = scene();
    let mut call = practice(&scene, &["--seed", "3"]);
    asks(&call);
    call.say("2");
    asks(&call);
    call.say("99");
    assert!(asks(&call).contains("the list has no such number"));
    call.say("10");
    let said = asks(&call);
    assert!(said.contains("What of this: air?"), "{said}");
    // What stands in a list is found by its words, too, where nothing else is called so.
    call.say("to the list");
    let said = asks(&call);
    assert!(said.contains("29 names the fault."), "{said}");
    call.say("name the fault");
    let said = asks(&call);
    assert!(said.contains("What is the fault about?"), "{said}");
    call.ends().exits(0);
}

#[test]
fn a_seed_that_is_none_is_told_how_to_mend() {
    for seed in ["-1", "x", "1.5"] {
        for command in [&["practice"][..], &["rehearse", "--bench"]] {
            let said = run(&[command, &["--seed", seed]].concat()).exits(2);
            assert!(
                said.err
                    .contains("write a whole number from 0 to 18446744073709551615, such as 42"),
                "{command:?} {seed}: {}",
                said.err
            );
        }
    }
}

#[test]
fn a_library_of_ones_own_is_named_where_its_furnace_is_to_be_had_again() {
    let scene = scene();
    scene.write("house rules/library.yaml", "library: rules\n");
    let overlay = scene
        .temp
        .path()
        .join("house rules")
        .to_string_lossy()
        .into_owned();
    let call = practice(&scene, &["--seed", "3", "--overlay", &overlay]);
    asks(&call);
    let said = call.ends().exits(0);
    assert!(
        squeezed(&said.err).contains(&format!("--overlay '{overlay}'")),
        "{}",
        said.err
    );
    // Taken up, nobody knows any more where it lay.
    let call = Spoken::start(scene.command(&["resume", "--plain"]));
    asks(&call);
    let said = call.ends().exits(0);
    assert!(
        squeezed(&said.err).contains("from the start, with `--library` for residential-gas-furnace 2026.1 and its overlays: proofwalk practice"),
        "{}",
        said.err
    );
}

#[test]
fn a_shut_down_and_nothing_found_are_not_proven_by_nothing() {
    let scene = scene();
    for (words, outcome) in [
        (
            "gas valve leaks through",
            "Handed on or left off, but not for what was wrong",
        ),
        ("no fault found", "Missed: left as if nothing were wrong"),
    ] {
        let call = practice(&scene, &["--seed", "9"]);
        let mut lines = ["2", words, "1", "all the same", "close"].into_iter();
        let said = plays(call, |asked| match lines.next().unwrap() {
            "all the same" => number_of(asked, "Name it all the same"),
            line => line.to_owned(),
        })
        .exits(0);
        assert_eq!(below(&said.out, "WHAT YOU FOUND")[0], outcome);
        let (own, _) = said.out.split_once("A PROVEN WAY").unwrap();
        assert!(!own.contains("Verdict, proven"), "{own}");
        assert_eq!(below(&said.out, "DANGERS OVERLOOKED").len(), 5, "{}", said.out);
    }
}

#[test]
fn a_level_or_a_library_that_there_is_not_is_refused() {
    run(&["practice", "--level", "4"]).exits(2);
    let scene = scene();
    let other = scene.write("other/library.yaml", "library: other\nedition: 1\ntitle: Other\n");
    let folder = other.trim_end_matches("/library.yaml");
    scene.run(&["practice", "--library", folder]).exits(2);
}
