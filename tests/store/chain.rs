//! The chain finds what was changed.

use proofwalk::store::Hash;

use crate::support::{checked, damage, lines, scene, sealed};

/// Three lines in the canonical form of RFC 8785 (JSON Canonicalization Scheme), each naming the SHA-256 of the one
/// before, and the sum of each; the sums were computed with another implementation of SHA-256.
const COMPUTED: [(&str, &str); 3] = [
    (
        r#"{"job":"J1","prev":"0000000000000000000000000000000000000000000000000000000000000000","reading":56,"seq":0,"unit":"F"}"#,
        "fd0b97422799a5cbfd3bced568c842da7a337df824761afb7fa4f652b63fc443",
    ),
    (
        r#"{"job":"J1","prev":"fd0b97422799a5cbfd3bced568c842da7a337df824761afb7fa4f652b63fc443","reading":0.002,"seq":1,"unit":"inH2O"}"#,
        "fa818b007f85831a4539f984fa2e3a3fe1cdb527967b6dcec9fb909c2494862f",
    ),
    (
        r#"{"job":"J2","note":"€ ok","prev":"fa818b007f85831a4539f984fa2e3a3fe1cdb527967b6dcec9fb909c2494862f","seq":2}"#,
        "b36e27ef110091f7d6172f22afcd853de063f874715ac3f059d5427a665e632f",
    ),
];

#[test]
fn the_sums_are_those_another_implementation_computes() {
    for (line, sum) in COMPUTED {
        assert_eq!(Hash::of(line.as_bytes()).to_string(), sum);
    }
}

#[test]
fn each_line_names_the_sum_of_the_exact_bytes_before_it() {
    let scene = scene();
    let (bytes, head) = scene.recorded(3);
    let zero = "0".repeat(64);
    let first = sealed(&format!(
        r#"{{"seq":0,"format":1,"time":"2026-11-25T10:00:00Z","prev":"{zero}","event":{{"reading":"flame current","number":0}}}}"#
    ));
    let second = sealed(&format!(
        r#"{{"seq":1,"time":"2026-11-25T10:00:10Z","prev":"{}","event":{{"reading":"flame current","number":1}}}}"#,
        Hash::of(first.as_bytes())
    ));
    let third = sealed(&format!(
        r#"{{"seq":2,"time":"2026-11-25T10:00:20Z","prev":"{}","event":{{"reading":"flame current","number":2}}}}"#,
        Hash::of(second.as_bytes())
    ));
    assert_eq!(
        String::from_utf8(bytes).unwrap(),
        format!("{first}\n{second}\n{third}\n")
    );
    assert_eq!(head, Hash::of(third.as_bytes()));
}

#[test]
fn every_flipped_bit_is_found_without_an_anchor() {
    let (bytes, head) = scene().recorded(3);
    let ends: Vec<usize> = (0..bytes.len()).filter(|&at| bytes[at] == b'\n').collect();
    for at in 0..bytes.len() {
        for bit in 0..8 {
            let mut flipped = bytes.clone();
            flipped[at] ^= 1 << bit;
            let report = checked(&flipped);
            // The last line break is no part of a record: without it, the line is taken for one being written.
            if at < ends[2] {
                let line = ends.iter().filter(|&&end| end < at).count() as u64 + 1;
                let found = report
                    .damage
                    .expect("found by the chain or the line's own sum")
                    .line;
                assert!(
                    found == line || found == line + 1,
                    "byte {at}, bit {bit}: line {found}"
                );
            } else {
                assert!(!report.is_whole() || report.head != head, "byte {at}, bit {bit}");
            }
        }
    }
}

#[test]
fn a_deleted_a_swapped_and_a_doubled_line_are_found() {
    let (bytes, _) = scene().recorded(4);
    let lines = lines(&bytes);
    let told = |order: &[usize]| damage(&order.iter().map(|&n| lines[n]).collect::<Vec<_>>().concat());
    let moved = "a record is missing, doubled or moved";
    let expected = |line, found, due| {
        Some(format!(
            "line {line} has number {found} where {due} is due: {moved}"
        ))
    };
    assert_eq!(told(&[0, 2, 3]), expected(2, 2, 1));
    assert_eq!(told(&[0, 2, 1, 3]), expected(2, 2, 1));
    assert_eq!(told(&[0, 1, 1, 2, 3]), expected(3, 1, 2));
    assert_eq!(
        told(&[1, 2, 3]),
        Some("line 1 is not a record: the first record has no key `format`".into())
    );
    assert_eq!(told(&[0, 1, 2, 3]), None);
}

#[test]
fn a_changed_line_is_found_by_its_own_sum() {
    let (bytes, _) = scene().recorded(3);
    let changed = String::from_utf8(bytes)
        .unwrap()
        .replace(r#""number":1"#, r#""number":7"#);
    assert_eq!(
        damage(changed.as_bytes()).unwrap(),
        "line 2 was changed: its own sum is another"
    );
}

#[test]
fn a_file_cut_at_the_end_of_a_line_differs_only_in_its_head() {
    let (bytes, head) = scene().recorded(3);
    let report = checked(&lines(&bytes)[..2].concat());
    assert!(report.is_whole());
    assert_ne!(report.head, head);
}

#[test]
fn an_empty_file_is_a_whole_session_without_records() {
    let report = checked(b"");
    assert!(report.is_whole());
    assert_eq!((report.records, report.head), (0, Hash::ZERO));
}
