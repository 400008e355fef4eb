//! Packed calls: every command reads them as it read their files.

use std::fs;
use std::process::{Command, Stdio};

use serde_json::Value;

use crate::common::scene::{HALF, PROGRAM, Said, Scene, run, scenario, scene};

const PACK: &str = "2026-01.sessions.zip";

/// Two calls of January, one of February and one that was left.
fn season() -> Scene {
    let scene = scene();
    for (day, name) in [
        ("2026-01-05T10:00:00Z", "valve-lets-the-gas-fall"),
        ("2026-01-12T10:00:00Z", "board-lets-the-valve-go"),
        ("2026-02-01T00:00:00Z", "nothing-found-runs-through"),
    ] {
        let file = scenario(name);
        let text = fs::read_to_string(&file).unwrap();
        let tree = text.lines().find_map(|line| line.strip_prefix("tree: ")).unwrap();
        let walk = [
            "walk",
            tree,
            "--answers",
            &file,
            "--equipment",
            "1",
            "--clock",
            day,
        ];
        scene.run(&walk).exits(0);
    }
    let half = scene.write("half.yaml", HALF);
    let walk = [
        "walk",
        "no-heat",
        "--answers",
        &half,
        "--clock",
        "2026-01-20T10:00:00Z",
    ];
    scene.run(&walk).exits(1);
    scene
}

fn audit(scene: &Scene) -> Value {
    let said = run(&["audit", scene.sessions().to_str().unwrap(), "--format", "json"]).exits(0);
    serde_json::from_str(&said.out).unwrap()
}

#[test]
fn every_command_reads_packed_calls_as_before() {
    let scene = season();
    let ids = scene.ids();
    let sessions = scene.sessions().to_str().unwrap().to_owned();
    let all = |scene: &Scene| {
        let mut said = vec![
            scene.run(&["sessions"]).exits(0).out,
            run(&["verify", &sessions]).exits(0).out,
        ];
        for id in &ids {
            for command in ["report", "brief", "replay"] {
                said.push(scene.run(&[command, id]).exits(0).out);
            }
        }
        said
    };
    let before = (all(&scene), audit(&scene));
    let files: Vec<Vec<u8>> = (ids.iter())
        .map(|id| fs::read(scene.sessions().join(format!("{id}.jsonl"))).unwrap())
        .collect();

    let said = scene.run(&["pack", "--month", "2026-01"]).exits(0);
    assert!(
        said.out.contains("2 sessions packed") && said.out.contains("2 of their own files removed"),
        "{said:?}"
    );
    assert_eq!(
        scene.ids(),
        ids[2..],
        "February's call and the open one have files of their own"
    );
    assert_eq!((all(&scene), audit(&scene)), before);
    let pack = scene.sessions().join(PACK);
    let verified = run(&["verify", pack.to_str().unwrap()]).exits(0);
    assert_eq!(verified.out.lines().count(), 2, "{}", verified.out);
    let resumed = scene.run(&["resume", &ids[0]]).exits(2);
    assert!(resumed.err.contains("closed and packed"), "{}", resumed.err);

    let said = run(&["pack", "--unpack", pack.to_str().unwrap()]).exits(0);
    assert!(said.out.contains("2 sessions unpacked"), "{said:?}");
    for (id, bytes) in ids.iter().zip(files) {
        assert_eq!(
            fs::read(scene.sessions().join(format!("{id}.jsonl"))).unwrap(),
            bytes
        );
    }
    assert!(!pack.exists());
}

#[test]
fn without_a_month_all_that_are_over_are_packed() {
    let scene = season();
    let said = scene.run(&["pack", "--keep"]).exits(0);
    assert_eq!(said.out.lines().count(), 2, "{}", said.out);
    assert_eq!(scene.ids().len(), 4, "their files are kept");
    scene.run(&["pack"]).exits(0);
    assert_eq!(scene.ids().len(), 1, "the open one has its file");
    let said = scene.run(&["pack"]).exits(0);
    assert!(
        said.out.is_empty() && said.err.contains("No closed session"),
        "{said:?}"
    );
    scene.run(&["pack", "--month", "2026-1"]).exits(2);
}

