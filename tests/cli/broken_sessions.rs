//! Sessions that something happened to.

use std::fs;

use proofwalk::store::Hash;

use crate::common::scene::{HALF, scenario, scene};

#[test]
fn a_torn_last_line_is_kept_aside_and_the_call_goes_on() {
    let scene = scene();
    let id = scene.left_open();
    let whole = fs::read(scene.file(&id)).unwrap();
    let start = whole[..whole.len() - 1]
        .iter()
        .rposition(|byte| *byte == b'\n')
        .unwrap()
        + 1;
    let torn = start + (whole.len() - start) / 2;
    fs::write(scene.file(&id), &whole[..torn]).unwrap();
    let listed = scene.run(&["sessions"]).exits(0);
    assert!(
        listed
            .out
            .contains(&format!("its last line is torn: {} bytes", torn - start)),
        "{}",
        listed.out
    );

    scene.run(&["resume", &id, "--plain"]).exits(0);
    let aside = scene.sessions().join(format!("{id}.torn-1"));
    assert_eq!(fs::read(aside).unwrap(), whole[start..torn]);
    let mended = fs::read_to_string(scene.file(&id)).unwrap();
    assert!(mended.as_bytes().starts_with(&whole[..start]));
    assert!(
        mended.contains(&format!(
            r#"{{"tail_cut":{{"bytes":{},"kept":"{id}.torn-1"}}}}"#,
            torn - start
        )),
        "{mended}"
    );
    scene.verify(&id).exits(0);
}

#[test]
fn a_flipped_byte_is_told_with_its_line_and_never_mended() {
    let scene = scene();
    let id = scene.left_open();
    let mut bytes = fs::read(scene.file(&id)).unwrap();
    let third = bytes
        .split_inclusive(|byte| *byte == b'\n')
        .take(2)
        .map(<[u8]>::len)
        .sum::<usize>();
    // Within the time of the third record: still JSON, still a time.
    let digit = third
        + String::from_utf8_lossy(&bytes[third..])
            .find("\"time\":\"20")
            .unwrap()
        + 11;
    bytes[digit] ^= 1;
    fs::write(scene.file(&id), &bytes).unwrap();

    let verified = scene.verify(&id).exits(1);
    assert!(verified.out.contains("DAMAGED  line 3"), "{}", verified.out);
    let listed = scene.run(&["sessions"]).exits(1);
    assert!(listed.out.contains("damaged  line 3"), "{}", listed.out);
    for command in ["resume", "report", "brief"] {
        let said = scene.run(&[command, &id]).exits(1);
        assert!(said.err.contains("line 3"), "{command}: {}", said.err);
        assert_eq!(said.out, "");
    }
    assert_eq!(fs::read(scene.file(&id)).unwrap(), bytes);
}

#[test]
fn a_change_of_the_last_line_is_found_too() {
    let scene = scene();
    let id = scene.left_open();
    let text = fs::read_to_string(scene.file(&id)).unwrap();
    let last = text.lines().count();
    let at = text.rfind("\"time\":\"20").unwrap() + 11;
    let other = if &text[at..=at] == "9" { "8" } else { "9" };
    fs::write(
        scene.file(&id),
        format!("{}{other}{}", &text[..at], &text[at + 1..]),
    )
    .unwrap();
    let verified = scene.verify(&id).exits(1);
    assert!(
        verified.out.contains(&format!("DAMAGED  line {last} ")),
        "{}",
        verified.out
    );
}

#[test]
fn a_damaged_session_hides_no_sound_one() {
    let scene = scene();
    let (bad, good) = (scene.closed(), scene.closed());
    let text = fs::read_to_string(scene.file(&bad)).unwrap();
    fs::write(scene.file(&bad), text.replacen("one_stage", "two_stage", 1)).unwrap();
    let verified = super::common::scene::run(&["verify", scene.sessions().to_str().unwrap()]).exits(1);
    assert!(
        verified.out.contains(&format!("{bad}  DAMAGED")),
        "{}",
        verified.out
    );
    assert!(
        verified.out.contains(&format!("{good}  whole, closed")),
        "{}",
        verified.out
    );
    scene.run(&["report", &good]).exits(0);
}

