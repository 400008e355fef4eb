//! How `rehearse` is called.

use std::path::PathBuf;

use clap::Args;

use super::values::{calls, seed};
use super::{Overlays, Place, RehearseFormat, Required};

/// How a library is rehearsed.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(in crate::cli) struct Rehearse {
    #[command(flatten)]
    pub library: Place,
    #[command(flatten)]
    pub overlays: Overlays,
    /// Only the scenarios with this word in their title, their file's name or their tree's, or with `--bench` the faults of
    /// this name or part, or with this word in their name; may be given several times.
    #[arg(long, value_name = "WORD")]
    pub only: Vec<String>,
    /// List every edge that no scenario takes, not just a few of each tree.
    #[arg(long, conflicts_with = "bench")]
    pub uncovered: bool,
    /// Fail where some of these, that a walk can come to, is in no scenario.
    #[arg(long, value_enum, value_name = "WHAT", conflicts_with = "bench")]
    pub require: Option<Required>,
    /// Print what each tree takes to come to a verdict instead, and how much of that an order of questions could spare.
    #[arg(long, conflicts_with_all = ["only", "uncovered", "require"])]
    pub cost: bool,
    /// Walk calls at simulated furnaces with every fault they can have, and hold each verdict against the truth.
    ///
    /// The exit code is 1 where a good part was condemned, or a condition put right that was in order; with `--season` it is 0
    /// whatever its calls came to, since a season is to have wrong verdicts in it.
    #[arg(long, conflicts_with = "cost")]
    pub bench: bool,
    #[command(flatten)]
    pub trials: Trials,
    /// How to print what comes of it.
    #[arg(long, value_enum, default_value_t = RehearseFormat::Text)]
    pub format: RehearseFormat,
    /// Run them again whenever a file of the folder is saved.
    #[arg(long)]
    pub watch: bool,
}

/// Which calls are walked at simulated furnaces.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(in crate::cli) struct Trials {
    /// With `--bench`: so many calls for each fault; with `--season`, so many in all.
    ///
    /// A single call, `--only FAULT --calls 1`, is shown step by step, also where its verdict is right; of more only those that
    /// were missed or wrong are shown.
    #[arg(long, value_name = "N", default_value_t = 100, requires = "bench", value_parser = calls, allow_negative_numbers = true)]
    pub calls: u32,
    /// With `--bench`: the seed of each fault's first call; the next has the next, up to the largest, 18446744073709551615. The same
    /// seeds are the same calls.
    #[arg(long, value_name = "N", default_value_t = 0, requires = "bench", value_parser = seed, allow_negative_numbers = true)]
    pub seed: u64,
    /// With `--bench`: every furnace has a second fault, drawn at random.
    #[arg(long, requires = "bench")]
    pub pairs: bool,
    /// With `--bench`: write the sessions of a company's simulated season into this folder, with what was true of each in
    /// `truth.csv` and the sums in `truth.json`.
    ///
    /// Its technicians have habits, good and bad, and owners call again where something was got wrong. With `--format json`
    /// it prints the sums of `truth.json` and, as `files`, where the season was written. `--calls` are those of the whole
    /// season, and `--seed` is the season's: another is another winter.
    #[arg(long, value_name = "DIR", requires = "bench", conflicts_with_all = ["pairs", "only", "watch"])]
    pub season: Option<PathBuf>,
}
