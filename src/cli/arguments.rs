//! The command line. Its doc comments are the help.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use jiff::Timestamp;

/// Walks a furnace service call from a fault tree to a proven verdict, and keeps the record.
///
/// Without a command it shows the complaints on offer and the calls that are not finished.
#[derive(Debug, Parser)]
#[command(name = "proofwalk", version, max_term_width = 100)]
pub(super) struct Arguments {
    #[command(subcommand)]
    pub command: Option<Command>,
    #[command(flatten)]
    pub home: Walking,
}

#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Walk a call.
    Walk {
        /// The tree of the complaint, for instance no-heat.
        tree: String,
        #[command(flatten)]
        walking: Walking,
        /// A scenario file answers; the exit code is 0 where its `expect` holds.
        #[arg(long, value_name = "FILE")]
        answers: Option<PathBuf>,
    },
    /// Take up a call that was left or cut off.
    Resume {
        /// The session; without it, the newest of this technician that is not closed.
        session: Option<String>,
        #[command(flatten)]
        walking: Walking,
    },
    /// List the sessions: open, closed, damaged.
    Sessions {
        #[command(flatten)]
        sessions: Sessions,
    },
    /// Print the job report of a session.
    Report {
        /// The session.
        session: String,
        /// How to print it.
        #[arg(long, value_enum, default_value_t = ReportFormat::Text)]
        format: ReportFormat,
        #[command(flatten)]
        sessions: Sessions,
    },
    /// Print a call in at most twelve short lines, to read out on the phone.
    Brief {
        /// The session.
        session: String,
        #[command(flatten)]
        sessions: Sessions,
    },
    /// Check a library.
    Check {
        /// The library's folder; without it, the built-in library.
        folder: Option<PathBuf>,
        /// How to print what is found.
        #[arg(long, value_enum, default_value_t = CheckFormat::Text)]
        format: CheckFormat,
        /// Print a rule's page instead.
        #[arg(long, value_name = "RULE")]
        explain: Option<String>,
    },
    /// Run a library's scenarios.
    Rehearse {
        /// The library's folder; without it, the built-in library.
        folder: Option<PathBuf>,
    },
    /// Check session files: chain, order, replay.
    Verify {
        /// Session files, or folders of them.
        #[arg(required = true, value_name = "PATH")]
        paths: Vec<PathBuf>,
    },
    /// Print a script that completes commands in a shell.
    Completions {
        /// The shell.
        shell: clap_complete::Shell,
    },
    /// Print the manual page.
    Man,
}

/// Where sessions are kept.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(super) struct Sessions {
    /// The folder of the sessions; without it, the usual place for a program's state.
    #[arg(long, value_name = "DIR")]
    pub sessions: Option<PathBuf>,
}

/// How a call is walked.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(super) struct Walking {
    /// The library's folder; without it, the built-in library.
    #[arg(long, value_name = "DIR")]
    pub library: Option<PathBuf>,
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

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum ReportFormat {
    Text,
    Json,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum CheckFormat {
    Text,
    Json,
    Sarif,
}

/// Longest id of a technician, a site or equipment, in characters.
const LONGEST_ID: usize = 64;

fn identity(text: &str) -> Result<String, String> {
    let plain = |c: char| c.is_alphanumeric() || " ._-/#@".contains(c);
    if text.trim().is_empty() || text.chars().count() > LONGEST_ID || !text.chars().all(plain) {
        return Err(format!(
            "write an id of at most {LONGEST_ID} letters, digits, spaces and . _ - / # @"
        ));
    }
    Ok(text.trim().to_owned())
}

fn clock(text: &str) -> Result<Timestamp, String> {
    text.parse()
        .map_err(|_| "write a time like 2026-01-31T14:05:00Z".to_owned())
}

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    use super::Arguments;

    #[test]
    fn the_command_line_holds_together() {
        Arguments::command().debug_assert();
    }
}
