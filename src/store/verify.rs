//! Whether a session file is what was written.

use std::io::{self, BufRead, BufReader};
use std::path::Path;

use rustix::fs::CWD;

use super::StoreError;
use super::open::{self, Access};
use super::records::{ChainReport, Records};

/// Checks every line of a session file and the chain they form, holding one line at a time.
///
/// A changed, missing, doubled or moved line is found by the lines around it. What the chain alone cannot show is a file
/// cut at the end of a line, a last record changed, or a whole file written anew: for that, compare
/// [`ChainReport::head`] with one noted down elsewhere.
///
/// # Errors
///
/// Where the reader fails. Damage is no error here, it is what the report is for.
pub fn verify(reader: impl BufRead) -> io::Result<ChainReport> {
    Records::new(reader).each(drop)
}

/// [`verify`] for a file by its path, whoever it belongs to.
///
/// # Errors
///
/// [`StoreError`] where there is no such file, it is no regular file with one name, or it cannot be read.
pub fn verify_file(path: &Path) -> Result<ChainReport, StoreError> {
    let file = open::session(CWD, path, path, Access::Read)?;
    verify(BufReader::new(file)).map_err(|cause| StoreError::unreadable(path, cause))
}
