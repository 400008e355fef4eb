//! An export holds what the audit was made of: its SQL, run by others, comes to the same numbers.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use proofwalk::store::SessionFolder;
use proofwalk::walk::{Event, Voiding};

use crate::common::scene::{Said, Scene, root, run, scene};
use crate::told::{Told, done, keep, told};

/// Calls of several months, equipment and technicians, with everything that is counted, in any order.
fn season() -> Vec<Told> {
    let mut calls = Vec::new();
    let mut seed = 7_u64;
    let mut any = move |of: u64| {
        // Knuth's multiplier (The Art of Computer Programming, volume 2, 3.3.4): the same calls in every run.
        seed = seed
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (seed >> 33) % of
    };
    let faults = [
        "valve_dead",
        "valve_stuck",
        "board_dead",
        "filter_loaded",
        "gas_off",
        "leak",
        "nothing_found",
    ];
    for number in 0..150 {
        let (month, day, hour) = (1 + any(4), 1 + any(28), any(24));
        let time = format!(
            "2026-{month:02}-{day:02}T{hour:02}:00:00.{:09}Z",
            any(1_000_000_000)
        );
        let id = format!("c{:03}-{number}", any(1000));
        let equipment = format!("e{}", any(30));
        let mut call = told(&id, &time)
            .equipment_of(&equipment)
            .by(["ana", "ben", "kim"][any(3) as usize]);
        if any(3) == 0 {
            call = call.on("no-cool");
        }
        if any(8) == 0 {
            call = call.equipment(None);
        }
        call = call
            .left_open("door")
            .after(90)
            .reading("voltage", &format!("{}.5 V", any(40)), any(4) == 0);
        call = call.after(60 * any(2000) as i64);
        call = match any(4) {
            0 => call.refused("door"),
            1 if any(3) == 0 => call,
            _ => call.put_back("door"),
        };
        let fault = faults[any(faults.len() as u64) as usize];
        calls.push(match any(8) {
            0 => call.insisted(fault).closed(),
            1 => call.unproven().closed(),
            2 => call.outcome("done").closed(),
            3 => call,
            _ => call.verdict(fault).closed(),
        });
    }
    // To the last instant of the window, and past it.
    calls.push(done("edge-a", "2026-01-01T10:00:00Z").equipment_of("edge"));
    calls.push(done("edge-b", "2026-01-31T10:00:00Z").equipment_of("edge"));
    calls.push(done("edge-c", "2026-03-02T10:00:00.000000001Z").equipment_of("edge"));
    // At one instant, and one within another.
    calls.push(done("same-a", "2026-02-01T10:00:00Z").equipment_of("same"));
    calls.push(done("same-b", "2026-02-01T10:00:00Z").equipment_of("same"));
    calls.push(
        told("long", "2026-02-01T10:00:00Z")
            .equipment_of("within")
            .after(7200)
            .verdict("valve_dead")
            .closed(),
    );
    calls.push(done("short", "2026-02-01T11:00:00Z").equipment_of("within"));
    // A repair and a check within the hour, and one that came back all the same; of nobody who is named, and a moment too late.
    let visit = |name: &str, time: &str| done(&format!("visit-{name}"), time).equipment_of("visit");
    calls.push(visit("a", "2026-03-05T10:00:00Z").by("ana"));
    calls.push(visit("b", "2026-03-05T11:00:00Z").by("ana").on("no-cool"));
    calls.push(visit("c", "2026-03-09T10:00:00Z").by("ana"));
    calls.push(visit("d", "2026-03-09T11:00:00.000000001Z").by("ana"));
    calls.push(visit("e", "2026-05-09T10:00:00Z").by_nobody());
    calls.push(visit("f", "2026-05-09T10:02:00Z").by_nobody());
    // One that hangs together from call to call, one a colleague is in, and one of work that took the day.
    let chain = |name: &str, time: &str| told(&format!("chain-{name}"), time).equipment_of("chain");
    for (name, time) in [
        ("a", "2026-03-05T10:00:00Z"),
        ("b", "2026-03-05T10:40:00Z"),
        ("c", "2026-03-05T12:10:00Z"),
    ] {
        calls.push(chain(name, time).after(2700).verdict("leak").closed());
    }
    calls.push(
        chain("d", "2026-03-05T12:20:00Z")
            .by("lee")
            .verdict("leak")
            .closed(),
    );
    calls.push(chain("e", "2026-03-05T12:30:00Z"));
    calls.push(chain("f", "2026-03-05T13:20:00Z").verdict("valve_dead").closed());
    calls.push(
        chain("g", "2026-03-05T21:20:00Z")
            .on("prove-it")
            .verdict("leak")
            .closed(),
    );
    calls.push(
        chain("h", "2026-03-06T05:20:00.000000001Z")
            .on("prove-it")
            .verdict("leak")
            .closed(),
    );
    // Work that is proven: by whoever did it and by another, with something found on the way, and what comes back all the same.
    let work = |name: &str, time: &str| told(&format!("work-{name}"), time).equipment_of("work");
    let proof = |name: &str, time: &str| work(name, time).on("prove-it");
    calls.push(work("a", "2026-03-05T10:00:00Z").verdict("valve_dead").closed());
    calls.push(proof("b", "2026-03-05T10:30:00Z").outcome("proved").closed());
    calls.push(proof("c", "2026-03-07T10:30:00Z").by("lee").unproven().closed());
    calls.push(work("d", "2026-03-09T10:00:00Z").verdict("board_dead").closed());
    calls.push(
        proof("e", "2026-03-10T10:30:00Z")
            .verdict("filter_loaded")
            .closed(),
    );
    calls.push(
        proof("f", "2026-03-11T10:30:00Z")
            .noted("leak")
            .outcome("proved")
            .closed(),
    );
    calls.push(
        proof("g", "2026-03-12T10:30:00Z")
            .equipment(None)
            .outcome("proved")
            .closed(),
    );
    calls.push(proof("h", "2026-03-13T10:30:00Z").verdict("nothing_found"));
    // Exactly as many as a rate needs to say anything.
    for day in 1..=20 {
        let call = done(
            &format!("twenty-{day:02}"),
            &format!("2026-05-{day:02}T10:00:00Z"),
        );
        calls.push(call.by("lee").equipment_of("twenty"));
    }
    // Followed for the whole window to the last instant, of which the archive is the end.
    let held = told("held", "2026-05-31T00:00:00Z")
        .equipment_of("held")
        .verdict("leak")
        .closed();
    calls.push(held);
    // A borderline reading that was taken again.
    let again = Event::Voided {
        data: vec!["voltage".to_owned()],
        why: Voiding::Retake,
    };
    let retaken = told("retaken", "2026-06-30T00:00:00Z")
        .equipment(None)
        .reading("voltage", "20.1 V", true);
    calls.push(
        retaken
            .then(again)
            .reading("voltage", "24.0 V", false)
            .verdict("valve_dead")
            .closed(),
    );
    // By a clock that is doubted, after another call and by itself.
    calls.push(done("before", "2026-06-20T10:00:00Z").equipment_of("ahead"));
    calls.push(done("ahead", "2099-01-01T10:00:00Z").equipment_of("ahead"));
    // The same in the past: one that nothing follows, one that the season does, one with its callback, and one whose clock was put
    // right while it was open.
    calls.push(done("behind-a", "1970-01-01T00:00:10Z").equipment_of("behind"));
    calls.push(done("behind-b", "1970-01-01T00:00:20Z").equipment_of("twenty"));
    calls.push(done("behind-c", "1971-01-01T00:00:00Z").equipment_of("soon"));
    calls.push(done("behind-d", "1971-01-05T00:00:00Z").equipment_of("soon"));
    let right = told("behind-e", "1970-01-01T00:00:00Z")
        .equipment_of("right")
        .after(1_769_900_000);
    calls.push(right.verdict("leak").closed());
    // By clocks that went back: from a year ahead, from before all others, and to before all others.
    calls.extend(gone_back());
    calls
}

