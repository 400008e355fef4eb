//! What several commands take: a library, what is laid over it, sessions, a call.

use std::path::{Path, PathBuf};

use clap::Args;
use jiff::Timestamp;

use super::values::{clock, identity};
use crate::cli::failure::{Failure, WRONG_USE};

/// Where sessions are kept.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(in crate::cli) struct Sessions {
    /// The folder of the sessions; without it, the usual place for a program's state.
    #[arg(long, value_name = "DIR")]
    pub sessions: Option<PathBuf>,
}

/// Where the library is that is worked on.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(in crate::cli) struct Place {
    /// The library's folder; without it, the built-in library.
    folder: Option<PathBuf>,
    /// The same as the folder, as for the other commands.
    #[arg(long, value_name = "DIR")]
    library: Option<PathBuf>,
}

impl Place {
    /// The folder, if one is named; a failure where two are.
    pub fn folder(&self) -> Result<Option<&Path>, Failure> {
        if let (Some(one), Some(other)) = (&self.folder, &self.library)
            && one != other
        {
            return Err(
                Failure::new(WRONG_USE, "two libraries are named, and only one is looked at")
                    .help("name it once: as the folder or with `--library`, which mean the same"),
            );
        }
        Ok(self.folder.as_deref().or(self.library.as_deref()))
    }
}

/// What is laid over the library.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(in crate::cli) struct Overlays {
    /// A folder laid over the library: it adds to it, and replaces by name. Of several, the later ones win.
    #[arg(long = "overlay", value_name = "DIR")]
    pub folders: Vec<PathBuf>,
}

/// How a call is walked.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(in crate::cli) struct Walking {
    /// The library's folder; without it, the built-in library.
    #[arg(long, value_name = "DIR")]
    pub library: Option<PathBuf>,
    #[command(flatten)]
    pub overlays: Overlays,
    #[command(flatten)]
    pub sessions: Sessions,
    /// Who walks the call.
    #[arg(long, value_name = "ID", env = "PROOFWALK_TECHNICIAN", value_parser = identity)]
    pub technician: Option<String>,
    /// Where.
    #[arg(long, value_name = "ID", value_parser = identity)]
    pub site: Option<String>,
    /// At which equipment.
    #[arg(long, value_name = "ID", value_parser = identity)]
    pub equipment: Option<String>,
    /// Lines instead of the screen; chosen by itself where there is no terminal.
    #[arg(long)]
    pub plain: bool,
    /// The time to write into the session, for demonstrations and tests.
    #[arg(long, value_name = "TIME", value_parser = clock)]
    pub clock: Option<Timestamp>,
}
