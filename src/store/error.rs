//! What can go wrong with files, in words that say how to mend it.

use std::fmt;
use std::io::{self, ErrorKind};
use std::path::{Path, PathBuf};

use super::damage::{Damage, DamageKind};
use super::fault::{FileFault, FolderFault};
use super::{LINE_LIMIT, PACK_LIMIT, SESSION_LIMIT};
use crate::source::{Safe, safe};

/// Why something could not be read or saved.
#[derive(Debug)]
pub enum StoreError {
    /// A text that is no session id.
    NotASessionId {
        /// What was given.
        text: String,
    },
    /// No home folder is known, so there is no usual place for sessions.
    NoHome,
    /// The session folder is none that records can be trusted to.
    BadFolder {
        /// The folder.
        path: PathBuf,
        /// What is wrong with it.
        fault: FolderFault,
    },
    /// There is no such session.
    NoSession {
        /// Where it was looked for.
        path: PathBuf,
    },
    /// A new session would have the name of an old one.
    Exists {
        /// The old one's file.
        path: PathBuf,
    },
    /// Something that is no session file stands in the place of one.
    WrongFile {
        /// Its path.
        path: PathBuf,
        /// What it is.
        fault: FileFault,
    },
    /// Another process has this session open.
    Held {
        /// The session's file.
        path: PathBuf,
        /// Who has it, as far as is known: user, process, since when.
        by: String,
    },
    /// The session file is not what was written, or was written by a newer version.
    Damaged {
        /// The session's file.
        path: PathBuf,
        /// What is wrong, and where.
        damage: Damage,
    },
    /// A kept library is not what was kept.
    LibraryAltered {
        /// Its file.
        path: PathBuf,
    },
    /// A pack of sessions is not what was packed, or is none.
    BadPack {
        /// Its file.
        path: PathBuf,
        /// What is wrong with it.
        why: String,
    },
    /// The session lies in a pack, where nothing can be recorded.
    IsPacked {
        /// The pack's file.
        path: PathBuf,
    },
    /// Too large to be taken into memory.
    TooLarge {
        /// The file.
        path: PathBuf,
        /// The most it may have, in bytes.
        limit: u64,
    },
    /// A file or folder could not be read.
    Unreadable {
        /// Which.
        path: PathBuf,
        /// What the system said.
        cause: io::Error,
    },
    /// Something is not on disk. It may be tried again.
    NotSaved {
        /// The file.
        path: PathBuf,
        /// Why.
        cause: Cause,
    },
    /// The disk did not confirm a record: whether it holds is unknown, and no more is written through this journal.
    Poisoned {
        /// The session's file.
        path: PathBuf,
        /// What the system said, where this is the write that failed.
        cause: Option<io::Error>,
    },
    /// Another program changed, replaced or removed the file of an open journal.
    Changed {
        /// The session's file.
        path: PathBuf,
    },
}

/// Why something could not be saved.
#[derive(Debug)]
pub enum Cause {
    /// The system refused before anything was written.
    Io(io::Error),
    /// The system refused half-way; what was written has been cut off again.
    CutBack(io::Error),
    /// The system refused half-way, and then refused to cut off what was written; the next append does that first.
    LeftTorn(io::Error),
    /// The record would be longer than [`LINE_LIMIT`], in bytes.
    RecordTooLong(usize),
    /// The session would grow beyond [`SESSION_LIMIT`].
    SessionFull,
    /// The event is no JSON text of one line; what is wrong with it.
    NotAnEvent(String),
    /// A pack would have more than [`PACK_LIMIT`] sessions.
    PackFull,
    /// The library does not have the sum that it is to be kept under.
    OtherLibrary,
}

impl StoreError {
    pub(super) fn unreadable(path: &Path, cause: io::Error) -> Self {
        let path = path.to_owned();
        Self::Unreadable { path, cause }
    }

    pub(super) fn not_saved(path: &Path, cause: impl Into<io::Error>) -> Self {
        let (path, cause) = (path.to_owned(), Cause::Io(cause.into()));
        Self::NotSaved { path, cause }
    }

    /// Whether something is not as it was written, rather than out of reach.
    pub fn is_damage(&self) -> bool {
        self.exit_code() == 1
    }

    /// What the program exits with: 1 for a damaged record, 2 for what cannot be read, 3 for what could not be saved.
    pub fn exit_code(&self) -> u8 {
        match self {
            Self::Damaged {
                damage:
                    Damage {
                        kind: DamageKind::NewerFormat(_),
                        ..
                    },
                ..
            } => 2,
            Self::Damaged { .. } | Self::LibraryAltered { .. } | Self::BadPack { .. } => 1,
            Self::NotASessionId { .. }
            | Self::NoHome
            | Self::BadFolder { .. }
            | Self::NoSession { .. }
            | Self::Exists { .. }
            | Self::WrongFile { .. }
            | Self::Held { .. }
            | Self::IsPacked { .. }
            | Self::TooLarge { .. }
            | Self::Unreadable { .. } => 2,
            Self::NotSaved { .. } | Self::Poisoned { .. } | Self::Changed { .. } => 3,
        }
    }
}

