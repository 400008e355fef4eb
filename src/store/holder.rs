//! Who has a session open.
//!
//! The lock is one of the system on the session file itself: it ends with the process, however that ends, and it alone
//! decides. A small file beside it tells others who holds it; one left by a process that was killed is not believed.

use std::fmt;
use std::fs::{File, TryLockError};
use std::io::{self, Read, Write};
use std::os::fd::OwnedFd;
use std::path::Path;
use std::sync::Arc;

use jiff::{Timestamp, Unit};
use rustix::fs::{AtFlags, Mode, OFlags, fstat, openat, unlinkat};
use rustix::io::Errno;
use rustix::process::{Pid, geteuid, getpid, test_kill_process};
use serde::{Deserialize, Serialize};

use super::error::StoreError;
use super::id::SessionId;
use super::open::CAREFUL;

/// Longest note that is read, in bytes.
const LONGEST: u64 = 4096;

#[derive(Serialize, Deserialize)]
struct Holder {
    user: String,
    process: i32,
    since: String,
}

impl Holder {
    fn this_process() -> Self {
        let name = ["LOGNAME", "USER"].iter().find_map(|key| std::env::var(key).ok());
        let now = Timestamp::now();
        Self {
            user: name.unwrap_or_else(|| format!("user {}", geteuid().as_raw())),
            process: getpid().as_raw_nonzero().get(),
            since: now.round(Unit::Second).unwrap_or(now).to_string(),
        }
    }

    /// A process of another user may not be signalled, which shows that it is there.
    fn is_alive(&self) -> bool {
        Pid::from_raw(self.process)
            .filter(|_| self.process > 0)
            .is_some_and(|process| matches!(test_kill_process(process), Ok(()) | Err(Errno::PERM)))
    }
}

impl fmt::Display for Holder {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { user, process, since } = self;
        write!(f, "process {process} of {user}, since {since}")
    }
}

/// The note beside a locked session; it goes when the journal is closed.
#[derive(Debug)]
pub(super) struct Note {
    folder: Arc<OwnedFd>,
    name: String,
}

/// Takes the lock on a session file, or says who has it.
pub(super) fn lock(
    file: &File,
    folder: &Arc<OwnedFd>,
    id: &SessionId,
    path: &Path,
) -> Result<Note, StoreError> {
    let name = format!("{id}.holder");
    match file.try_lock() {
        Ok(()) => {}
        Err(TryLockError::WouldBlock) => {
            let holder = read(folder, &name).filter(Holder::is_alive);
            let by = holder.map_or_else(|| "another process".to_owned(), |holder| holder.to_string());
            return Err(StoreError::Held {
                path: path.to_owned(),
                by,
            });
        }
        Err(TryLockError::Error(cause)) => return Err(StoreError::not_saved(path, cause)),
    }
    // Between opening and locking, the holder before us may have removed the file: its name would lead elsewhere.
    match fstat(file) {
        Ok(status) if status.st_nlink == 1 => {}
        Ok(_) => {
            return Err(StoreError::Changed {
                path: path.to_owned(),
            });
        }
        Err(error) => return Err(StoreError::unreadable(path, error.into())),
    }
    // The note is a courtesy: where it cannot be left, the lock still holds.
    let _ = write(folder, &name);
    Ok(Note {
        folder: Arc::clone(folder),
        name,
    })
}

fn read(folder: &OwnedFd, name: &str) -> Option<Holder> {
    let file = File::from(openat(folder, name, OFlags::RDONLY | CAREFUL, Mode::empty()).ok()?);
    if !file.metadata().ok()?.is_file() {
        return None;
    }
    let mut text = String::new();
    file.take(LONGEST).read_to_string(&mut text).ok()?;
    serde_json::from_str(&text).ok()
}

fn write(folder: &OwnedFd, name: &str) -> io::Result<()> {
    // Removed and made anew, never overwritten: the name could have been put there as a second one of another file.
    let _ = unlinkat(folder, name, AtFlags::empty());
    let flags = OFlags::WRONLY | OFlags::CREATE | OFlags::EXCL | CAREFUL;
    let mut file = File::from(openat(folder, name, flags, Mode::RUSR | Mode::WUSR)?);
    file.write_all(serde_json::to_string(&Holder::this_process())?.as_bytes())
}

impl Drop for Note {
    fn drop(&mut self) {
        // One that stays behind names a process that is gone, and is not believed.
        let _ = unlinkat(&*self.folder, &self.name, AtFlags::empty());
    }
}
