//! The folder that holds the sessions.

use std::fs::File;
use std::io::{self, BufRead};
use std::os::fd::{AsFd, OwnedFd};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use etcetera::BaseStrategy;
use rustix::fs::{AtFlags, CWD, FileType, Mode, OFlags, fstat, fsync, openat, statat, unlinkat};
use rustix::io::Errno;

use super::damage::Warning;
use super::error::StoreError;
use super::fault::FolderFault;
use super::journal::Journal;
use super::open::{self, Access, CAREFUL};
use super::packs::{Known, Source};
use super::record::{Chain, Record};
use super::records::{ChainReport, Records};
use super::repair::{self, Repair};
use super::{SESSION_LIMIT, SessionId, holder};

/// The folder that holds the sessions, one file each.
///
/// It is opened once, and everything in it is reached through that: turning its name elsewhere changes nothing.
///
/// ```
/// use proofwalk::store::{SessionFolder, SessionId};
///
/// # let temp = tempfile::tempdir()?;
/// # let path = temp.path().join("sessions");
/// let folder = SessionFolder::open(path)?;
/// let id = SessionId::new("2026-11-25T10:00:00Z".parse()?, [7; 10]);
/// let mut journal = folder.create(&id)?;
/// journal.append(&[r#"{"opened":"no-heat"}"#.to_owned()], "2026-11-25T10:00:05Z".parse()?)?;
/// drop(journal);
///
/// let taken_up = folder.take_up(&id)?;
/// assert_eq!(taken_up.records[0].event.get(), r#"{"opened":"no-heat"}"#);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
pub struct SessionFolder {
    pub(super) fd: Arc<OwnedFd>,
    pub(super) path: PathBuf,
    /// Its packs, once they were looked for.
    pub(super) known: Known,
    /// Only what is in those counts.
    pub(super) only_packs: bool,
}

/// A session that was taken up again.
#[derive(Debug)]
pub struct TakenUp {
    /// To record on.
    pub journal: Journal,
    /// What has been recorded.
    pub records: Vec<Record>,
    /// What was cut off, where the last line had not been written to its end.
    pub repair: Option<Repair>,
    /// Where the clock went back; see [`ChainReport::warnings`].
    pub warnings: Vec<Warning>,
}

/// A session as it was read.
#[derive(Clone, Debug)]
pub struct Reading {
    /// The records up to the first damage.
    pub records: Vec<Record>,
    /// How far they can be trusted.
    pub report: ChainReport,
}

/// Where sessions are kept if nothing else is said: `proofwalk/sessions` in the user's state folder, as the XDG Base
/// Directory Specification has it.
///
/// # Errors
///
/// [`StoreError::NoHome`] where no home folder is known.
pub fn default_folder() -> Result<PathBuf, StoreError> {
    let xdg = etcetera::base_strategy::Xdg::new().map_err(|_| StoreError::NoHome)?;
    let state = xdg.state_dir().ok_or(StoreError::NoHome)?;
    Ok(state.join("proofwalk").join("sessions"))
}

impl SessionFolder {
    /// Opens a folder to record in; makes it, for the user alone, where there is none.
    ///
    /// # Errors
    ///
    /// [`StoreError::BadFolder`] where it is a symbolic link, no folder, or one in which everyone may remove what others
    /// wrote; [`StoreError::NotSaved`] where it cannot be made, [`StoreError::Unreadable`] where it cannot be opened.
    pub fn open(path: impl AsRef<Path>) -> Result<Self, StoreError> {
        let path = plain(path.as_ref());
        make(&path).map_err(|(at, cause)| StoreError::not_saved(&at, cause))?;
        let folder = Self::open_existing(path)?;
        folder.check_rights()?;
        Ok(folder)
    }

