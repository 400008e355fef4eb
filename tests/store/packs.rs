//! Packed sessions read as before, come out byte for byte, and nothing is lost on the way.

use std::fs;
use std::io::{Cursor, Write};
use std::os::unix::fs::symlink;

use proofwalk::store::{Archive, ChainState, StoreError};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipArchive, ZipWriter};

use crate::support::{Scene, id, record, scene};

const PACK: &str = "2026-11.sessions.zip";

/// Sessions of three records each; their bytes.
fn recorded(scene: &Scene, names: &[&str]) -> Vec<Vec<u8>> {
    let write = |name: &&str| {
        let mut journal = scene.folder.create(&id(name)).unwrap();
        (0..3).for_each(|number| record(&mut journal, number).unwrap());
        fs::read(scene.path(&format!("{name}.jsonl"))).unwrap()
    };
    names.iter().map(write).collect()
}

fn pack(scene: &Scene, names: &[&str]) -> proofwalk::store::Packed {
    let ids: Vec<_> = names.iter().map(|name| id(name)).collect();
    scene.folder.pack("2026-11", &ids, false).unwrap()
}

/// A pack that was made to measure.
fn made(scene: &Scene, entries: &[(&str, &[u8], CompressionMethod)]) {
    let mut zip = ZipWriter::new(Cursor::new(Vec::new()));
    for (name, bytes, method) in entries {
        let options = SimpleFileOptions::default().compression_method(*method);
        zip.start_file(*name, options).unwrap();
        zip.write_all(bytes).unwrap();
    }
    fs::write(scene.path(PACK), zip.finish().unwrap().into_inner()).unwrap();
}

#[test]
fn packed_sessions_read_as_before_and_come_out_byte_for_byte() {
    let scene = scene();
    let bytes = recorded(&scene, &["a", "b"]);
    let before = scene.folder.read(&id("b")).unwrap();
    let packed = pack(&scene, &["a", "b"]);
    assert_eq!((packed.removed, packed.sessions, packed.left.len()), (2, 2, 0));
    assert_eq!(packed.bytes as usize, bytes[0].len() + bytes[1].len());
    assert!(!scene.path("a.jsonl").exists());

    assert_eq!(scene.folder.names().unwrap().sessions, [id("a"), id("b")]);
    let after = scene.folder.read(&id("b")).unwrap();
    assert_eq!(after.report, before.report);
    let events = |reading: &proofwalk::store::Reading| -> Vec<String> {
        reading
            .records
            .iter()
            .map(|record| record.event.get().to_owned())
            .collect()
    };
    assert_eq!(events(&after), events(&before));
    let listed = scene.folder.list().unwrap();
    assert!(
        listed
            .iter()
            .all(|listed| matches!(listed.state, ChainState::Whole) && listed.count == 3)
    );
    let archive = Archive::find(&[scene.folder.path().to_owned()]).unwrap();
    assert_eq!((archive.len(), archive.others), (2, 0));

    let unpacked = scene.folder.unpack(PACK, &scene.folder, false).unwrap();
    assert!(unpacked.removed && unpacked.sessions == 2 && unpacked.left.is_empty());
    assert_eq!(fs::read(scene.path("a.jsonl")).unwrap(), bytes[0]);
    assert_eq!(fs::read(scene.path("b.jsonl")).unwrap(), bytes[1]);
    assert!(!scene.path(PACK).exists());
    assert_eq!(scene.folder.read(&id("a")).unwrap().report.records, 3);
}

#[test]
fn a_pack_is_a_zip_file_that_grows() {
    let scene = scene();
    let bytes = recorded(&scene, &["a", "b"]);
    pack(&scene, &["a"]);
    assert_eq!(pack(&scene, &["b"]).sessions, 2);
    let mut zip = ZipArchive::new(fs::File::open(scene.path(PACK)).unwrap()).unwrap();
    for (name, bytes) in [("a.jsonl", &bytes[0]), ("b.jsonl", &bytes[1])] {
        let mut read = Vec::new();
        std::io::copy(&mut zip.by_name(name).unwrap(), &mut read).unwrap();
        assert_eq!(&read, bytes);
    }
}

