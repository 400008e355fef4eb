//! `rehearse --bench --season`: a simulated company's sessions, and the demonstration that is kept in the repository.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use jiff::Timestamp;
use serde_json::Value;

use crate::common::scene::{root, run, scene};

/// What `demo-sessions/README.md` gives to make it again.
const DEMO: [&str; 4] = ["--calls", "60", "--seed", "6"];

fn season(library: Option<&Path>, at: &Path, how: &[&str]) {
    let mut arguments = vec!["rehearse"];
    arguments.extend(library.map(|library| library.to_str().unwrap()));
    arguments.extend(["--bench", "--season", at.to_str().unwrap()]);
    run(&[&arguments[..], how].concat()).exits(0);
}

/// Every file of a season, by its path in the folder.
fn files(at: &Path) -> BTreeMap<String, Vec<u8>> {
    let inside = [at.to_owned(), at.join("libraries")];
    let entries = inside.iter().flat_map(|folder| fs::read_dir(folder).unwrap());
    let paths = entries
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.is_file());
    paths
        .map(|path| {
            let name = path.strip_prefix(at).unwrap().to_str().unwrap().to_owned();
            (name, fs::read(&path).unwrap())
        })
        .collect()
}

/// Puts the one library that is kept in a folder of sessions back into files.
fn unpack_library(sessions: &Path, into: &Path) {
    let mut kept = fs::read_dir(sessions.join("libraries")).unwrap();
    let text = fs::read_to_string(kept.next().unwrap().unwrap().path()).unwrap();
    assert!(kept.next().is_none(), "one library is kept");
    let texts: BTreeMap<String, String> = serde_json::from_str(&text).unwrap();
    for (name, text) in texts {
        let path = into.join(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    }
}

#[test]
fn the_demonstration_is_whole() {
    let said = run(&["verify", root().join("demo-sessions").to_str().unwrap()]).exits(0);
    assert_eq!(said.out.lines().count(), 60);
    assert!(
        said.out.lines().all(|line| line.contains("  whole, ")),
        "{}",
        said.out
    );
}

#[test]
fn the_demonstration_is_made_again_byte_for_byte() {
    let scene = scene();
    let (library, again) = (scene.temp.path().join("library"), scene.temp.path().join("again"));
    let demo = root().join("demo-sessions");
    // With the library it was made with: trees that are mended later change nothing that was walked.
    unpack_library(&demo, &library);
    season(Some(&library), &again, &DEMO);
    let mut kept = files(&demo);
    let readme = kept.remove("README.md");
    assert!(readme.is_some_and(|text| String::from_utf8(text).unwrap().contains(&DEMO.join(" "))));
    let again = files(&again);
    let names = |files: &BTreeMap<String, Vec<u8>>| files.keys().cloned().collect::<Vec<_>>();
    assert_eq!(names(&kept), names(&again));
    for (name, bytes) in &kept {
        assert!(
            again[name] == *bytes,
            "{name} is another: make the demonstration again, as its README says"
        );
    }
}

#[test]
fn what_was_true_adds_up() {
    let scene = scene();
    let at = scene.temp.path().join("season");
    season(None, &at, &["--calls", "40", "--seed", "9"]);
    let lines = fs::read_to_string(at.join("truth.csv")).unwrap();
    let (columns, lines) = lines.split_once('\n').unwrap();
    let columns: Vec<&str> = columns.split(',').collect();
    let rows: Vec<BTreeMap<&str, &str>> = lines
        .lines()
        .map(|line| columns.iter().copied().zip(line.split(',')).collect())
        .collect();
    let sums: Value = serde_json::from_str(&fs::read_to_string(at.join("truth.json")).unwrap()).unwrap();
    let count = |column: &str, value: &str| rows.iter().filter(|row| row[column] == value).count();
    assert_eq!(rows.len(), 40);
    for outcome in ["right", "referred", "missed", "wrong"] {
        assert_eq!(sums[outcome], count("outcome", outcome), "{outcome}");
    }
    assert_eq!(sums["insisted"], count("insisted", "yes"));
    assert_eq!(sums["not_closed"], count("closed", "no"));
    assert_eq!(sums["skipped_test"], count("skipped_test", "yes"));
    assert_eq!(sums["left_open"], 40 - count("left_open", ""));
    assert_eq!(sums["called_again"], 40 - count("because_of", ""));
    for row in &rows {
        let session = fs::read_to_string(at.join(row["session"]).with_extension("jsonl")).unwrap();
        assert!(
            session.contains(r#""program":"simulated season""#),
            "nobody takes it for a field call"
        );
        let closed = session.lines().any(|line| line.contains(r#""event":"closed""#));
        assert_eq!(closed, row["closed"] == "yes", "{row:?}");
    }
}

/// When a session of a season was opened, and when its last event was.
fn times(at: &Path, session: &str) -> (Timestamp, Timestamp) {
    let text = fs::read_to_string(at.join(session).with_extension("jsonl")).unwrap();
    let time = |line: &str| {
        let line: Value = serde_json::from_str(line).unwrap();
        line["time"].as_str().unwrap().parse().unwrap()
    };
    (
        time(text.lines().next().unwrap()),
        time(text.lines().last().unwrap()),
    )
}

#[test]
fn who_is_careful_proves_most_repairs_right_after_them_and_others_seldom_do() {
    let scene = scene();
    let at = scene.temp.path().join("season");
    season(None, &at, &["--calls", "300", "--seed", "4"]);
    let truth = fs::read_to_string(at.join("truth.csv")).unwrap();
    let rows: Vec<Vec<&str>> = truth.lines().map(|line| line.split(',').collect()).collect();
    let proves = |row: &[&str]| row[4] == "leaving";
    for pair in rows.windows(2).filter(|pair| proves(&pair[1])) {
        let (repair, proof) = (&pair[0], &pair[1]);
        assert_eq!(repair[1..4], proof[1..4], "the same furnace and technician");
        assert_eq!(
            (repair[7], repair[10], proof[5]),
            ("right", "yes", "none"),
            "{pair:?}"
        );
        let (_, closed) = times(&at, repair[0]);
        let (opened, _) = times(&at, proof[0]);
        let minutes = opened.duration_since(closed).as_secs_f64() / 60.0;
        assert!((4.9..40.1).contains(&minutes), "{minutes}: {pair:?}");
    }
    let proofs = |careful: bool| {
        let rows = rows.iter().filter(|row| proves(row));
        rows.filter(|row| (row[3] == "careful") == careful).count()
    };
    assert!(
        proofs(true) >= 20 && (1..proofs(true) / 4).contains(&proofs(false)),
        "{} and {}",
        proofs(true),
        proofs(false)
    );
    let audit = run(&["audit", at.to_str().unwrap(), "--format", "json"]).exits(0);
    let audit: Value = serde_json::from_str(&audit.out).unwrap();
    let pairs = audit["callback_pairs"].as_array().unwrap();
    let is_proven = |session: &Value| {
        let row = rows.iter().find(|row| *session == row[0]).unwrap();
        proves(row) && row[6] == "proved"
    };
    assert!(
        !pairs
            .iter()
            .any(|pair| is_proven(&pair["first"]) || is_proven(&pair["second"]))
    );
}

#[test]
fn what_is_planted_happens_whatever_the_seed() {
    let scene = scene();
    for seed in ["1", "2", "3"] {
        let at = scene.temp.path().join(seed);
        season(None, &at, &["--calls", "20", "--seed", seed]);
        let truth = fs::read_to_string(at.join("truth.csv")).unwrap();
        let first = |furnace: &str| truth.lines().find(|line| line.contains(furnace)).unwrap();
        assert!(first("simulated-0001").contains(",board_drops_valve_output,gas_valve_falls,wrong,"));
        assert!(
            first("simulated-0002").contains(" door_switch") && first("simulated-0002").contains(",yes,no,"),
            "left open, in writing"
        );
        assert!(
            first("simulated-0003").contains("door_switch") && first("simulated-0003").contains(",no,no,")
        );
        assert!(
            first("simulated-0004").contains(",yes,yes,"),
            "closed without the test"
        );
        assert!(first("simulated-0005").contains(",t-05,writes,"));
    }
}

#[test]
fn one_call_is_one_call() {
    let scene = scene();
    let at = scene.temp.path().join("season");
    let one = [
        "rehearse",
        "--bench",
        "--season",
        at.to_str().unwrap(),
        "--calls",
        "1",
    ];
    let said = run(&one).exits(0);
    assert!(
        said.out.starts_with("1 call at 1 simulated furnace: "),
        "{}",
        said.out
    );
}

#[test]
fn a_season_is_not_written_among_other_sessions() {
    let scene = scene();
    let at = scene.temp.path().join("season");
    season(None, &at, &["--calls", "2"]);
    let said = run(&[
        "rehearse",
        "--bench",
        "--season",
        at.to_str().unwrap(),
        "--calls",
        "2",
    ])
    .exits(2);
    assert!(said.err.contains("holds sessions already"), "{}", said.err);
}

#[test]
fn a_season_tells_its_sums_as_json() {
    let scene = scene();
    let at = scene.temp.path().join("season");
    let said = run(&[
        "rehearse",
        "--bench",
        "--season",
        at.to_str().unwrap(),
        "--calls",
        "3",
        "--format",
        "json",
    ])
    .exits(0);
    let mut told: Value = serde_json::from_str(&said.out).unwrap();
    let files = told.as_object_mut().unwrap().remove("files").unwrap();
    let kept = |file: &str| fs::read_to_string(files[file].as_str().unwrap()).unwrap();
    assert_eq!(told, serde_json::from_str::<Value>(&kept("truth_json")).unwrap());
    assert_eq!(kept("truth_csv").lines().count(), 1 + 3);
    assert_eq!(files["sessions"], at.to_str().unwrap());
}
