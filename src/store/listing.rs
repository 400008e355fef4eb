//! Every session of a folder, whatever state it is in.

use std::io::BufReader;
use std::io::Read;
use std::os::fd::AsFd;

use rustix::fs::{Dir, fstat};
use rustix::process::geteuid;

use super::damage::Damage;
use super::error::StoreError;
use super::folder::SessionFolder;
use super::id::SessionId;
use super::open::{self, Access};
use super::record::Record;
use super::records::Records;

/// One session of a folder.
#[derive(Debug)]
pub struct Listed {
    /// Its name.
    pub id: SessionId,
    /// Whether the file belongs to the user of this process, who alone can take it up.
    pub ours: bool,
    /// How many records are whole and in their place.
    pub count: u64,
    /// The first of them.
    pub first: Option<Record>,
    /// The last of them.
    pub last: Option<Record>,
    /// How far the file can be trusted.
    pub state: ChainState,
}

/// How far a listed session can be trusted.
#[derive(Debug)]
pub enum ChainState {
    /// Every line is whole and in its place.
    Whole,
    /// As before, but so many bytes of a last line were cut off while they were written, or are just being written.
    Torn(u64),
    /// A line is wrong; `count`, `first` and `last` are of the lines before it.
    Damaged(Damage),
    /// The file could not be read, or is no session file.
    Unreadable(StoreError),
}

/// What a folder has under names that end in `.jsonl`; hidden files are passed over.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Names {
    /// The sessions, sorted.
    pub sessions: Vec<SessionId>,
    /// Names that no session can have, sorted. They are not read, and whoever counts sessions should say so.
    pub strangers: Vec<String>,
}

impl SessionFolder {
    /// The names of all sessions.
    ///
    /// # Errors
    ///
    /// [`StoreError::Unreadable`] where the folder cannot be read.
    pub fn names(&self) -> Result<Names, StoreError> {
        let unreadable = |error: rustix::io::Errno| StoreError::unreadable(&self.path, error.into());
        let mut names = Names::default();
        for entry in Dir::read_from(&self.fd).map_err(unreadable)? {
            let entry = entry.map_err(unreadable)?;
            let name = String::from_utf8_lossy(entry.file_name().to_bytes());
            let Some(stem) = name.strip_suffix(".jsonl").filter(|_| !name.starts_with('.')) else {
                continue;
            };
            match SessionId::parse(stem) {
                Ok(id) => names.sessions.push(id),
                Err(_) => names.strangers.push(name.into_owned()),
            }
        }
        names.sessions.sort_unstable();
        names.strangers.sort_unstable();
        Ok(names)
    }

    /// Every session, sorted by id, so the oldest of ours first. A damaged one is listed as such and hides no other.
    ///
    /// # Errors
    ///
    /// [`StoreError::Unreadable`] where the folder cannot be read.
    pub fn list(&self) -> Result<Vec<Listed>, StoreError> {
        let names = self.names()?;
        Ok(names.sessions.into_iter().map(|id| self.look_at(id)).collect())
    }

    /// One session, read through in bounded memory.
    pub fn look_at(&self, id: SessionId) -> Listed {
        let mut listed = Listed {
            id,
            ours: false,
            count: 0,
            first: None,
            last: None,
            state: ChainState::Whole,
        };
        if let Err(error) = self.fill(&mut listed) {
            listed.state = ChainState::Unreadable(error);
        }
        listed
    }

    fn fill(&self, listed: &mut Listed) -> Result<(), StoreError> {
        let (name, path) = self.file(&listed.id);
        let unreadable = |cause| StoreError::unreadable(&path, cause);
        let file = open::session(self.fd.as_fd(), name.as_ref(), &path, Access::Read)?;
        let status = fstat(&file).map_err(|error| unreadable(error.into()))?;
        listed.ours = status.st_uid == geteuid().as_raw();
        // No further than the file goes now: another process may be recording.
        let length = u64::try_from(status.st_size).unwrap_or(0);
        let report = Records::new(BufReader::new(file.take(length)))
            .each(|record| {
                listed.count += 1;
                if listed.first.is_none() {
                    listed.first = Some(record.clone());
                }
                listed.last = Some(record);
            })
            .map_err(unreadable)?;
        listed.state = match (report.damage, report.torn_tail) {
            (Some(damage), _) => ChainState::Damaged(damage),
            (None, Some(bytes)) => ChainState::Torn(bytes),
            (None, None) => ChainState::Whole,
        };
        Ok(())
    }
}
