//! How `practice` is called.

use std::path::PathBuf;

use clap::Args;
use jiff::Timestamp;

use super::values::{clock, identity, level, seed};
use super::{Overlays, PracticeFormat, Sessions};

/// Which furnace is practised on, and how.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(in crate::cli) struct Practising {
    /// The tree asks, and the furnace answers where the probe is put where it should be.
    #[arg(long)]
    pub guided: bool,
    /// How hard it is: 1, 2 or 3.
    ///
    /// 1: one of the faults that are met every winter. 2: any fault the furnace can have, also rare ones, or none at all.
    /// 3: two faults at once, of which one is to be found; or one that shows only warm, under load, in the wind or after a
    /// while.
    #[arg(long, value_name = "N", default_value_t = 1, value_parser = level, allow_negative_numbers = true)]
    pub level: u8,
    /// Set the practice sessions below these folders side by side instead: each furnace with everybody who practised on it and,
    /// once all have finished or with `--tell`, with what was wrong; and each apprentice. Calls at a house are left out, and counted.
    #[arg(long, value_name = "DIR", num_args = 1.., conflicts_with_all = ["guided", "level", "seed", "library", "folders", "sessions", "plain", "clock"])]
    pub class: Vec<PathBuf>,
    /// With `--class`: tell what was wrong also at a furnace that somebody has not finished, for instance one who never will.
    #[arg(long, requires = "class")]
    pub tell: bool,
    /// With `--class`: how to print it; without it, as text.
    #[arg(long, value_enum)]
    pub format: Option<PracticeFormat>,
    /// The furnace of this number: the same level and seed are the same furnace for a whole class. Without it, any.
    #[arg(long, value_name = "N", value_parser = seed, allow_negative_numbers = true)]
    pub seed: Option<u64>,
    /// The library's folder; without it, the built-in library.
    #[arg(long, value_name = "DIR")]
    pub library: Option<PathBuf>,
    #[command(flatten)]
    pub overlays: Overlays,
    #[command(flatten)]
    pub sessions: Sessions,
    /// Who practises.
    #[arg(long, value_name = "ID", env = "PROOFWALK_TECHNICIAN", value_parser = identity)]
    pub technician: Option<String>,
    /// Lines instead of the screen; chosen by itself where there is no terminal.
    #[arg(long)]
    pub plain: bool,
    /// The time to write into the session, for demonstrations and tests.
    #[arg(long, value_name = "TIME", value_parser = clock)]
    pub clock: Option<Timestamp>,
}