    /// Opens a folder to read in, makes nothing, and does not mind who may write there.
    ///
    /// # Errors
    ///
    /// [`StoreError::BadFolder`] where it is a symbolic link or no folder, [`StoreError::Unreadable`] where it cannot be
    /// opened.
    pub fn open_existing(path: impl AsRef<Path>) -> Result<Self, StoreError> {
        let path = plain(path.as_ref());
        let fd = openat(
            CWD,
            &path,
            OFlags::RDONLY | OFlags::DIRECTORY | CAREFUL,
            Mode::empty(),
        )
        .map_err(|error| {
            let fault = statat(CWD, &path, AtFlags::SYMLINK_NOFOLLOW)
                .ok()
                .and_then(|status| match FileType::from_raw_mode(status.st_mode) {
                    FileType::Symlink => Some(FolderFault::Symlink),
                    FileType::Directory => None,
                    _ => Some(FolderFault::NotAFolder),
                });
            match fault {
                Some(fault) => StoreError::BadFolder {
                    path: path.clone(),
                    fault,
                },
                None => StoreError::unreadable(&path, error.into()),
            }
        })?;
        Ok(Self {
            fd: Arc::new(fd),
            path,
            known: Known::default(),
            only_packs: false,
        })
    }

    /// The folder's path, to name it to the user.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Starts a session.
    ///
    /// # Errors
    ///
    /// [`StoreError::Exists`] where there is one of this name, [`StoreError::NotSaved`] where its file cannot be made or
    /// synced; no file is left then.
    pub fn create(&self, id: &SessionId) -> Result<Journal, StoreError> {
        self.check_rights()?;
        let (name, path) = self.file(id);
        let flags = OFlags::RDWR | OFlags::APPEND | OFlags::CREATE | OFlags::EXCL | CAREFUL;
        let file = match openat(&self.fd, &name, flags, Mode::RUSR | Mode::WUSR) {
            Ok(file) => File::from(file),
            Err(Errno::EXIST) => return Err(StoreError::Exists { path }),
            Err(error) => return Err(StoreError::not_saved(&path, error)),
        };
        let locked = holder::lock(&file, &self.fd, id, &path).and_then(|note| {
            let synced = file.sync_all().and_then(|()| sync_folder(&self.fd));
            synced.map_err(|cause| StoreError::not_saved(&path, cause))?;
            Ok(note)
        });
        // Where another process has the lock already, the session is its own now.
        if let Err(StoreError::NotSaved { .. }) = locked {
            let _ = unlinkat(&self.fd, &name, AtFlags::empty());
        }
        Ok(Journal::new(file, locked?, &path, Chain::EMPTY, 0))
    }

    /// Takes up a session to record on, after checking all that is there.
    ///
    /// A last line without its end was never confirmed to anybody: it is kept in a file of its own and cut off. Nothing
    /// else is ever mended.
    ///
    /// # Errors
    ///
    /// [`StoreError::NoSession`], [`StoreError::Held`] where another process has it, [`StoreError::Damaged`],
    /// [`StoreError::WrongFile`] where it is no regular file of this user with one name, [`StoreError::TooLarge`], and
    /// where the file cannot be read or the disk does not confirm it.
    pub fn take_up(&self, id: &SessionId) -> Result<TakenUp, StoreError> {
        self.check_rights()?;
        let (name, path) = self.file(id);
        let file = match open::session(self.fd.as_fd(), name.as_ref(), &path, Access::Append) {
            Err(StoreError::NoSession { path }) => Err(match self.packed_in(id) {
                Some(path) => StoreError::IsPacked { path },
                None => StoreError::NoSession { path },
            }),
            other => other,
        }?;
        let note = holder::lock(&file, &self.fd, id, &path)?;
        let again = file
            .try_clone()
            .map_err(|cause| StoreError::unreadable(&path, cause))?;
        let Reading { records, report } = reading(Source::own(again, path.clone())?)?;
        if let Some(damage) = report.damage {
            return Err(StoreError::Damaged { path, damage });
        }
        let repair = match report.torn_tail {
            Some(torn) => Some(repair::set_aside(
                &self.fd,
                &file,
                id,
                &path,
                (report.bytes, torn),
            )?),
            None => None,
        };
        // A process that was killed between its write and its sync leaves lines that are readable and not yet on disk.
        file.sync_data()
            .map_err(|cause| StoreError::not_saved(&path, cause))?;
        let chain = Chain {
            records: report.records,
            head: report.head,
            time: records.last().map(|record| record.time),
        };
        Ok(TakenUp {
            journal: Journal::new(file, note, &path, chain, report.bytes),
            records,
            repair,
            warnings: report.warnings,
        })
    }