impl StoreError {
    /// What is wrong, without the path in front: for where the file was named already.
    pub fn reason(&self) -> String {
        let text = self.to_string();
        let path = match self {
            Self::BadFolder { path, .. }
            | Self::NoSession { path }
            | Self::Exists { path }
            | Self::WrongFile { path, .. }
            | Self::Held { path, .. }
            | Self::Damaged { path, .. }
            | Self::LibraryAltered { path }
            | Self::BadPack { path, .. }
            | Self::TooLarge { path, .. }
            | Self::Unreadable { path, .. }
            | Self::NotSaved { path, .. }
            | Self::Poisoned { path, .. }
            | Self::Changed { path } => path,
            Self::NotASessionId { .. } | Self::NoHome | Self::IsPacked { .. } => return text,
        };
        let rest = text.strip_prefix(&format!("{}: ", shown(path)));
        rest.map_or_else(|| text.clone(), str::to_owned)
    }
}

/// A path as it may be shown.
fn shown(path: &Path) -> Safe {
    safe(&path.to_string_lossy())
}

impl fmt::Display for StoreError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotASessionId { text } => write!(
                f,
                "`{}` is no session id; an id is 1 to 64 of a-z, 0-9 and hyphens, and does not begin with a hyphen",
                safe(text).cut(72)
            ),
            Self::NoHome => f.write_str("no home folder is known; name a folder for the sessions"),
            Self::BadFolder { path, fault } => write!(f, "{}: {fault}", shown(path)),
            Self::NoSession { path } => write!(
                f,
                "{}: there is no such session; `proofwalk sessions` lists those there are",
                shown(path)
            ),
            Self::Exists { path } => write!(
                f,
                "{}: there is a session of this name already; take it up, or use another name",
                shown(path)
            ),
            Self::WrongFile { path, fault } => write!(f, "{}: {fault}", shown(path)),
            Self::Held { path, by } => write!(
                f,
                "{}: this session is open in {}; close it there first",
                shown(path),
                safe(by)
            ),
            Self::Damaged { path, damage } => {
                write!(f, "{}: {damage}; ", shown(path))?;
                f.write_str(match damage.kind {
                    DamageKind::NewerFormat(_) => "use the version of this program that wrote it",
                    _ => "nothing was changed: keep the file as it is, and compare it with a copy",
                })
            }
            Self::LibraryAltered { path } => write!(
                f,
                "{}: this kept library is not what was kept; restore the file from a copy",
                shown(path)
            ),
            Self::BadPack { path, why } => write!(
                f,
                "{}: this pack of sessions is not sound: {}; restore the file from a copy",
                shown(path),
                safe(why).cut(200)
            ),
            Self::IsPacked { path } => write!(
                f,
                "this session is closed and packed in {}; read it with `proofwalk report`",
                shown(path)
            ),
            Self::TooLarge { path, limit } => write!(
                f,
                "{}: larger than the {} MiB that are taken into memory; check whether it is what its name says",
                shown(path),
                limit >> 20
            ),
            Self::Unreadable { path, cause } => {
                write!(
                    f,
                    "{}: cannot be read: {cause}; {}",
                    shown(path),
                    mend(cause.kind())
                )
            }
            Self::NotSaved { path, cause } => write!(f, "{}: NOT SAVED: {cause}", shown(path)),
            Self::Poisoned {
                path,
                cause: Some(cause),
            } => write!(
                f,
                "{}: NOT SAVED: the disk did not confirm the record: {cause}; close this call, see to the disk, and resume it",
                shown(path)
            ),
            Self::Poisoned { path, cause: None } => write!(
                f,
                "{}: NOT SAVED: the disk failed earlier in this call; close this call and resume it",
                shown(path)
            ),
            Self::Changed { path } => write!(
                f,
                "{}: NOT SAVED: another program changed, moved or removed this file; close this call and verify the session",
                shown(path)
            ),
        }
    }
}

impl std::error::Error for StoreError {}

impl fmt::Display for Cause {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Io(cause) => write!(f, "{cause}; {}", mend(cause.kind())),
            Self::CutBack(cause) => write!(
                f,
                "{cause}; what was half written has been cut off again; {}",
                mend(cause.kind())
            ),
            Self::LeftTorn(cause) => write!(
                f,
                "{cause}; the last line is left half written and will be cut off; {}",
                mend(cause.kind())
            ),
            Self::RecordTooLong(bytes) => write!(
                f,
                "the record has {bytes} bytes, and {LINE_LIMIT} are allowed; shorten its text"
            ),
            Self::SessionFull => write!(
                f,
                "the session would grow beyond {} MiB; close it and start another",
                SESSION_LIMIT >> 20
            ),
            Self::NotAnEvent(what) => write!(
                f,
                "the event is no JSON text of one line: {}",
                safe(what).cut(160)
            ),
            Self::PackFull => write!(
                f,
                "a pack holds {PACK_LIMIT} sessions at most; this one is left as it is"
            ),
            Self::OtherLibrary => f.write_str(
                "the library has another sum than it is to be kept under, or two files of one name",
            ),
        }
    }
}

/// What to do about it.
fn mend(kind: ErrorKind) -> &'static str {
    match kind {
        ErrorKind::StorageFull => "free some space on this disk and try again",
        ErrorKind::QuotaExceeded => "free some of your space on this disk and try again",
        ErrorKind::FileTooLarge => "raise the limit on the size of files and try again",
        ErrorKind::ReadOnlyFilesystem => "use a folder on a disk that can be written to",
        ErrorKind::PermissionDenied => "ask its owner for access, or use another folder",
        ErrorKind::NotFound => "check the path",
        ErrorKind::NotADirectory => "check the path: a part of it is no folder",
        _ => "see to the disk and try again",
    }
}
