//! Sessions that are read at once, in room used before, say what those say that are read line by line: whatever is wrong with them.

use std::fs;
use std::io::{BufRead, Cursor, Write};

use proofwalk::store::{ChainReport, Records, Room, SessionFolder, StoreError};
use proptest::prelude::*;
use serde_json::Value;
use zip::ZipWriter;
use zip::write::SimpleFileOptions;

use crate::support::{Scene, id, record, scene};

/// What is read: each record's event, what ended it, and the report.
type Read = Result<(Vec<Option<Value>>, String, ChainReport), String>;

fn all(records: Result<Records<impl BufRead>, StoreError>) -> Read {
    let mut records = records.map_err(|error| error.to_string())?;
    let (mut events, mut end) = (Vec::new(), String::new());
    while let Some(record) = records.next_as(|_, event| serde_json::from_str(event).ok()) {
        match record {
            Ok(record) => events.push(record.event),
            Err(error) => end = error.to_string(),
        }
    }
    Ok((events, end, records.report().clone()))
}

/// Reads a session both ways, the second in room that another session left.
fn both(folder: &SessionFolder, room: &mut Room) -> (Read, Read) {
    let _ = all(folder.stream_in(&id("other"), room));
    (
        all(folder.stream(&id("a"))),
        all(folder.stream_in(&id("a"), room)),
    )
}

fn recorded(scene: &Scene, name: &str, records: u64) -> Vec<u8> {
    let mut journal = scene.folder.create(&id(name)).unwrap();
    for number in 0..records {
        record(&mut journal, number).unwrap();
    }
    fs::read(scene.path(&format!("{name}.jsonl"))).unwrap()
}

fn packed(name: &str, text: &[u8]) -> Vec<u8> {
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    zip.start_file(name, SimpleFileOptions::default()).unwrap();
    zip.write_all(text).unwrap();
    zip.finish().unwrap().into_inner()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn what_is_wrong_is_said_alike_of_files_and_of_packs(
        at in any::<prop::sample::Index>(), byte in any::<u8>(), cut in any::<bool>()
    ) {
        let scene = scene();
        recorded(&scene, "other", 40);
        let whole = recorded(&scene, "a", 5);
        let changed = |bytes: &[u8]| {
            let mut bytes = bytes.to_vec();
            let at = at.index(bytes.len());
            bytes[at] = byte;
            bytes.truncate(if cut { at } else { bytes.len() });
            bytes
        };
        let (path, mut room) = (scene.path("a.jsonl"), Room::default());
        for text in [whole.clone(), changed(&whole)] {
            fs::write(&path, &text).unwrap();
            let (streamed, at_once) = both(&scene.folder, &mut room);
            prop_assert_eq!(streamed, at_once);
            fs::remove_file(&path).unwrap();
            // A sound pack of a session that may not be, then a pack that is not sound.
            let pack = packed("a.jsonl", &text);
            for pack in [pack.clone(), changed(&pack)] {
                fs::write(scene.path("2026-11.sessions.zip"), pack).unwrap();
                let folder = SessionFolder::open(scene.folder.path()).unwrap();
                let _ = folder.packs();
                let (streamed, at_once) = both(&folder, &mut room);
                prop_assert_eq!(streamed, at_once);
            }
            fs::remove_file(scene.path("2026-11.sessions.zip")).unwrap();
        }
    }
}