/// Calls whose clocks went back while they were open.
fn gone_back() -> Vec<Told> {
    let year = 365 * 24 * 60 * 60;
    let back = |name: &str, time: &str, ahead: i64, back: i64| {
        let call = told(&format!("back-{name}"), time)
            .equipment_of("back")
            .after(ahead);
        call.measured("voltage", "24.0 V")
            .after(-back)
            .verdict("leak")
            .closed()
    };
    vec![
        back("a", "2026-05-25T10:00:00Z", year, year - 60),
        back("b", "2025-12-20T10:00:00Z", 60, 30),
        back("c", "2026-02-10T10:00:00Z", 60, year),
    ]
}

fn written(scene: &Scene, calls: &[Told]) -> String {
    let folder = SessionFolder::open(scene.sessions()).unwrap();
    let library = keep(&folder);
    for call in calls {
        call.clone().walked_with(library.clone()).write(&folder);
    }
    scene.sessions().to_str().unwrap().to_owned()
}

fn path(scene: &Scene, name: &str) -> String {
    scene.temp.path().join(name).to_str().unwrap().to_owned()
}

fn export(sessions: &str, out: &str, window: &str) -> Said {
    let now = ["--clock", "2026-07-01T00:00:00Z"];
    let how = ["--export", out, "--window", window, "--format", "json"];
    run(&[&["audit", sessions], &how[..], &now[..]].concat())
}

