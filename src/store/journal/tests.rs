//! A journal on a disk that fails as the test says.

use std::sync::{Arc, Mutex};

use super::*;

/// A disk that refuses what the test says, and shows what it holds.
#[derive(Clone, Debug, Default)]
struct Disk(Arc<Mutex<Inner>>);

#[derive(Debug, Default)]
struct Inner {
    bytes: Vec<u8>,
    /// How many more bytes there is room for.
    room: Option<usize>,
    syncs: usize,
    sync_fails: bool,
    cut_fails: bool,
}

impl Medium for Disk {
    fn status(&self) -> io::Result<(u64, u64)> {
        Ok((self.0.lock().unwrap().bytes.len() as u64, 1))
    }

    fn write(&mut self, bytes: &[u8]) -> io::Result<()> {
        let mut disk = self.0.lock().unwrap();
        let fits = disk.room.unwrap_or(usize::MAX).min(bytes.len());
        disk.bytes.extend(&bytes[..fits]);
        if fits < bytes.len() {
            return Err(io::ErrorKind::StorageFull.into());
        }
        Ok(())
    }

    fn sync(&mut self) -> io::Result<()> {
        let mut disk = self.0.lock().unwrap();
        disk.syncs += 1;
        // As systems do: the failure is told once, and the next sync finds nothing wrong.
        match std::mem::take(&mut disk.sync_fails) {
            true => Err(io::Error::other("input/output error")),
            false => Ok(()),
        }
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        let mut disk = self.0.lock().unwrap();
        if disk.cut_fails {
            return Err(io::Error::other("input/output error"));
        }
        disk.bytes.truncate(length as usize);
        Ok(())
    }
}

fn journal() -> (Journal, Disk) {
    let disk = Disk::default();
    let journal = Journal {
        _note: None,
        file: Box::new(disk.clone()),
        path: "s.jsonl".into(),
        bytes: 0,
        chain: Chain::EMPTY,
        state: State::Sound,
    };
    (journal, disk)
}

fn append(journal: &mut Journal, event: &str) -> Result<(), String> {
    journal
        .append(&[event.to_owned()], Timestamp::UNIX_EPOCH)
        .map_err(|error| error.to_string())
}

fn change(disk: &Disk, change: impl FnOnce(&mut Inner)) {
    change(&mut disk.0.lock().unwrap());
}

/// The records on the disk, which must all be whole.
#[track_caller]
fn whole(disk: &Disk) -> u64 {
    let report = crate::store::verify(disk.0.lock().unwrap().bytes.as_slice()).unwrap();
    assert!(report.is_whole(), "{report:?}");
    report.records
}

#[test]
fn the_events_of_one_append_are_synced_once() {
    let (mut journal, disk) = journal();
    journal
        .append(&["{}".into(), "{}".into()], Timestamp::UNIX_EPOCH)
        .unwrap();
    assert_eq!(
        (whole(&disk), disk.0.lock().unwrap().syncs, journal.len()),
        (2, 1, 2)
    );
}

#[test]
fn a_full_disk_leaves_whole_records_and_a_journal_to_try_again_with() {
    let (mut journal, disk) = journal();
    append(&mut journal, "{}").unwrap();
    let head = journal.head();
    change(&disk, |disk| disk.room = Some(30));
    assert_eq!(
        append(&mut journal, "{}").unwrap_err(),
        "s.jsonl: NOT SAVED: no storage space; what was half written has been cut off again; free some space on this \
         disk and try again"
    );
    assert_eq!((whole(&disk), journal.head()), (1, head));
    change(&disk, |disk| disk.room = None);
    append(&mut journal, "{}").unwrap();
    assert_eq!(whole(&disk), 2);
}

#[test]
fn half_a_line_that_cannot_be_cut_off_at_once_is_cut_off_before_the_next() {
    let (mut journal, disk) = journal();
    change(&disk, |disk| (disk.room, disk.cut_fails) = (Some(30), true));
    assert!(
        append(&mut journal, "{}")
            .unwrap_err()
            .contains("is left half written")
    );
    change(&disk, |disk| disk.room = None);
    assert!(
        append(&mut journal, "{}")
            .unwrap_err()
            .contains("is left half written")
    );
    change(&disk, |disk| disk.cut_fails = false);
    append(&mut journal, "{}").unwrap();
    assert_eq!(whole(&disk), 1);
}

#[test]
fn after_a_failed_sync_nothing_more_is_written_or_synced() {
    let (mut journal, disk) = journal();
    append(&mut journal, "{}").unwrap();
    change(&disk, |disk| disk.sync_fails = true);
    assert_eq!(
        append(&mut journal, "{}").unwrap_err(),
        "s.jsonl: NOT SAVED: the disk did not confirm the record: input/output error; close this call, see to the \
         disk, and resume it"
    );
    let again = "s.jsonl: NOT SAVED: the disk failed earlier in this call; close this call and resume it";
    assert_eq!(append(&mut journal, "{}").unwrap_err(), again);
    assert_eq!(
        (whole(&disk), disk.0.lock().unwrap().syncs, journal.len()),
        (1, 2, 1)
    );
}

#[test]
fn what_could_not_be_read_again_is_not_written() {
    let (mut journal, disk) = journal();
    for (event, why) in [
        (
            "{",
            "the event is no JSON text of one line: EOF while parsing an object at column 1",
        ),
        (
            "{\n}",
            "the event is no JSON text of one line: it has a line break between its parts",
        ),
        (
            r#"{"a":1,"a":2}"#,
            "the event is no JSON text of one line: the key `a` stands twice at column 13",
        ),
    ] {
        let error = append(&mut journal, event).unwrap_err();
        assert_eq!(error, format!("s.jsonl: NOT SAVED: {why}"));
    }
    let long = format!("\"{}\"", "x".repeat(LINE_LIMIT));
    assert!(
        append(&mut journal, &long)
            .unwrap_err()
            .contains("shorten its text")
    );
    journal.bytes = SESSION_LIMIT - 10;
    assert!(append(&mut journal, "{}").unwrap_err().contains("start another"));
    assert_eq!(whole(&disk), 0);
}

#[test]
fn the_longest_line_that_is_written_is_read_again() {
    let (mut journal, disk) = journal();
    let around = encode(0, Timestamp::UNIX_EPOCH, Hash::ZERO, "\"\"").len();
    append(&mut journal, &format!("\"{}\"", "x".repeat(LINE_LIMIT - around))).unwrap();
    assert_eq!(whole(&disk), 1);
}
