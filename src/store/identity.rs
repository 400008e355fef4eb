//! Whether a file is still the one that was looked at.

use rustix::fs::Stat;

/// Seconds that a file must have rested: within the coarsest clock of file systems, two writes look like one.
pub(super) const REST: i64 = 2;

/// What the system says of a file without reading it. Where two are equal, and neither is fresh, nothing was written between.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Identity {
    device: u64,
    inode: u64,
    size: u64,
    /// When it was last written, in seconds and nanoseconds. A program can set this to what it likes.
    modified: (i64, i64),
    /// When it was last changed in any way. Only the clock sets this.
    changed: (i64, i64),
}

impl Identity {
    /// How many numbers tell one.
    pub const WORDS: usize = 7;

    /// The numbers that tell it.
    pub fn words(self) -> [u64; Self::WORDS] {
        let ((written, nanoseconds), (changed, more)) = (self.modified, self.changed);
        let times = [written, nanoseconds, changed, more].map(|time| time as u64);
        let [a, b, c, d] = times;
        [self.device, self.inode, self.size, a, b, c, d]
    }

    /// Whether a later change of the file would show: it had rested at this second.
    pub fn is_settled(&self, second: i64) -> bool {
        self.changed.0 < second.saturating_sub(REST)
    }

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
    pub(super) fn bytes(&self) -> [u8; 8 * Self::WORDS] {
        let mut bytes = [0; 8 * Self::WORDS];
        for (place, word) in bytes.chunks_exact_mut(8).zip(self.words()) {
            place.copy_from_slice(&word.to_be_bytes());
        }
        bytes
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

impl From<[u64; Identity::WORDS]> for Identity {
    fn from([device, inode, size, written, nanoseconds, changed, more]: [u64; Self::WORDS]) -> Self {
        Self {
            device,
            inode,
            size,
            modified: (written as i64, nanoseconds as i64),
            changed: (changed as i64, more as i64),
        }
    }
}
