//! A small season, walked by the program and audited by it.

use serde_json::Value;

use crate::common::scene::{HALF, Scene, run, scenario, scene};

/// Walks a worked call at a time, at an equipment.
fn walk(scene: &Scene, day: &str, technician: &str, equipment: Option<&str>, answers: &str, code: i32) {
    let text = std::fs::read_to_string(answers).unwrap();
    let tree = text.lines().find_map(|line| line.strip_prefix("tree: ")).unwrap();
    let mut arguments = vec![
        "walk",
        tree,
        "--answers",
        answers,
        "--technician",
        technician,
        "--clock",
        day,
    ];
    arguments.extend(
        equipment
            .into_iter()
            .flat_map(|equipment| ["--equipment", equipment]),
    );
    scene.run(&arguments).exits(code);
}

#[test]
fn a_season_is_counted_exactly() {
    let scene = scene();
    let worked = |day: &str, technician: &str, equipment: &str, name: &str| {
        walk(&scene, day, technician, Some(equipment), &scenario(name), 0);
    };
    // A valve condemned; a week later it was the board.
    worked("2026-01-05T10:00:00Z", "ana", "101", "valve-lets-the-gas-fall");
    worked("2026-01-12T10:00:00Z", "ben", "101", "board-lets-the-valve-go");
    // Thirty days to the second, and a second more.
    worked(
        "2026-01-06T10:00:00Z",
        "ana",
        "102",
        "loaded-filter-opens-the-limit",
    );
    worked("2026-02-05T10:00:00Z", "ana", "102", "nothing-found-runs-through");
    worked("2026-01-07T10:00:00Z", "ben", "103", "igniter-open-cold");
    worked("2026-02-06T10:00:01Z", "ben", "103", "nothing-found-runs-through");
    worked("2026-01-09T10:00:00Z", "ben", "104", "no-manometer-ends-unproven");
    walk(
        &scene,
        "2026-01-08T10:00:00Z",
        "ana",
        None,
        &scenario("nothing-found-runs-through"),
        0,
    );
    let half = scene.write("half.yaml", HALF);
    walk(&scene, "2026-01-10T10:00:00Z", "ben", Some("105"), &half, 1);

    let folder = scene.sessions();
    let said = run(&["audit", folder.to_str().unwrap(), "--format", "json"]).exits(0);
    let json: Value = serde_json::from_str(&said.out).unwrap();
    assert_eq!(
        (json["calls"].as_u64(), json["closed"].as_u64()),
        (Some(9), Some(8))
    );
    assert_eq!(
        (json["damaged"].as_u64(), json["unproven"].as_u64()),
        (Some(0), Some(1))
    );
    let callbacks = &json["callbacks"];
    assert_eq!(
        (callbacks["count"].as_u64(), callbacks["of"].as_u64()),
        (Some(2), Some(7))
    );
    // By hand: the calls were followed for 0, 1, 7 (came back), 25, 28, 30 (came back) and 30 days and a second (came back): of
    // five still followed at seven days one came back, of two at thirty one.
    let expected = 1.0 - (4.0 / 5.0) * (1.0 / 2.0);
    assert!(
        (callbacks["at_30_days"].as_f64().unwrap() - expected).abs() < 1e-12,
        "{callbacks}"
    );
    let suspected = json["suspected_misdiagnoses"].as_array().unwrap();
    assert_eq!(suspected.len(), 1);
    assert_eq!(suspected[0]["condemned"], "gas_valve");
    assert_eq!(suspected[0]["then"], "board_drops_valve_output");
    assert_eq!(suspected[0]["equipment"], "101");
    let by: Vec<_> = json["by_technician"]
        .as_array()
        .unwrap()
        .iter()
        .map(|row| row["calls"].as_u64())
        .collect();
    assert_eq!(by, [Some(4), Some(5)]);

    // What it names can be opened.
    let first = suspected[0]["first"].as_str().unwrap();
    let report = scene.run(&["report", first]).exits(0);
    assert!(report.out.contains("ana"), "{}", report.out);
    // With a shorter window, a week is too long.
    let said = run(&[
        "audit",
        folder.to_str().unwrap(),
        "--window",
        "6",
        "--format",
        "json",
    ])
    .exits(0);
    let json: Value = serde_json::from_str(&said.out).unwrap();
    assert_eq!(
        (json["window_days"].as_u64(), json["callbacks"]["count"].as_u64()),
        (Some(6), Some(0))
    );
}
