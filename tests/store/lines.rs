//! Lines that no journal writes.

use std::io::{BufReader, Read};

use proofwalk::store::{DamageKind, Hash, LINE_LIMIT, verify};

use crate::support::{checked, damage, sealed};

/// The first line of a session, with its members changed as given; an empty value takes the member away.
fn line(changes: &[(&str, &str)]) -> String {
    let zero = format!("\"{}\"", Hash::ZERO);
    let mut members = vec![
        ("seq", "0"),
        ("format", "1"),
        ("time", "\"2026-11-25T10:00:00Z\""),
        ("prev", &zero),
        ("event", "{}"),
    ];
    for &(key, value) in changes {
        match members.iter_mut().find(|(name, _)| *name == key) {
            Some(member) => member.1 = value,
            None => members.push((key, value)),
        }
    }
    let members: Vec<String> = members
        .iter()
        .filter(|(_, value)| !value.is_empty())
        .map(|(key, value)| format!("\"{key}\":{value}"))
        .collect();
    sealed(&format!("{{{}}}", members.join(",")))
}

#[track_caller]
fn refused(line: impl AsRef<[u8]>, message: &str) {
    let bytes = [line.as_ref(), b"\n"].concat();
    assert_eq!(damage(&bytes).as_deref(), Some(message));
}

#[track_caller]
fn no_record(line: impl AsRef<[u8]>, what: &str) {
    refused(line, &format!("line 1 is not a record: {what}"));
}

#[test]
fn the_line_these_tests_change_is_a_record() {
    assert_eq!(damage(format!("{}\n", line(&[])).as_bytes()), None);
}

#[test]
fn members_are_exactly_those_of_a_record() {
    no_record(line(&[("verdict", "0")]), "`verdict` is no key of a record");
    no_record(line(&[("event", "")]), "it has no key `event`");
    no_record(line(&[("format", "")]), "the first record has no key `format`");
    no_record(line(&[("\\u0073eq", "1")]), "the key `seq` stands twice");
    no_record(line(&[("format", "0")]), "there is no format 0");
}

#[test]
fn values_are_what_a_record_has() {
    let whole = "`seq` is not a whole number below 2^64";
    for seq in ["18446744073709551616", "-1", "0.0", "\"0\"", "1e400", "null"] {
        no_record(line(&[("seq", seq)]), whole);
    }
    no_record(
        line(&[("prev", "\"0\"")]),
        "`prev`: a SHA-256 sum is 64 digits from 0-9 and a-f, in lower case",
    );
    let prev = format!("\"{}\"", Hash::of(b""));
    refused(
        line(&[("prev", &prev)]),
        "line 1 names a record before it, but is the first",
    );
    no_record(
        line(&[("time", "\"2026-11-25T10:00:00\"")]),
        "`time` is no time with a zone in the form of RFC 3339: `2026-11-25T10:00:00`",
    );
    no_record(line(&[("time", "5")]), "`time` is not text");
}

#[test]
fn an_event_cannot_be_read_in_two_ways() {
    no_record(
        line(&[("event", r#"{"verdict":"pass","verdict":"fail"}"#)]),
        "`event`: the key `verdict` stands twice at column 35",
    );
    no_record(
        line(&[("event", r#"{"v":1e400}"#)]),
        "`event`: number out of range at column 10",
    );
    no_record(
        line(&[("event", r#"["\ud800"]"#)]),
        "`event`: unexpected end of hex escape at column 9",
    );
    no_record(
        line(&[("event", &"[".repeat(500_000))]),
        "expected value at column 500133",
    );
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    no_record(
        line(&[("event", &deep)]),
        "`event`: recursion limit exceeded at column 128",
    );
}

#[test]
fn bytes_that_are_no_text_are_told_with_their_place() {
    refused(b"{\"seq\xff", "line 1 is not UTF-8 from its byte 5 on");
    no_record(b"", "it is empty");
    no_record(
        b"{\"seq\0\":0}",
        "control character (\\u0000-\\u001F) found while parsing a string at column 6",
    );
}

#[test]
fn a_file_that_another_program_converted_is_told() {
    no_record(
        format!("{}\r", line(&[])),
        "it ends in CR LF: another program saved this file anew",
    );
}

#[test]
fn untrusted_text_in_a_message_is_safe_and_short() {
    no_record(line(&[("\\u001b[2J", "0")]), "`^[[2J` is no key of a record");
    let told = damage(format!("{}\n", line(&[(&"x".repeat(9999), "0")])).as_bytes());
    assert!(told.unwrap().len() < 250);
}

#[test]
fn a_newer_format_is_named_whatever_else_is_new() {
    refused(
        line(&[("format", "2"), ("seq", "\"a\""), ("machine", "{}")]),
        "line 1 says format 2, and this program reads no format above 1",
    );
}

#[test]
fn a_clock_that_went_back_is_noted_and_the_notes_are_bounded() {
    let mut text = String::new();
    let mut prev = Hash::ZERO;
    for seq in 0..302 {
        let time = if seq % 2 == 0 {
            "\"9999-12-30T00:00:00Z\""
        } else {
            "\"2026-11-25T12:00:00+02:00\""
        };
        let format = if seq == 0 { "1" } else { "" };
        let (seq, sum) = (seq.to_string(), format!("\"{prev}\""));
        let line = line(&[("seq", &seq), ("format", format), ("time", time), ("prev", &sum)]);
        prev = Hash::of(line.as_bytes());
        text += &format!("{line}\n");
    }
    let report = checked(text.as_bytes());
    assert!(report.is_whole());
    assert_eq!((report.warnings.len(), report.more_warnings), (100, 51));
    assert_eq!(
        report.warnings[0].to_string(),
        "line 2 is dated 2026-11-25T10:00:00Z, before the record it follows (9999-12-30T00:00:00Z): the clock was set back"
    );
}

/// A reader of a gigabyte without a newline, which counts what was taken from it.
struct Endless(u64);

impl Read for &mut Endless {
    fn read(&mut self, buffer: &mut [u8]) -> std::io::Result<usize> {
        let length = buffer.len().min((1 << 30) - self.0 as usize);
        buffer[..length].fill(b'a');
        self.0 += length as u64;
        Ok(length)
    }
}

#[test]
fn of_a_line_of_a_gigabyte_no_more_than_the_limit_is_read() {
    let mut endless = Endless(0);
    let report = verify(BufReader::new(&mut endless)).unwrap();
    assert_eq!(report.damage.unwrap().kind, DamageKind::TooLong);
    assert!(endless.0 < 2 * LINE_LIMIT as u64, "{} bytes were read", endless.0);
}