#[test]
fn a_damaged_pack_is_named_and_the_rest_read() {
    let scene = season();
    scene.run(&["pack"]).exits(0);
    let path = scene.sessions().join(PACK);
    let bytes = fs::read(&path).unwrap();
    fs::write(&path, &bytes[..bytes.len() / 2]).unwrap();
    let sessions = scene.sessions().to_str().unwrap().to_owned();
    let listed = scene.run(&["sessions"]).exits(1);
    assert!(
        listed.out.contains(PACK) && listed.out.contains("closed") && listed.out.contains("open"),
        "{}",
        listed.out
    );
    let verified = run(&["verify", &sessions]).exits(1);
    assert!(
        verified.out.contains(PACK) && verified.out.contains("whole, closed"),
        "{}",
        verified.out
    );
    let audited = run(&["audit", &sessions, "--format", "json"]).exits(1);
    let json: Value = serde_json::from_str(&audited.out).unwrap();
    assert_eq!(
        (json["calls"].as_u64(), json["damaged"].as_u64()),
        (Some(2), Some(1))
    );
    assert_eq!(json["unsound"][0]["session"], PACK);
    run(&["pack", "--unpack", path.to_str().unwrap()]).exits(1);
}

#[test]
fn a_month_whose_pack_is_damaged_is_named_and_the_others_are_packed() {
    let scene = season();
    fs::write(scene.sessions().join(PACK), "no pack").unwrap();
    let said = scene.run(&["pack"]).exits(1);
    assert!(said.err.contains("2026-01 is left as it is"), "{}", said.err);
    assert!(
        said.out.contains("2026-02.sessions.zip  1 session packed"),
        "{}",
        said.out
    );
    assert_eq!(fs::read(scene.sessions().join(PACK)).unwrap(), b"no pack");
}

#[test]
fn what_a_killed_run_left_behind_is_cleared_away() {
    let scene = season();
    let left = scene.sessions().join(".2025-01.sessions.zip.4242");
    fs::write(&left, "half a pack").unwrap();
    let held = fs::File::create(scene.sessions().join(".2025-02.sessions.zip.4243")).unwrap();
    held.try_lock().unwrap();
    let said = scene.run(&["pack", "--keep"]).exits(0);
    assert!(said.err.contains("Removed 1 half-written file"), "{}", said.err);
    assert!(!left.exists(), "nobody writes it any more");
    assert!(scene.sessions().join(".2025-02.sessions.zip.4243").exists());
}

#[test]
fn a_pack_is_unpacked_where_sessions_live() {
    let scene = season();
    scene.run(&["pack"]).exits(0);
    let ids = scene.ids();
    // By its bare name, beside itself.
    let sessions = scene.sessions().to_str().unwrap().to_owned();
    run(&["pack", "--unpack", PACK, "--sessions", &sessions, "--keep"]).exits(0);
    assert_eq!(scene.ids().len(), ids.len() + 2);
    // Into a folder elsewhere, with its library; the pack is kept.
    let elsewhere = scene.temp.path().join("elsewhere");
    let pack = scene.sessions().join(PACK);
    let into = elsewhere.to_str().unwrap();
    run(&["pack", "--unpack", pack.to_str().unwrap(), "--sessions", into]).exits(0);
    assert!(pack.exists());
    let verified = run(&["verify", into]).exits(0);
    assert_eq!(
        verified.out.matches("whole, closed").count(),
        2,
        "{}",
        verified.out
    );
}

#[test]
fn a_pack_that_a_disk_refuses_is_told_in_our_words_only() {
    let scene = season();
    let ids = scene.ids();
    let said: Said = Command::new("bash")
        .args(["-c", "ulimit -f 1; exec \"$0\" pack --sessions \"$1\""])
        .arg(PROGRAM)
        .arg(scene.sessions())
        .stdin(Stdio::null())
        .output()
        .unwrap()
        .into();
    let said = said.exits(3);
    let refused = said.err.lines().filter(|line| line.contains("File too large"));
    assert!(
        refused.count() == 1 && said.err.starts_with("proofwalk: ") && !said.err.contains("ZipWriter"),
        "{}",
        said.err
    );
    assert_eq!(scene.ids(), ids);
}
