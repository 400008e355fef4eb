//! Answers that are kept so that they need not be worked out again. All of it may be deleted at any time.

use std::fs::File;
use std::io::{self, BufWriter, Write};
use std::os::fd::{AsFd, OwnedFd};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::SystemTime;

use rustix::fs::{AtFlags, renameat, unlinkat};

use super::folder::SessionFolder;
use super::kept::{self, place};
use super::open::{self, Access};

/// Most answers that are kept; the oldest go first.
const MOST: usize = 64;

/// A folder of kept answers, one file each.
#[derive(Debug)]
pub struct Cache {
    folder: SessionFolder,
}

/// An answer that is being written; it is gone unless it is finished.
#[derive(Debug)]
pub struct Draft {
    folder: Arc<OwnedFd>,
    hidden: String,
    name: String,
    out: BufWriter<File>,
    is_placed: bool,
}

impl Cache {
    /// The folder `proofwalk/NAME` where the XDG Base Directory Specification has what may be deleted; makes it. None where the
    /// user has no home, or the folder is none to be trusted.
    pub fn open(name: &str) -> Option<Self> {
        let home = |variable, below: &str| {
            let path = PathBuf::from(std::env::var_os(variable)?).join(below);
            path.is_absolute().then_some(path)
        };
        let place = home("XDG_CACHE_HOME", "").or_else(|| home("HOME", ".cache"))?;
        Self::at(&place.join("proofwalk").join(name))
    }

    /// A cache in this folder.
    pub fn at(path: &Path) -> Option<Self> {
        let folder = SessionFolder::open(path).ok()?;
        Some(Self { folder })
    }

    /// An answer that was kept by this user; none where none was, or it is no plain file.
    pub fn read(&self, name: &str) -> Option<File> {
        let path = self.folder.path.join(name);
        open::session(self.folder.fd.as_fd(), name.as_ref(), &path, Access::Append).ok()
    }

    /// Begins an answer that is written bit by bit; none where that fails.
    pub fn draft(&self, name: &str) -> Option<Draft> {
        self.folder.check_rights().ok()?;
        self.make_room();
        let folder = Arc::clone(&self.folder.fd);
        let (file, hidden) = kept::begin(&folder, name).ok()?;
        Some(Draft {
            folder,
            hidden,
            name: name.to_owned(),
            out: BufWriter::with_capacity(1 << 16, file),
            is_placed: false,
        })
    }

    /// Forgets an answer.
    pub fn remove(&self, name: &str) {
        let _ = unlinkat(&self.folder.fd, name, AtFlags::empty());
    }

    /// Keeps an answer, which takes its place once it is whole. Where that fails, it is worked out again next time.
    pub fn write(&self, name: &str, write: impl FnOnce(&mut dyn Write) -> io::Result<()>) {
        if self.folder.check_rights().is_ok() {
            self.make_room();
            let _ = place(&self.folder.fd, name, |file| {
                let mut out = BufWriter::with_capacity(1 << 16, file);
                write(&mut out)?;
                out.flush()
            });
        }
    }

    fn make_room(&self) {
        let Ok(entries) = std::fs::read_dir(&self.folder.path) else {
            return;
        };
        let mut kept: Vec<(SystemTime, std::ffi::OsString)> = entries
            .flatten()
            .filter_map(|entry| Some((entry.metadata().ok()?.modified().ok()?, entry.file_name())))
            .collect();
        kept.sort_unstable();
        let too_many = kept.len().saturating_sub(MOST - 1);
        for (_, name) in kept.into_iter().take(too_many) {
            let _ = unlinkat(&self.folder.fd, &name, AtFlags::empty());
        }
    }
}

impl Draft {
    /// It is whole: it takes the place of what was kept before. Where that fails, nothing is kept.
    pub fn finish(mut self) {
        let is_written = self.out.flush().is_ok();
        self.is_placed = is_written && renameat(&self.folder, &self.hidden, &self.folder, &self.name).is_ok();
    }
}

impl Write for Draft {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.out.write(bytes)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.out.flush()
    }
}

impl Drop for Draft {
    fn drop(&mut self) {
        if !self.is_placed {
            let _ = unlinkat(&self.folder, &self.hidden, AtFlags::empty());
        }
    }
}
