//! The calls of an audit as tables for other programs: Parquet by month, and the same audit as standard SQL.
//!
//! ```text
//! OUT/audit.sql
//! OUT/calls/month=2026-01/part-00000.parquet
//! OUT/readings/month=2026-01/part-00001.parquet      put_backs, not_taken, stays, noted alike
//! ```
//!
//! A call's rows lie in the month in which it was opened, in UTC. What waits to be written is bounded, however long the archive
//! is. All of it is written beside its place and takes it in one step at the end, so that nobody reads half an export, and nothing
//! that was there is written over.

mod error;
mod left_behind;
mod parts;
mod place;
mod rows;
mod sql;
mod tables;

use std::path::Path;

pub use error::ExportError;
pub use left_behind::left_behind;
pub use sql::{Believed, sql};

use crate::audit::{Call, Window};
use parts::Parts;
use place::Place;

/// An export on its way. One that is dropped before [`Export::finish`] leaves nothing behind.
#[derive(Debug)]
pub struct Export {
    place: Place,
    parts: Parts,
    window: Window,
}

impl Export {
    /// Begins an export into a folder that is not there yet, or is empty.
    ///
    /// # Errors
    ///
    /// Where something is there already, or nothing can be written.
    pub fn begin(out: &Path, window: Window) -> Result<Self, ExportError> {
        Ok(Self {
            place: Place::beside(out)?,
            parts: Parts::default(),
            window,
        })
    }

    /// Takes a call, and the name of the folder it lies in.
    ///
    /// # Errors
    ///
    /// Where it cannot be written.
    pub fn add(&mut self, call: &Call, folder: &str) -> Result<(), ExportError> {
        self.parts.add(self.place.folder(), call, folder)
    }

    /// Writes what is left and puts everything into its place: the number of calls in it. `believed` says between
    /// which times clocks are believed.
    ///
    /// Of no calls there is nothing to write, and the place stays as it was.
    ///
    /// # Errors
    ///
    /// Where it cannot be written, or something has come to be there meanwhile.
    pub fn finish(mut self, believed: Believed) -> Result<u64, ExportError> {
        self.parts.finish(self.place.folder())?;
        if self.parts.calls() > 0 {
            self.place.write("audit.sql", &sql(self.window, believed))?;
            self.place.take()?;
        }
        Ok(self.parts.calls())
    }
}