#[test]
fn what_does_not_follow_from_its_library_is_found_out_though_the_chain_holds() {
    let scene = scene();
    let answers = scenario("board-lets-the-valve-go");
    scene.run(&["walk", "no-heat", "--answers", &answers]).exits(0);
    let id = scene.id();
    let text = fs::read_to_string(scene.file(&id)).unwrap();
    // As it is, it chains to itself, and follows.
    assert_eq!(rechained(&text), text);
    scene.verify(&id).exits(0);

    // Every line is chained anew: the sums are in order, the story is not.
    let verified = |edits: &[(&str, &str)]| {
        let edited = edits.iter().fold(text.clone(), |text, (from, to)| {
            assert!(text.contains(from), "{from}");
            text.replace(from, to)
        });
        fs::write(scene.file(&id), rechained(&edited)).unwrap();
        scene.verify(&id).exits(1).out
    };
    let fault = r#"{"fault":"board_drops_valve_output"}"#;
    let ended = format!(r#"{{"ended":{{"verdict":{fault}}}}}"#);
    let other = ended.replace("board_drops_valve_output", "inducer_wire");
    let said = verified(&[(&ended, &other)]);
    let line = text.lines().position(|line| line.contains(&ended)).unwrap() + 1;
    let expected = format!(
        "DAMAGED  does not follow from its library: line {line} says {other}, where {ended} would have come"
    );
    assert!(said.contains(&expected), "{said}");
    let edition = verified(&[(r#""edition":""#, r#""edition":"1 of "#)]);
    assert!(edition.contains("line 1 names"), "{edition}");
    // Its rules may have been others.
    let program = format!(r#""program":"{}""#, env!("CARGO_PKG_VERSION"));
    let measured = (r#""value":1.9,"#, r#""value":24.0,"#);
    let said = verified(&[measured, (&program, r#""program":"0.0.9""#)]);
    assert!(said.contains("proofwalk 0.0.9 recorded it"), "{said}");

    for command in ["report", "brief", "replay"] {
        let said = scene.run(&[command, &id]).exits(1);
        // Whoever looks into it has to see it; nothing else is made of it.
        assert_eq!(said.out.is_empty(), command != "replay", "{command}");
        assert!(
            said.err.contains("does not follow from its library"),
            "{}",
            said.err
        );
    }

    // Where a line does not even fit, a replay goes up to there.
    let (before, took) = text.rsplit_once(r#"{"edge":"#).unwrap();
    let rest = took.trim_start_matches(|digit: char| digit.is_ascii_digit());
    let edited = format!(r#"{before}{{"edge":99999{rest}"#);
    fs::write(scene.file(&id), rechained(&edited)).unwrap();
    let said = scene.run(&["replay", &id]).exits(1);
    assert!(said.out.contains("What kind of furnace"), "{}", said.out);
    assert!(said.err.contains("99999"), "{}", said.err);
}

/// The lines with each `prev` made to fit the line before, and each `sum` its own line.
fn rechained(text: &str) -> String {
    const PREV: &str = "\"prev\":\"";
    const SUM: &str = ",\"sum\":\"";
    let mut head = Hash::ZERO.to_string();
    let mut lines = String::new();
    for line in text.lines() {
        let at = line.find(PREV).unwrap() + PREV.len();
        let end = line.rfind(SUM).unwrap();
        let body = format!("{}{head}{}", &line[..at], &line[at + head.len()..end]);
        let line = format!("{body}{SUM}{}\"}}", Hash::of(body.as_bytes()));
        head = Hash::of(line.as_bytes()).to_string();
        lines += &(line + "\n");
    }
    lines
}

#[test]
fn a_session_of_another_library_is_not_guessed_at() {
    let scene = scene();
    scene.write("overlay/library.yaml", "library: north\n");
    let overlay = scene.temp.path().join("overlay");
    let answers = scene.write("half.yaml", HALF);
    let overlay = ["--overlay", overlay.to_str().unwrap()];
    scene
        .run(&[&["walk", "no-heat", "--answers", &answers][..], &overlay].concat())
        .exits(1);
    let id = scene.id();
    fs::remove_dir_all(scene.sessions().join("libraries")).unwrap();
    for command in ["resume", "report"] {
        let said = scene.run(&[command, &id]).exits(2);
        assert!(said.err.contains("is not kept here"), "{}", said.err);
    }
    let said = super::common::scene::run(&["verify", scene.sessions().to_str().unwrap()]).exits(2);
    assert!(said.out.contains("NOT VERIFIED"), "{}", said.out);
}

#[test]
fn a_session_of_the_built_in_library_needs_none_beside_it() {
    let scene = scene();
    let id = scene.left_open();
    let kept = scene.sessions().join("libraries");
    fs::remove_dir_all(&kept).unwrap();
    scene.run(&["report", &id]).exits(0);
    scene.verify(&id).exits(0);
    assert!(!kept.exists(), "who only reads keeps nothing");
    // The next version has another one built in.
    scene.run(&["resume", &id, "--plain"]).exits(0);
    assert!(kept.exists());
}

#[test]
fn a_session_of_a_newer_program_is_refused_with_its_format() {
    let scene = scene();
    let id = scene.left_open();
    let text = fs::read_to_string(scene.file(&id)).unwrap();
    fs::write(
        scene.file(&id),
        text.replacen(r#""format":1"#, r#""format":99"#, 1),
    )
    .unwrap();
    let verified = scene.verify(&id).exits(1);
    assert!(verified.out.contains("99"), "{}", verified.out);
}

#[test]
fn what_is_no_file_of_ours_is_refused_and_left_alone() {
    let scene = scene();
    let id = scene.left_open();
    let outside = scene.write("outside", "precious");
    for (name, make) in [
        (
            "link",
            &(|at: &std::path::Path| std::os::unix::fs::symlink(&outside, at))
                as &dyn Fn(&std::path::Path) -> _,
        ),
        ("folder", &|at| fs::create_dir(at)),
        // Nobody ever writes into it: a program that waits for that waits for ever.
        ("pipe", &|at| {
            std::process::Command::new("mkfifo").arg(at).status().map(drop)
        }),
        ("second-name", &|at| fs::hard_link(scene.file(&id), at)),
    ] {
        let at = scene.file(name);
        make(&at).unwrap();
        let said = scene.run(&["resume", name, "--plain"]);
        assert!(matches!(said.code, Some(1 | 2)), "{name}: {said:?}");
        assert!(said.err.contains(name), "{}", said.err);
        if at.is_dir() {
            fs::remove_dir(&at)
        } else {
            fs::remove_file(&at)
        }
        .unwrap();
    }
    assert_eq!(fs::read(outside).unwrap(), b"precious");
    scene.verify(&id).exits(0);
}

#[test]
fn what_is_out_of_reach_is_not_called_damaged() {
    let scene = scene();
    let (far, near) = (scene.closed(), scene.closed());
    fs::remove_file(scene.file(&far)).unwrap();
    fs::create_dir(scene.file(&far)).unwrap();
    let listed = scene.run(&["sessions"]).exits(2);
    let line = |id: &str| listed.out.lines().find(|line| line.starts_with(id)).unwrap();
    assert!(
        line(&far).contains("unreadable  a folder stands where"),
        "{}",
        listed.out
    );
    assert!(
        line(&near).contains("closed") && !listed.out.contains("damaged"),
        "{}",
        listed.out
    );
    // A damaged one beside it is what the exit code tells.
    let text = fs::read_to_string(scene.file(&near)).unwrap();
    fs::write(scene.file(&near), text.replacen("one_stage", "two_stage", 1)).unwrap();
    let listed = scene.run(&["sessions"]).exits(1);
    assert!(
        listed.out.contains("unreadable") && listed.out.contains("damaged"),
        "{}",
        listed.out
    );
}

#[test]
fn a_file_that_may_not_be_read_says_whom_to_ask() {
    use std::os::unix::fs::PermissionsExt;
    let scene = scene();
    let id = scene.closed();
    fs::set_permissions(scene.file(&id), fs::Permissions::from_mode(0o000)).unwrap();
    if fs::read(scene.file(&id)).is_ok() {
        eprintln!("skipped: this user may read everything");
        return;
    }
    let listed = scene.run(&["sessions"]).exits(2);
    assert!(
        listed.out.contains("unreadable  cannot be read") && listed.out.contains("ask its owner"),
        "{}",
        listed.out
    );
    let audited =
        super::common::scene::run(&["audit", scene.sessions().to_str().unwrap(), "--format", "json"])
            .exits(1);
    assert!(audited.out.contains(r#""what":"unreadable""#), "{}", audited.out);
}
