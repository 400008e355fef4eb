//! The page for a browser and the weights, as the program prints them.

use std::path::Path;

use crate::common::scene::{Scene, run, scenario, scene};

/// Calls at one equipment each, a season ago, and one lately by which they are known to have had their days.
fn season(scene: &Scene) {
    let calls = [
        ("2026-01-05T10:00:00Z", "201", "valve-lets-the-gas-fall"),
        ("2026-01-06T10:00:00Z", "202", "valve-lets-the-gas-fall"),
        ("2026-01-07T10:00:00Z", "203", "board-lets-the-valve-go"),
        ("2026-03-09T10:00:00Z", "204", "board-lets-the-valve-go"),
    ];
    for (day, equipment, name) in calls {
        let answers = scenario(name);
        let text = std::fs::read_to_string(&answers).unwrap();
        let tree = text.lines().find_map(|line| line.strip_prefix("tree: ")).unwrap();
        let arguments = [
            "walk",
            tree,
            "--answers",
            &answers,
            "--technician",
            "ana",
            "--clock",
            day,
            "--equipment",
            equipment,
        ];
        scene.run(&arguments).exits(0);
    }
}

#[test]
fn the_page_for_a_browser_is_one_well_formed_file() {
    let scene = scene();
    season(&scene);
    let said = run(&["audit", scene.sessions().to_str().unwrap(), "--format", "html"]).exits(0);
    let options = roxmltree::ParsingOptions {
        allow_dtd: true,
        ..Default::default()
    };
    let page = roxmltree::Document::parse_with_options(&said.out, options).unwrap();
    let heading = page.descendants().find(|node| node.has_tag_name("h1")).unwrap();
    let heading: String = heading.descendants().filter_map(|node| node.text()).collect();
    assert!(heading.starts_with("Audit of 4 calls"), "{heading}");
    assert!(said.out.contains("does not assign liability"));
}

#[test]
fn learned_weights_are_an_overlay_that_checks_and_says_what_it_replaced() {
    let scene = scene();
    season(&scene);
    let folder = scene.sessions();
    let said = run(&["audit", folder.to_str().unwrap(), "--format", "weights"]).exits(0);
    assert!(
        said.out.contains("learned from 3 verdicts that held"),
        "{}",
        said.out
    );
    assert!(said.out.contains("# TOO FEW"), "{}", said.out);
    let faults = scene.write("faults.yaml", &said.out);
    let overlay = Path::new(&faults).with_file_name("learned");
    std::fs::create_dir_all(overlay.join("registry")).unwrap();
    std::fs::rename(&faults, overlay.join("registry/faults.yaml")).unwrap();
    let check = run(&[
        "check",
        "--overlay",
        overlay.to_str().unwrap(),
        "--format",
        "json",
    ])
    .exits(0);
    let json: serde_json::Value = serde_json::from_str(&check.out).unwrap();
    let replaced = json["replaced"].as_array().unwrap();
    let named = |name: &str| {
        replaced
            .iter()
            .any(|row| row["kind"] == "fault" && row["name"] == name)
    };
    assert!(named("board_drops_valve_output"), "{}", check.out);

    // What was learned from these calls before would come on top of them.
    let plain = scene.write(
        "plain/registry/faults.yaml",
        "faults:\n  rusted_through: { title: Rusted through, remedy: correct }\n",
    );
    let plain = Path::new(&plain).ancestors().nth(2).unwrap();
    let twice = |overlay: &Path| {
        let weights = ["audit", folder.to_str().unwrap(), "--format", "weights"];
        let said = run(&[&weights[..], &["--overlay", overlay.to_str().unwrap()]].concat()).exits(0);
        said.err
            .lines()
            .filter(|line| line.contains("count twice"))
            .count()
    };
    assert_eq!((twice(&overlay), twice(plain)), (1, 0));
}

#[test]
fn weights_of_a_library_that_cannot_be_used_are_refused_before_anything_is_read() {
    let scene = scene();
    let folder = scene.sessions();
    let folder = folder.to_str().unwrap();
    run(&[
        "audit",
        folder,
        "--format",
        "weights",
        "--library",
        "no-such-folder",
    ])
    .exits(2);
}
