//! A sum of what is written, worked out on the way.

use std::io::{self, Write};

use sha2::{Digest, Sha256};

use super::Hash;

/// Writes on, and keeps the SHA-256 sum of it all.
#[derive(Debug)]
pub struct Summing<W> {
    to: W,
    sum: Sha256,
    written: u64,
}

impl<W: Write> Summing<W> {
    /// Nothing has been written yet.
    pub fn new(to: W) -> Self {
        Self {
            to,
            sum: Sha256::new(),
            written: 0,
        }
    }

    /// How many bytes were written.
    pub fn written(&self) -> u64 {
        self.written
    }

    /// Their sum.
    pub fn sum(&self) -> Hash {
        Hash::from_digest(self.sum.clone().finalize().into())
    }
}

impl<W: Write> Write for Summing<W> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let written = self.to.write(bytes)?;
        self.sum.update(&bytes[..written]);
        self.written += written as u64;
        Ok(written)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.to.flush()
    }
}