/// Every file below a folder, by its path in it.
fn files(folder: &str) -> Vec<String> {
    let all = walkdir::WalkDir::new(folder)
        .sort_by_file_name()
        .into_iter()
        .map(Result::unwrap);
    let files = all.filter(|entry| entry.file_type().is_file());
    let within = |path: &Path| path.strip_prefix(folder).unwrap().to_str().unwrap().to_owned();
    files.map(|entry| within(entry.path())).collect()
}

/// Exports a season with a window, and has a script of `tests/audit/sql` compare it.
fn compared(python: &Path, script: &str, window: &str) -> String {
    let scene = scene();
    let sessions = written(&scene, &season());
    compared_of(&scene, &sessions, python, script, window)
}

/// The same of a folder of sessions.
fn compared_of(scene: &Scene, sessions: &str, python: &Path, script: &str, window: &str) -> String {
    let (out, json) = (path(scene, "out"), path(scene, "audit.json"));
    let said = export(sessions, &out, window).exits(0);
    fs::write(&json, &said.out).unwrap();
    let script = root().join("tests/audit/sql").join(script);
    let output = Command::new(python)
        .arg("-B")
        .arg(script)
        .args([&out, &json])
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&output.stdout).into_owned();
    assert!(
        output.status.success(),
        "{said}{}",
        String::from_utf8_lossy(&output.stderr)
    );
    said
}

/// A Python that knows DuckDB: the one that `.ci/run` prepared, or the usual one; otherwise the test is skipped by name.
fn python_with_duckdb() -> Option<PathBuf> {
    let prepared = Path::new(env!("CARGO_TARGET_TMPDIR")).join("duckdb/bin/python");
    let knows = |python: &PathBuf| {
        let import = Command::new(python).args(["-c", "import duckdb"]).output();
        import.is_ok_and(|output| output.status.success())
    };
    let found = [prepared, PathBuf::from("python3")].into_iter().find(knows);
    if found.is_none() {
        assert!(
            std::env::var_os("PROOFWALK_NO_SKIP").is_none(),
            "DuckDB is missing: pip install duckdb"
        );
        eprintln!("skipped: DuckDB is missing (pip install duckdb)");
    }
    found
}

#[test]
fn duckdb_says_what_the_program_says() {
    let Some(python) = python_with_duckdb() else {
        return;
    };
    for window in ["30", "7", "1"] {
        let said = compared(&python, "with_duckdb.py", window);
        let values: u32 = said.split_once(' ').unwrap().0.parse().unwrap();
        assert!(values > 200, "{said}");
    }
}

#[test]
fn duckdb_says_of_the_demo_season_what_the_program_says() {
    let Some(python) = python_with_duckdb() else {
        return;
    };
    let sessions = root().join("demo-sessions");
    compared_of(
        &scene(),
        sessions.to_str().unwrap(),
        &python,
        "with_duckdb.py",
        "30",
    );
}

#[test]
fn duckdb_says_the_same_where_every_clock_went_back() {
    let Some(python) = python_with_duckdb() else {
        return;
    };
    let scene = scene();
    let sessions = written(&scene, &gone_back());
    compared_of(&scene, &sessions, &python, "with_duckdb.py", "30");
}

