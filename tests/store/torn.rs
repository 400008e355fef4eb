//! A last line that was cut off while it was written.

use std::fs;

use proofwalk::store::Repair;

use crate::support::{checked, id, lines, record, scene};

#[test]
fn a_line_torn_at_any_byte_is_set_aside_and_the_session_goes_on() {
    let scene = scene();
    let (bytes, _) = scene.recorded(3);
    let whole = bytes.len() - lines(&bytes)[2].len();
    for (number, cut) in (whole + 1..bytes.len()).enumerate() {
        fs::write(scene.file(), &bytes[..cut]).unwrap();
        let mut taken_up = scene.folder.take_up(&id("s")).unwrap();
        let kept_as = format!("s.torn-{}", number + 1);
        assert_eq!(fs::read(scene.path(&kept_as)).unwrap(), bytes[whole..cut]);
        let bytes = (cut - whole) as u64;
        assert_eq!(taken_up.repair, Some(Repair { bytes, kept_as }));
        assert_eq!(taken_up.records.len(), 2);
        record(&mut taken_up.journal, 2).unwrap();
        let report = checked(&fs::read(scene.file()).unwrap());
        assert!(report.is_whole() && report.records == 3, "{report:?}");
    }
}

#[test]
fn a_session_torn_in_its_first_line_is_taken_up_empty() {
    let scene = scene();
    let (bytes, head) = scene.recorded(1);
    fs::write(scene.file(), &bytes[..40]).unwrap();
    let mut taken_up = scene.folder.take_up(&id("s")).unwrap();
    assert!(taken_up.records.is_empty() && taken_up.journal.is_empty());
    record(&mut taken_up.journal, 0).unwrap();
    assert_eq!(taken_up.journal.head(), head);
}

#[test]
fn a_whole_session_is_taken_up_as_it_is() {
    let scene = scene();
    let (bytes, head) = scene.recorded(3);
    let taken_up = scene.folder.take_up(&id("s")).unwrap();
    assert_eq!(
        (taken_up.repair, taken_up.journal.head(), taken_up.journal.len()),
        (None, head, 3)
    );
    assert_eq!(
        taken_up.records[2].event.get(),
        r#"{"reading":"flame current","number":2}"#
    );
    assert_eq!(fs::read(scene.file()).unwrap(), bytes);
}

#[test]
fn reading_reports_a_torn_line_and_leaves_it() {
    let scene = scene();
    let (bytes, _) = scene.recorded(2);
    let torn = &bytes[..bytes.len() - 1];
    fs::write(scene.file(), torn).unwrap();
    let reading = scene.folder.read(&id("s")).unwrap();
    assert_eq!(reading.records.len(), 1);
    assert_eq!(reading.report.torn_tail, Some(lines(&bytes)[1].len() as u64 - 1));
    assert_eq!(fs::read(scene.file()).unwrap(), torn);
}

#[test]
fn damage_before_the_end_is_never_mended() {
    let scene = scene();
    let (mut bytes, _) = scene.recorded(3);
    bytes[10] ^= 1;
    bytes.pop();
    fs::write(scene.file(), &bytes).unwrap();
    let error = scene.folder.take_up(&id("s")).unwrap_err();
    assert_eq!(error.exit_code(), 1);
    assert!(error.to_string().ends_with(
        "line 1 is not a record: the first record has no key `format`; nothing was changed: keep the file as it is, and compare \
         it with a copy"
    ), "{error}");
    assert_eq!(fs::read(scene.file()).unwrap(), bytes);
}

#[test]
fn records_that_lost_their_newlines_are_damaged_and_no_torn_line() {
    let scene = scene();
    let (bytes, _) = scene.recorded(3);
    for other in ["", "\r", " "] {
        let text = String::from_utf8(bytes.clone()).unwrap().replace('\n', other);
        let report = checked(text.as_bytes());
        let damage = report.damage.unwrap().to_string();
        assert_eq!(
            damage,
            "line 1 is not a record: another record follows in the same line"
        );
        assert_eq!((report.records, report.torn_tail), (0, None));
    }
}

#[test]
fn a_file_that_does_not_begin_as_a_record_is_none_that_was_cut_off() {
    for text in ["{\"a\":", "hello", "{\"seq\" :0"] {
        let damage = checked(text.as_bytes()).damage.unwrap().to_string();
        assert_eq!(
            damage, "line 1 is not a record: it does not begin as one",
            "{text}"
        );
    }
}
