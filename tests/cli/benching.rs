//! `rehearse --bench`: what it prints, and what it exits with.

use serde_json::Value;

use crate::common::scene::{run, scene};

fn json(arguments: &[&str]) -> Value {
    let all = [&["rehearse", "--bench", "--format", "json"], arguments].concat();
    let said = run(&all);
    assert_eq!(said.code, Some(0), "{}", said.err);
    serde_json::from_str(&said.out).unwrap()
}

fn number(value: &Value, key: &str) -> u64 {
    value[key]
        .as_u64()
        .unwrap_or_else(|| panic!("`{key}` is a number in {value}"))
}

#[test]
fn the_json_adds_up() {
    let all = json(&[
        "--only", "filter", "--only", "none", "--calls", "20", "--seed", "3",
    ]);
    assert_eq!(number(&all, "seed"), 3);
    let faults = all["by_fault"].as_array().unwrap();
    assert_eq!(number(&all, "faults"), faults.len() as u64);
    let outcomes = ["right", "referred", "missed", "wrong"];
    for one in faults.iter().chain([&all]) {
        let sum: u64 = outcomes.iter().map(|key| number(one, key)).sum();
        assert_eq!(sum, number(one, "calls"), "{one}");
    }
    for key in outcomes.iter().chain(&["calls"]) {
        let sum: u64 = faults.iter().map(|fault| number(fault, key)).sum();
        assert_eq!(sum, number(&all, key), "{key}");
    }
    for fault in faults {
        let ended: u64 = fault["ended"]
            .as_object()
            .unwrap()
            .values()
            .filter_map(Value::as_u64)
            .sum();
        assert_eq!(ended, number(fault, "calls"), "{fault}");
    }
    let filter = faults
        .iter()
        .find(|fault| fault["fault"] == "filter_loaded")
        .unwrap();
    assert_eq!(
        filter["part"],
        Value::Null,
        "a filter is a condition, no part of the furnace"
    );
    assert!(number(filter, "right") > 10, "{filter}");
    assert!(
        faults.iter().any(|fault| fault["fault"] == "none"),
        "a sound furnace is called to as well"
    );
}

#[test]
fn a_part_chooses_its_faults_and_a_name_only_itself() {
    let valve = json(&["--only", "gas_valve", "--calls", "1"]);
    let parts: Vec<_> = valve["by_fault"]
        .as_array()
        .unwrap()
        .iter()
        .map(|fault| &fault["part"])
        .collect();
    assert!(
        parts.len() > 2 && parts.iter().all(|part| *part == "gas_valve"),
        "{parts:?}"
    );
    let one = json(&["--only", "vent_blocked", "--calls", "1"]);
    assert_eq!(number(&one, "faults"), 1);
}

#[test]
fn one_call_alone_is_shown_with_its_walk() {
    let said = run(&[
        "rehearse",
        "--bench",
        "--only",
        "filter_loaded",
        "--seed",
        "1",
        "--calls",
        "1",
    ]);
    assert_eq!(said.code, Some(0), "{}", said.err);
    assert!(said.out.contains("filter_loaded (severity"), "{}", said.out);
    assert!(said.out.contains("safe-to-start/smell"), "{}", said.out);
    assert!(
        said.out.lines().all(|line| line.chars().count() <= 80),
        "{}",
        said.out
    );
    assert!(
        said.out
            .ends_with("1 call, 1 right, 0 referred, 0 missed, 0 wrong\n"),
        "{}",
        said.out
    );
}

#[test]
fn a_missed_call_says_how_to_play_it_again_and_plays_the_same() {
    let many = json(&["--only", "exchanger_cracked", "--calls", "40"]);
    let missed = &many["shown"][0];
    let (seed, ended) = (number(missed, "seed").to_string(), &missed["ended"]);
    let again = missed["again"].as_str().unwrap();
    assert_eq!(
        again,
        format!("proofwalk rehearse --bench --only exchanger_cracked --seed {seed} --calls 1")
    );
    let one = json(&["--only", "exchanger_cracked", "--seed", &seed, "--calls", "1"]);
    assert_eq!(one["shown"][0]["walk"], missed["walk"]);
    assert_eq!(&one["shown"][0]["ended"], ended);
}

#[test]
fn a_good_part_condemned_fails_the_run() {
    let scene = scene();
    scene.write("overlay/library.yaml", "library: hasty\n");
    // Whoever changes the board because nothing moves.
    scene.write(
        "overlay/no-heat.yaml",
        "tree: no-heat\ntitle: No heat\ncomplaint: No heat\nstart: look\nsteps:\n  look: { observe: inducer, choices: { \
         runs: fine, silent: fuse, hums: fine } }\n  fuse: { verdict: fuse_blown_once, because: So. }\n  fine: { verdict: \
         nothing_found, because: So. }\n",
    );
    let overlay = scene.temp.path().join("overlay");
    let overlay = overlay.to_str().unwrap();
    let said = run(&[
        "rehearse",
        "--bench",
        "--overlay",
        overlay,
        "--only",
        "breaker_tripped",
        "--calls",
        "30",
    ]);
    assert_eq!(said.code, Some(1), "{}{}", said.out, said.err);
    assert!(
        said.out.contains("wrong: no-heat with breaker_tripped"),
        "{}",
        said.out
    );
    assert!(said.out.contains("--only breaker_tripped --seed"), "{}", said.out);
}