#[test]
#[ignore = "needs Java and Spark: tests/audit/spark installs it and runs this"]
fn spark_says_what_the_program_says() {
    let python = std::env::var_os("PROOFWALK_SPARK").expect("tests/audit/spark runs this");
    println!("{}", compared(Path::new(&python), "with_spark.py", "30"));
}

#[test]
fn a_call_lies_in_the_month_it_was_opened_in_and_every_table_can_be_read() {
    let scene = scene();
    let calls = [
        done("a", "2026-01-31T23:59:59Z"),
        done("b", "2026-02-01T00:30:00+01:00"),
        told("c", "2026-02-01T00:00:00Z")
            .measured("voltage", "24.1 V")
            .verdict("valve_dead"),
    ];
    let sessions = written(&scene, &calls);
    let out = path(&scene, "out");
    let said = export(&sessions, &out, "30").exits(0);
    assert!(said.err.contains("3 calls exported"), "{}", said.err);
    let folders: Vec<String> = (files(&out).iter())
        .map(|file| {
            file.rsplit_once('/')
                .map_or(file.clone(), |(folder, _)| folder.to_owned())
        })
        .collect();
    let of = |name: &str| {
        folders
            .iter()
            .filter(|folder| folder.starts_with(name))
            .cloned()
            .collect::<Vec<_>>()
    };
    assert_eq!(of("calls/"), ["calls/month=2026-01", "calls/month=2026-02"]);
    assert_eq!(of("readings/"), ["readings/month=2026-02"]);
    for table in ["not_taken/", "put_backs/", "stays/", "noted/"] {
        assert_eq!(of(table).len(), 1, "{table}");
    }
    assert_eq!(of("audit.sql"), ["audit.sql"]);
}

#[test]
fn nothing_is_written_over_and_nothing_is_left_half_done() {
    let scene = scene();
    let sessions = written(&scene, &[done("a", "2026-01-01T10:00:00Z")]);
    let out = path(&scene, "out");
    fs::create_dir(&out).unwrap();
    export(&sessions, &out, "30").exits(0);
    let before = files(&out);
    let said = export(&sessions, &out, "30").exits(2);
    assert!(
        said.err.contains("nothing is written over it") && said.out.is_empty(),
        "{said:?}"
    );
    assert_eq!(files(&out), before);

    let file = path(&scene, "file");
    fs::write(&file, "mine").unwrap();
    export(&sessions, &file, "30").exits(2);
    assert_eq!(fs::read_to_string(&file).unwrap(), "mine");
    let said = export(&sessions, &path(&scene, "not/there"), "30").exits(3);
    assert!(said.err.contains("nothing was exported"), "{said:?}");
    let left = fs::read_dir(scene.temp.path())
        .unwrap()
        .map(|entry| entry.unwrap().file_name());
    assert!(
        left.into_iter()
            .all(|name| !name.to_str().unwrap().contains(".part-"))
    );
}

#[test]
fn no_calls_are_said_and_leave_no_folder() {
    let scene = scene();
    let sessions = written(&scene, &[]);
    let out = path(&scene, "out");
    let said = export(&sessions, &out, "30").exits(0);
    assert!(said.err.contains("No call to export"), "{}", said.err);
    assert!(!Path::new(&out).exists());
}

#[test]
fn what_an_interrupted_export_left_is_named_and_stays() {
    let scene = scene();
    let sessions = written(&scene, &[done("a", "2026-01-01T10:00:00Z")]);
    let out = path(&scene, "out");
    let left = path(&scene, "out.part-019a00d8-ce80-7d91-91df-1f53951d5e99");
    fs::create_dir(&left).unwrap();
    let said = export(&sessions, &out, "30").exits(0);
    let named = said.err.lines().find(|line| line.starts_with(&left));
    assert!(
        named.is_some_and(|line| line.contains("interrupted") && line.contains("may be removed")),
        "{}",
        said.err
    );
    assert!(said.err.contains("1 call exported to "), "{}", said.err);
    assert!(Path::new(&left).is_dir());
}
