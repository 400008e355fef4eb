//! How `pack` is called.

use std::path::PathBuf;

use clap::Args;

use super::Sessions;
use super::values::month;

/// What is packed.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(in crate::cli) struct Packing {
    /// Only this month, also where it is not over: a year and a month, for instance 2026-11.
    #[arg(long, value_name = "MONTH", value_parser = month, conflicts_with = "unpack")]
    pub month: Option<String>,
    /// Give each session of this pack a file of its own again: beside it, or in the folder of `--sessions`, where a bare name
    /// is looked for, too. A pack that lies in another folder than its sessions go into is kept.
    #[arg(long, value_name = "FILE")]
    pub unpack: Option<PathBuf>,
    /// Keep what would be removed: the sessions' own files, or the pack.
    #[arg(long)]
    pub keep: bool,
    #[command(flatten)]
    pub sessions: Sessions,
}
