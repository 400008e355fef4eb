//! Entries of one name in a pack of others: what reads ZIP files keeps the last of them, and says nothing of the first.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::{self, BufReader, Read};
use std::os::unix::fs::FileExt;
use std::path::Path;

use super::pack::{Cover, Pack};
use crate::store::error::StoreError;

/// What each entry of a table of contents begins with, as the public specification of ZIP files (APPNOTE) has it.
const SIGNATURE: [u8; 4] = *b"PK\x01\x02";

/// Bytes of an entry before its name.
const FIXED: usize = 46;

/// The names that stand more than once in the table of contents that begins at a byte, each with how often.
pub(super) fn names(file: File, start: u64) -> io::Result<BTreeMap<String, u64>> {
    let mut table = BufReader::new(Onwards { file, at: start });
    let mut times = BTreeMap::new();
    while let Some(name) = next(&mut table)? {
        *times.entry(name).or_insert(0) += 1;
    }
    times.retain(|_, times| *times > 1);
    Ok(times)
}

/// The name of the next entry; none where the table ends.
fn next(table: &mut impl Read) -> io::Result<Option<String>> {
    let mut fixed = [0; FIXED];
    table.read_exact(&mut fixed[..SIGNATURE.len()])?;
    if !fixed.starts_with(&SIGNATURE) {
        return Ok(None);
    }
    table.read_exact(&mut fixed[SIGNATURE.len()..])?;
    let length = |at: usize| usize::from(u16::from_le_bytes([fixed[at], fixed[at + 1]]));
    let mut name = vec![0; length(28)];
    table.read_exact(&mut name)?;
    let rest = length(30) + length(32);
    io::copy(&mut table.take(rest as u64), &mut io::sink())?;
    Ok(Some(String::from_utf8_lossy(&name).into_owned()))
}

/// A file from a byte on, without moving where others read it.
struct Onwards {
    file: File,
    at: u64,
}

impl Read for Onwards {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let read = self.file.read_at(into, self.at)?;
        self.at += read as u64;
        Ok(read)
    }
}

impl Cover {
    /// The entries of which several have one name, once for each of them: the name, and why none of them is read.
    pub(in crate::store) fn doubled(&self) -> impl Iterator<Item = (String, StoreError)> {
        self.doubled.iter().flat_map(move |(entry, times)| {
            let one = move |_| {
                let name = format!("{}/{entry}", self.name);
                (name, error(&self.path, entry, *times))
            };
            (0..*times).map(one)
        })
    }
}

impl Pack {
    /// Its entries of which several have one name, once for each of them: the name, and why none of them is read.
    pub fn doubled(&self) -> impl Iterator<Item = (String, StoreError)> {
        self.cover.doubled()
    }

    /// The same pack, where no two entries have one name: what is written anew or removed must hold all of it.
    pub(super) fn single(self) -> Result<Self, StoreError> {
        match self.cover.doubled.iter().next() {
            Some((entry, times)) => Err(error(&self.cover.path, entry, *times)),
            None => Ok(self),
        }
    }
}

fn error(path: &Path, entry: &str, times: u64) -> StoreError {
    StoreError::BadPack {
        path: path.to_owned(),
        why: format!("{times} of its entries are named {entry}, so none of them is read"),
    }
}
