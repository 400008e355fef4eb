//! Every session of a folder, whatever state it is in.

use rustix::fs::Dir;

use super::damage::Damage;
use super::error::StoreError;
use super::folder::SessionFolder;
use super::id::SessionId;
use super::packs::Source;
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

/// What a folder has under names that end in `.jsonl`, and in its packs; hidden files are passed over.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Names {
    /// The sessions, sorted.
    pub sessions: Vec<SessionId>,
    /// Names that no session can have, sorted. They are not read, and whoever counts sessions should say so.
    pub strangers: Vec<String>,
}

impl SessionFolder {
    /// The names of all sessions, packed ones among them.
    ///
    /// # Errors
    ///
    /// [`StoreError::Unreadable`] where the folder cannot be read.
    pub fn names(&self) -> Result<Names, StoreError> {
        let mut names = self.own_names()?;
        for pack in &self.packs()?.sound {
            names.sessions.extend(pack.sessions());
        }
        names.sessions.sort_unstable();
        names.sessions.dedup();
        Ok(names)
    }

    /// The names of the sessions that have a file of their own.
    ///
    /// # Errors
    ///
    /// As [`names`](Self::names).
    pub fn own_names(&self) -> Result<Names, StoreError> {
        let unreadable = |error: rustix::io::Errno| StoreError::unreadable(&self.path, error.into());
        let mut names = Names::default();
        let own = (!self.only_packs).then(|| Dir::read_from(&self.fd)).transpose();
        for entry in own.map_err(unreadable)?.into_iter().flatten() {
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
        let Source { text, path, ours, .. } = self.source(&listed.id)?;
        listed.ours = ours;
        let report = Records::new(text)
            .each(|record| {
                listed.count += 1;
                if listed.first.is_none() {
                    listed.first = Some(record.clone());
                }
                listed.last = Some(record);
            })
            .map_err(|cause| Source::failed(&path, cause))?;
        listed.state = match (report.damage, report.torn_tail) {
            (Some(damage), _) => ChainState::Damaged(damage),
            (None, Some(bytes)) => ChainState::Torn(bytes),
            (None, None) => ChainState::Whole,
        };
        Ok(())
    }
}