#[test]
fn what_is_no_whole_session_of_ours_is_left() {
    let scene = scene();
    let bytes = recorded(&scene, &["whole", "changed", "torn", "held"]);
    let text = String::from_utf8(bytes[1].clone()).unwrap();
    let changed = text.replace("\"number\":1", "\"number\":7");
    fs::write(scene.path("changed.jsonl"), &changed).unwrap();
    fs::write(scene.path("torn.jsonl"), &bytes[2][..bytes[2].len() - 4]).unwrap();
    symlink(scene.path("whole.jsonl"), scene.path("link.jsonl")).unwrap();
    fs::hard_link(scene.path("torn.jsonl"), scene.path("second.jsonl")).unwrap();
    let _held = scene.folder.take_up(&id("held")).unwrap();
    let names = ["whole", "changed", "torn", "link", "second", "held", "nobody"];
    let packed = pack(&scene, &names);
    assert_eq!(packed.taken, [id("whole")]);
    let left: Vec<_> = packed.left.iter().map(|(id, _)| id.as_str()).collect();
    assert_eq!(left, ["changed", "torn", "link", "second", "held", "nobody"]);
    for name in &names[1..6] {
        assert!(
            scene.path(&format!("{name}.jsonl")).symlink_metadata().is_ok(),
            "{name}"
        );
    }
}

#[test]
fn files_are_kept_where_they_are_to_be_and_packed_once() {
    let scene = scene();
    recorded(&scene, &["a"]);
    let kept = scene.folder.pack("2026-11", &[id("a")], true).unwrap();
    assert_eq!((kept.removed, kept.sessions), (0, 1));
    assert!(scene.path("a.jsonl").exists());
    assert_eq!(scene.folder.names().unwrap().sessions, [id("a")]);
    // As after a run that was cut off before it removed anything.
    let again = pack(&scene, &["a"]);
    assert_eq!((again.removed, again.sessions), (1, 1));
}

#[test]
fn another_session_of_the_same_name_is_never_taken_for_the_packed_one() {
    let scene = scene();
    let first = recorded(&scene, &["a"]);
    pack(&scene, &["a"]);
    let shorter = first[0].split_inclusive(|byte| *byte == b'\n').next().unwrap();
    fs::write(scene.path("a.jsonl"), shorter).unwrap();
    let packed = pack(&scene, &["a"]);
    assert!(matches!(packed.left[..], [(_, StoreError::Exists { .. })]));
    let unpacked = scene.folder.unpack(PACK, &scene.folder, false).unwrap();
    assert!(!unpacked.removed && matches!(unpacked.left[..], [(_, StoreError::Exists { .. })]));
    assert_eq!(fs::read(scene.path("a.jsonl")).unwrap(), shorter);
}

#[test]
fn every_flipped_bit_of_a_pack_is_found_or_harmless() {
    let scene = scene();
    let bytes = recorded(&scene, &["a"]);
    pack(&scene, &["a"]);
    let sound = fs::read(scene.path(PACK)).unwrap();
    for at in 0..sound.len() {
        let mut flipped = sound.clone();
        flipped[at] ^= 1 << (at % 8);
        fs::write(scene.path(PACK), &flipped).unwrap();
        let folder = proofwalk::store::SessionFolder::open(scene.folder.path()).unwrap();
        let read = folder.read(&id("a")).ok();
        if let Some(reading) = read.filter(|reading| reading.report.damage.is_none()) {
            assert!(reading.report.is_whole(), "byte {at}");
            assert_eq!(reading.report.bytes as usize, bytes[0].len(), "byte {at}");
        }
    }
}

#[test]
fn a_damaged_pack_is_named_and_hides_no_other() {
    let scene = scene();
    recorded(&scene, &["a", "b"]);
    pack(&scene, &["a"]);
    fs::write(scene.path("2026-10.sessions.zip"), "no pack").unwrap();
    symlink(scene.path(PACK), scene.path("2026-09.sessions.zip")).unwrap();
    let folder = proofwalk::store::SessionFolder::open(scene.folder.path()).unwrap();
    let packs = folder.packs().unwrap();
    let bad: Vec<_> = packs.bad.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(bad, ["2026-09.sessions.zip", "2026-10.sessions.zip"]);
    assert_eq!(folder.names().unwrap().sessions, [id("a"), id("b")]);
    let error = folder.pack("2026-10", &[id("b")], false).unwrap_err();
    assert!(matches!(error, StoreError::BadPack { .. }), "{error}");
    assert!(scene.path("b.jsonl").exists());
}

