//! What a session is written to.

use std::fs::File;
use std::io::{self, Write};
use std::os::unix::fs::MetadataExt;

/// What a journal asks of the file it writes to.
pub(super) trait Medium: std::fmt::Debug + Send {
    /// How long it is, and how many names it has.
    fn status(&self) -> io::Result<(u64, u64)>;
    fn write(&mut self, bytes: &[u8]) -> io::Result<()>;
    fn sync(&mut self) -> io::Result<()>;
    fn cut(&mut self, length: u64) -> io::Result<()>;
}

impl Medium for File {
    fn status(&self) -> io::Result<(u64, u64)> {
        self.metadata().map(|status| (status.len(), status.nlink()))
    }

    fn write(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.write_all(bytes)
    }

    fn sync(&mut self) -> io::Result<()> {
        self.sync_data()
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        self.set_len(length)
    }
}

/// A file whose loss would be no loss: nobody waits for the disk.
#[derive(Debug)]
pub(super) struct Loose(pub File);

impl Medium for Loose {
    fn status(&self) -> io::Result<(u64, u64)> {
        self.0.status()
    }

    fn write(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.0.write_all(bytes)
    }

    fn sync(&mut self) -> io::Result<()> {
        Ok(())
    }

    fn cut(&mut self, length: u64) -> io::Result<()> {
        self.0.cut(length)
    }
}
