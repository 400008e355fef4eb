//! Whatever happens to an archive and to its index, an audit says what a fresh one says.

use std::fs::{self, File, OpenOptions};
use std::io::Write;
use std::path::PathBuf;
use std::thread::sleep;
use std::time::Duration;

use proofwalk::store::{SessionFolder, SessionId};
use proofwalk::walk::LibraryMark;
use proptest::prelude::*;
use proptest::sample::Index;
use serde_json::Value;

use crate::common::scene::{Said, Scene, program, scene};
use crate::told::{done, keep};

/// Archives that change at once: their files have to rest, and may do so together.
const ARCHIVES: usize = 8;

/// What may happen between two audits.
#[derive(Clone, Debug)]
enum Change {
    Add,
    Remove,
    /// Half a line more.
    Append,
    /// A byte of a session, with the file's time put back.
    Edit(Index, u8),
    Rename,
    Pack,
    AddFolder,
    /// A byte of what is kept.
    EditIndex(Index, u8),
    CutIndex(Index),
    RemoveIndex,
    /// What is kept of other folders, under the names of what is kept of these.
    SwapIndex,
}

fn change() -> impl Strategy<Value = Change> {
    prop_oneof![
        Just(Change::Add),
        Just(Change::Remove),
        Just(Change::Append),
        (any::<Index>(), any::<u8>()).prop_map(|(at, byte)| Change::Edit(at, byte)),
        Just(Change::Rename),
        Just(Change::Pack),
        Just(Change::AddFolder),
        (any::<Index>(), any::<u8>()).prop_map(|(at, byte)| Change::EditIndex(at, byte)),
        any::<Index>().prop_map(Change::CutIndex),
        Just(Change::RemoveIndex),
        Just(Change::SwapIndex),
    ]
}

/// An archive, and how many calls were written to it.
struct Archive {
    scene: Scene,
    /// Kept beside them, since the built-in one takes long to read.
    library: LibraryMark,
    calls: usize,
}

impl Archive {
    fn new() -> Self {
        let scene = scene();
        let mut archive = Self {
            library: keep(&SessionFolder::open(scene.sessions()).unwrap()),
            scene,
            calls: 0,
        };
        (0..3).for_each(|_| archive.add());
        archive
    }

    fn folder(&self) -> SessionFolder {
        SessionFolder::open(self.scene.sessions()).unwrap()
    }

    fn add(&mut self) {
        let day = 1 + self.calls;
        done(
            &format!("s{}", self.calls),
            &format!("2026-01-{day:02}T10:00:00Z"),
        )
        .walked_with(self.library.clone())
        .write(&self.folder());
        self.calls += 1;
    }

    /// What is kept, in the order of its names.
    fn kept(&self) -> Vec<PathBuf> {
        let folder = fs::read_dir(self.scene.temp.path().join("cache/proofwalk/audit"));
        let mut kept: Vec<PathBuf> = (folder.unwrap()).map(|entry| entry.unwrap().path()).collect();
        kept.sort();
        kept
    }

    /// Does it, where there is something to do it to.
    fn change(&mut self, change: &Change, other: Option<&Self>) {
        let first = self.folder().names().unwrap().sessions.into_iter().next();
        let first = first
            .map(|id| self.scene.file(id.as_str()))
            .filter(|path| path.exists());
        match change {
            Change::Add => self.add(),
            Change::Remove => first.into_iter().for_each(|path| fs::remove_file(path).unwrap()),
            Change::Append => {
                let file = first.map(|path| OpenOptions::new().append(true).open(path).unwrap());
                file.into_iter()
                    .for_each(|mut file| file.write_all(b"{\"seq\":9").unwrap());
            }
            Change::Edit(at, byte) => first.into_iter().for_each(|path| edit(&path, at, *byte)),
            Change::Rename => {
                let to = self.scene.file("renamed");
                first.into_iter().for_each(|path| fs::rename(path, &to).unwrap());
            }
            Change::Pack => {
                let ids: Vec<SessionId> = self.folder().names().unwrap().sessions;
                let _ = self.folder().pack("2026-01", &ids, false);
            }
            Change::AddFolder => {
                let folder = SessionFolder::open(self.scene.sessions().join("van")).unwrap();
                let _ = folder.create(&SessionId::parse("empty").unwrap());
            }
            Change::EditIndex(at, byte) => self.kept().iter().for_each(|path| edit(path, at, *byte)),
            Change::CutIndex(at) => {
                for path in self.kept() {
                    let file = OpenOptions::new().write(true).open(path).unwrap();
                    let length = file.metadata().unwrap().len() as usize;
                    file.set_len(at.index(length.max(1)) as u64).unwrap();
                }
            }
            Change::RemoveIndex => self.kept().iter().for_each(|path| fs::remove_file(path).unwrap()),
            Change::SwapIndex => {
                let others = other.map(Self::kept).unwrap_or_default();
                for (own, other) in self.kept().iter().zip(others) {
                    fs::copy(other, own).unwrap();
                }
            }
        }
    }