#[test]
fn a_library_of_one_complaint_is_called_with_it() {
    let scene = scene();
    for (name, text) in [
        ("library.yaml", "library: small\n"),
        (
            "registry/signs.yaml",
            "signs:\n  filter: { ask: The filter?, values: { clean: Clean, loaded: Loaded, missing: Missing } }\n",
        ),
        (
            "registry/faults.yaml",
            "faults:\n  filter_loaded: { title: Loaded, remedy: correct }\n  fine: { title: Fine, remedy: none }\n",
        ),
        (
            "no-heat.yaml",
            "tree: no-heat\ntitle: T\ncomplaint: C\nstart: look\nsteps:\n  look: { observe: filter, choices: { clean: fine, \
             loaded: bad, missing: fine } }\n  bad: { verdict: filter_loaded, because: So. }\n  fine: { verdict: fine, \
             because: So. }\n",
        ),
    ] {
        scene.write(&format!("library/{name}"), text);
    }
    let folder = scene.temp.path().join("library");
    let all = json(&[
        folder.to_str().unwrap(),
        "--only",
        "filter_loaded",
        "--calls",
        "5",
    ]);
    assert_eq!((number(&all, "calls"), number(&all, "right")), (5, 5), "{all}");
}

#[test]
fn what_cannot_be_walked_is_said() {
    let said = run(&["rehearse", "--bench", "--only", "nonsense"]);
    assert_eq!((said.code, said.out.as_str()), (Some(2), ""));
    assert!(
        said.err.contains("no simulated fault has `nonsense`"),
        "{}",
        said.err
    );
    let said = run(&["rehearse", "--bench", "--only", "none", "--pairs"]);
    assert_eq!((said.code, said.out.as_str()), (Some(2), ""));
    assert!(said.err.contains("leave out `--pairs`"), "{}", said.err);
    let scene = scene();
    scene.write("library/library.yaml", "library: pumps\n");
    scene.write(
        "library/registry/faults.yaml",
        "faults: { fine: { title: Fine, remedy: none } }\n",
    );
    scene.write(
        "library/hums.yaml",
        "tree: hums\ntitle: It hums\ncomplaint: It hums\nstart: fine\nsteps: { fine: { verdict: fine, because: So. } }\n",
    );
    let folder = scene.temp.path().join("library");
    let said = run(&["rehearse", folder.to_str().unwrap(), "--bench"]);
    assert_eq!((said.code, said.out.as_str()), (Some(2), ""));
    assert!(
        said.err
            .contains("asks for nothing that the simulated furnace has"),
        "{}",
        said.err
    );
    for alone in [["--calls", "3"], ["--seed", "3"]] {
        let said = run(&[&["rehearse"], &alone[..]].concat());
        assert_eq!(said.code, Some(2), "{alone:?} needs --bench: {}", said.err);
    }
}

#[test]
fn a_number_that_is_none_is_told_what_is_taken() {
    for (option, value, words) in [
        ("--calls", "1.5", "a whole number from 1 to 1000000, such as 100"),
        ("--calls", "99999999999999999999999", "from 1 to 1000000"),
        ("--calls", "0", "from 1 to 1000000"),
        ("--calls", "-3", "from 1 to 1000000"),
        ("--seed", "x", "a whole number from 0 to 18446744073709551615"),
        ("--seed", "18446744073709551616", "from 0 to 18446744073709551615"),
    ] {
        let said = run(&["rehearse", "--bench", option, value]).exits(2);
        assert!(said.err.contains(words), "{option} {value}: {}", said.err);
    }
    for level in ["4", "x", "-1"] {
        let said = run(&["practice", "--level", level]).exits(2);
        assert!(said.err.contains("take 1, 2 or 3"), "{}", said.err);
    }
    let said = run(&["picture", "no-heat", "--depth", "-1"]).exits(2);
    assert!(said.err.contains("a whole number of steps"), "{}", said.err);
}

#[test]
fn no_seed_follows_the_largest() {
    let largest = [
        "rehearse",
        "--bench",
        "--only",
        "filter_loaded",
        "--seed",
        "18446744073709551615",
    ];
    let said = run(&[&largest[..], &["--calls", "3"]].concat()).exits(2);
    assert!(
        said.err.contains("begin at 18446744073709551613 at most"),
        "{}",
        said.err
    );
    assert_eq!(said.out, "");
    run(&[&largest[..], &["--calls", "1"]].concat()).exits(0);
}
