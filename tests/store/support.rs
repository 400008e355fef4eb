//! A session folder of its own for each test.

use std::fs;
use std::path::PathBuf;

use jiff::Timestamp;
use proofwalk::store::{ChainReport, Hash, Journal, SessionFolder, SessionId, StoreError, verify};
use tempfile::TempDir;

/// A session folder that is removed after the test.
pub struct Scene {
    pub temp: TempDir,
    pub folder: SessionFolder,
}

pub fn scene() -> Scene {
    let temp = tempfile::tempdir().unwrap();
    let folder = SessionFolder::open(temp.path().join("sessions")).unwrap();
    Scene { temp, folder }
}

impl Scene {
    /// Where the file of session `s` is.
    pub fn file(&self) -> PathBuf {
        self.path("s.jsonl")
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Session `s` with this many records, closed; its bytes and its head.
    pub fn recorded(&self, records: u64) -> (Vec<u8>, Hash) {
        let mut journal = self.folder.create(&id("s")).unwrap();
        for number in 0..records {
            record(&mut journal, number).unwrap();
        }
        (fs::read(self.file()).unwrap(), journal.head())
    }
}

pub fn id(text: &str) -> SessionId {
    SessionId::parse(text).unwrap()
}

/// Appends an event that tells its number, ten seconds after the one before.
pub fn record(journal: &mut Journal, number: u64) -> Result<(), StoreError> {
    let time: Timestamp = "2026-11-25T10:00:00Z".parse().unwrap();
    let event = format!(r#"{{"reading":"flame current","number":{number}}}"#);
    journal.append(
        &[event],
        time + jiff::SignedDuration::from_secs(10 * number as i64),
    )
}

pub fn checked(bytes: &[u8]) -> ChainReport {
    verify(bytes).unwrap()
}

/// The lines of a session, each with its newline.
pub fn lines(bytes: &[u8]) -> Vec<&[u8]> {
    bytes.split_inclusive(|&byte| byte == b'\n').collect()
}

/// What is wrong with these bytes, as it is told; `None` where nothing is.
pub fn damage(bytes: &[u8]) -> Option<String> {
    checked(bytes).damage.map(|damage| damage.to_string())
}

/// Whether this test runs with rights that no permission stops.
pub fn is_root() -> bool {
    rustix::process::geteuid().is_root()
}

/// A line with its own sum at its end, as a journal writes it: `line` is the object without.
pub fn sealed(line: &str) -> String {
    let body = line.strip_suffix('}').unwrap();
    format!(r#"{body},"sum":"{}"}}"#, Hash::of(body.as_bytes()))
}