    /// Reads a session without taking it up, also while another process records it.
    ///
    /// # Errors
    ///
    /// [`StoreError::NoSession`], [`StoreError::WrongFile`], [`StoreError::TooLarge`] or [`StoreError::Unreadable`].
    /// Damage is no error here: the report has it, and the records before it.
    pub fn read(&self, id: &SessionId) -> Result<Reading, StoreError> {
        reading(self.source(id)?)
    }

    /// Reads a session record by record, in bounded memory, however large it is.
    ///
    /// # Errors
    ///
    /// As [`read`](Self::read), but no session is too large.
    pub fn stream(&self, id: &SessionId) -> Result<Records<impl BufRead + use<>>, StoreError> {
        Ok(Records::new(self.source(id)?.text))
    }

    /// A session's file name, and its path for messages.
    pub(super) fn file(&self, id: &SessionId) -> (String, PathBuf) {
        let name = Self::file_name(id);
        let path = self.path.join(&name);
        (name, path)
    }

    pub(super) fn file_name(id: &SessionId) -> String {
        format!("{id}.jsonl")
    }

    /// Asked again before every session, since rights change.
    pub(super) fn check_rights(&self) -> Result<(), StoreError> {
        let status = fstat(&self.fd).map_err(|error| StoreError::unreadable(&self.path, error.into()))?;
        let mode = Mode::from_raw_mode(status.st_mode);
        if mode.contains(Mode::WOTH) && !mode.contains(Mode::SVTX) {
            let (path, fault) = (self.path.clone(), FolderFault::WorldWritable);
            return Err(StoreError::BadFolder { path, fault });
        }
        Ok(())
    }
}

fn reading(source: Source) -> Result<Reading, StoreError> {
    let Source {
        text, length, path, ..
    } = source;
    if length > SESSION_LIMIT {
        let limit = SESSION_LIMIT;
        return Err(StoreError::TooLarge { path, limit });
    }
    let mut records = Vec::new();
    let report = Records::new(text)
        .each(|record| records.push(record))
        .map_err(|cause| Source::failed(&path, cause))?;
    Ok(Reading { records, report })
}

/// The path without slashes or dots at its end: with those, the system would follow a link there after all.
fn plain(path: &Path) -> PathBuf {
    path.components().collect()
}

/// Makes a folder and those above it, and syncs each into the one above.
fn make(path: &Path) -> Result<(), (PathBuf, io::Error)> {
    let missing: Vec<&Path> = path
        .ancestors()
        .take_while(|at| {
            !at.as_os_str().is_empty()
                && at
                    .symlink_metadata()
                    .is_err_and(|error| error.kind() == io::ErrorKind::NotFound)
        })
        .collect();
    for at in missing.into_iter().rev() {
        make_one(at).map_err(|cause| (at.to_owned(), cause))?;
    }
    Ok(())
}

fn make_one(path: &Path) -> io::Result<()> {
    match rustix::fs::mkdir(path, Mode::RWXU) {
        // Another process was faster.
        Ok(()) | Err(Errno::EXIST) => {}
        Err(error) => return Err(error.into()),
    }
    let above = path.parent().filter(|above| !above.as_os_str().is_empty());
    let flags = OFlags::RDONLY | OFlags::DIRECTORY | OFlags::CLOEXEC;
    match openat(CWD, above.unwrap_or(Path::new(".")), flags, Mode::empty()) {
        Ok(above) => sync_folder(&above),
        // One may make a folder where one may not read; there is nothing to sync it through.
        Err(Errno::ACCESS) => Ok(()),
        Err(error) => Err(error.into()),
    }
}

/// Makes new names in a folder last.
pub(super) fn sync_folder(folder: &OwnedFd) -> io::Result<()> {
    match fsync(folder) {
        // Some network file systems do not know this call for folders, and need none.
        Ok(()) | Err(Errno::INVAL) => Ok(()),
        Err(error) => Err(error.into()),
    }
}
