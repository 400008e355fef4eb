//! Whether a file is still the one that was looked at.

use rustix::fs::Stat;

/// What the system says of a file without reading it. Where two are equal, and neither is fresh, nothing was written between.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Identity {
    device: u64,
    inode: u64,
    size: u64,
    /// When it was last written, in seconds and nanoseconds. A program can set this to what it likes.
    modified: (i64, i64),
    /// When it was last changed in any way. Only the clock sets this.
    changed: (i64, i64),
}

impl Identity {
    #[allow(
        clippy::unnecessary_cast,
        reason = "the types of these fields differ between systems"
    )]
    pub(super) fn of(status: &Stat) -> Self {
        Self {
            device: status.st_dev as u64,
            inode: status.st_ino as u64,
            size: status.st_size as u64,
            modified: (status.st_mtime as i64, status.st_mtime_nsec as i64),
            changed: (status.st_ctime as i64, status.st_ctime_nsec as i64),
        }
    }

    /// All of it, to make a sum of.
    pub(super) fn bytes(&self) -> Vec<u8> {
        let (written, nanoseconds) = self.modified;
        let (changed, more_nanoseconds) = self.changed;
        let times = [written, nanoseconds, changed, more_nanoseconds].map(i64::to_be_bytes);
        let rest = [self.device, self.inode, self.size].map(u64::to_be_bytes);
        [times.as_flattened(), rest.as_flattened()].concat()
    }

    /// Its length, in bytes.
    pub(super) fn size(&self) -> u64 {
        self.size
    }

    /// The second of the system's clock in which it was last changed in any way.
    pub(super) fn changed_second(&self) -> i64 {
        self.changed.0
    }
}
