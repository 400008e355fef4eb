//! How `audit` is called.

use std::path::PathBuf;

use clap::Args;
use jiff::Timestamp;

use super::values::{clock, days};
use super::{AuditFormat, Overlays};

/// What is audited.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(in crate::cli) struct Audited {
    /// Folders of sessions; those in them are read, too.
    #[arg(id = "audited", required = true, value_name = "DIR")]
    pub folders: Vec<PathBuf>,
    /// Days of 24 h within which the next call at the same equipment is a callback.
    #[arg(long, value_name = "DAYS", default_value_t = 30, value_parser = days, allow_negative_numbers = true)]
    pub window: u32,
    /// Read every file, also where none has changed since the last audit.
    #[arg(long)]
    pub fresh: bool,
    /// How to print it.
    #[arg(long, value_enum, default_value_t = AuditFormat::Text)]
    pub format: AuditFormat,
    /// With `--format weights`: the library's folder whose faults are weighed; without it, the built-in library.
    #[arg(long, value_name = "DIR")]
    pub library: Option<PathBuf>,
    #[command(flatten)]
    pub overlays: Overlays,
    /// Also write the calls as Parquet files by month, and the same audit as SQL, into this folder, which must be new or empty.
    #[arg(long, value_name = "DIR")]
    pub export: Option<PathBuf>,
    /// The time to take for now, for demonstrations and tests: a call more than a day ahead of it is named.
    #[arg(long, value_name = "TIME", value_parser = clock)]
    pub clock: Option<Timestamp>,
}