#[test]
fn a_pack_that_was_made_to_hurt_is_refused() {
    let scene = scene();
    let opened = || scene.folder.pack_named(PACK);
    let refused = |what: &str| match opened() {
        Err(StoreError::BadPack { why, .. }) => assert!(why.contains(what), "{why}"),
        other => panic!("{other:?}"),
    };
    made(&scene, &[("../a.jsonl", b"x", CompressionMethod::Stored)]);
    refused("is no session");
    made(&scene, &[("A.jsonl", b"x", CompressionMethod::Stored)]);
    refused("is no session");
    made(
        &scene,
        &[("a.jsonl", &vec![0; (64 << 20) + 1], CompressionMethod::Stored)],
    );
    refused("larger than the 64 MiB");
    // One line without an end: no more than a line may have is unpacked of it.
    made(
        &scene,
        &[("a.jsonl", &vec![b'x'; 8 << 20], CompressionMethod::Deflated)],
    );
    let reading = scene.folder.read(&id("a")).unwrap();
    assert!(reading.report.damage.is_some() && reading.records.is_empty());
}

/// A ZIP file whose table of contents names `b.jsonl` twice, as programs do that add without looking: our writer will not.
fn doubled(scene: &Scene, bytes: &[u8]) {
    let stored = CompressionMethod::Stored;
    made(
        scene,
        &[
            ("a.jsonl", bytes, stored),
            ("b.jsonl", bytes, stored),
            ("c.jsonl", bytes, stored),
        ],
    );
    let mut zip = fs::read(scene.path(PACK)).unwrap();
    let third = b"c.jsonl";
    let places: Vec<usize> = (0..zip.len())
        .filter(|at| zip[*at..].starts_with(third))
        .collect();
    assert_eq!(places.len(), 2, "before the bytes, and in the table");
    for at in places {
        zip[at] = b'b';
    }
    fs::write(scene.path(PACK), zip).unwrap();
}

#[test]
fn of_two_entries_of_one_name_each_is_named_and_none_is_read() {
    let scene = scene();
    let bytes = recorded(&scene, &["a"]).remove(0);
    fs::remove_file(scene.path("a.jsonl")).unwrap();
    doubled(&scene, &bytes);
    let folder = proofwalk::store::SessionFolder::open(scene.folder.path()).unwrap();
    let packs = folder.packs().unwrap();
    let bad: Vec<_> = packs
        .bad
        .iter()
        .map(|(name, error)| (name.as_str(), error.to_string()))
        .collect();
    assert_eq!(bad.len(), 2, "{bad:?}");
    for (name, why) in &bad {
        assert_eq!(*name, format!("{PACK}/b.jsonl"));
        assert!(why.contains("2 of its entries are named b.jsonl"), "{why}");
    }
    assert_eq!(folder.names().unwrap().sessions, [id("a")], "the others are read");
    assert_eq!(folder.read(&id("a")).unwrap().report.records, 3);
    assert!(matches!(folder.read(&id("b")), Err(StoreError::NoSession { .. })));
    let archive = Archive::find(&[scene.folder.path().to_owned()]).unwrap();
    assert_eq!((archive.len(), archive.bad_packs().len()), (1, 2));
    // What would lose one of the two is not done.
    recorded(&scene, &["d"]);
    let error = folder.pack("2026-11", &[id("d")], false).unwrap_err();
    assert!(matches!(error, StoreError::BadPack { .. }), "{error}");
    let error = folder.unpack(PACK, &folder, false).unwrap_err();
    assert!(matches!(error, StoreError::BadPack { .. }), "{error}");
    assert!(scene.path(PACK).exists() && scene.path("d.jsonl").exists());
}

#[test]
fn a_packed_session_is_not_taken_up() {
    let scene = scene();
    recorded(&scene, &["a"]);
    pack(&scene, &["a"]);
    let error = scene.folder.take_up(&id("a")).unwrap_err();
    assert!(matches!(error, StoreError::IsPacked { .. }), "{error}");
}