    fn audit(&self, cache: &str, format: &str, more: &[&str]) -> Said {
        let sessions = self.scene.sessions();
        let mut command = program();
        command.args([
            "audit",
            sessions.to_str().unwrap(),
            "--clock",
            "2026-06-01T00:00:00Z",
            "--format",
            format,
        ]);
        command
            .args(more)
            .env("XDG_CACHE_HOME", self.scene.temp.path().join(cache));
        command.output().unwrap().into()
    }

    /// Whether an audit says what a fresh one does, in both formats.
    fn says_what_is_there(&self) -> Result<(), TestCaseError> {
        let (known, fresh) = (
            self.audit("cache", "json", &[]),
            self.audit("none", "json", &["--fresh"]),
        );
        let json = |said: &Said| serde_json::from_str::<Value>(&said.out).unwrap();
        let (mut page, whole) = (json(&known), json(&fresh));
        page["from_index"] = 0.into();
        prop_assert_eq!((page, known.code), (whole, fresh.code));
        let (known, fresh) = (
            self.audit("cache", "text", &[]),
            self.audit("none", "text", &["--fresh"]),
        );
        prop_assert_eq!(
            (without_the_index(&known.out), known.code),
            (without_the_index(&fresh.out), fresh.code)
        );
        Ok(())
    }
}

/// A page without what it says of the index, in a row of its own.
fn without_the_index(page: &str) -> String {
    let words: Vec<&str> = page.split_whitespace().collect();
    let page = words.join(" ");
    match page.split_once("Not read ") {
        Some((before, rest)) => [before, rest.split_once("checked again ").unwrap().1].concat(),
        None => page,
    }
}

/// Changes a byte of a file, with its time put back.
fn edit(path: &std::path::Path, at: &Index, byte: u8) {
    let written = fs::metadata(path).unwrap().modified().unwrap();
    let mut bytes = fs::read(path).unwrap();
    if !bytes.is_empty() {
        let at = at.index(bytes.len());
        bytes[at] = byte;
    }
    fs::write(path, bytes).unwrap();
    File::options()
        .write(true)
        .open(path)
        .unwrap()
        .set_modified(written)
        .unwrap();
}

proptest! {
    #![proptest_config(ProptestConfig { max_shrink_iters: 0, ..ProptestConfig::with_cases(1) })]

    #[test]
    fn whatever_changes_an_audit_says_what_a_fresh_one_says(
        changes in prop::collection::vec(prop::collection::vec(change(), 0..4), ARCHIVES)
    ) {
        let mut archives: Vec<Archive> = changes.iter().map(|_| Archive::new()).collect();
        sleep(Duration::from_millis(3100));
        for archive in &archives {
            archive.audit("cache", "json", &[]);
            archive.audit("cache", "text", &[]);
        }
        for (at, changes) in changes.iter().enumerate() {
            let (archive, others) = archives[at..].split_first_mut().unwrap();
            changes.iter().for_each(|change| archive.change(change, others.first()));
            archive.says_what_is_there()?;
        }
        // Then once more, to keep it now that it has rested, and once out of what was kept.
        sleep(Duration::from_millis(3100));
        for archive in archives.iter().chain(&archives) {
            archive.says_what_is_there()?;
        }
    }
}
