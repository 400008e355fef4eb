//! The command line. Its doc comments are the help.

mod audit;
mod formats;
mod formula;
mod pack;
mod practice;
mod rehearse;
mod shared;
mod values;

use std::path::PathBuf;

use clap::{Parser, Subcommand};

pub(super) use self::audit::Audited;
pub(super) use self::formats::{
    AuditFormat, CheckFormat, FormulaFormat, HistoryFormat, PictureFormat, PracticeFormat, RehearseFormat,
    ReportFormat, Required, Units,
};
pub(super) use self::formula::Compute;
pub(super) use self::pack::Packing;
pub(super) use self::practice::Practising;
pub(super) use self::rehearse::Rehearse;
pub(super) use self::shared::{Overlays, Place, Sessions, Walking};
use self::values::{depth, kind};
use crate::library::FileKind;

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
    ///
    /// It goes on with the library, the site and the equipment that it was opened with, whatever is named here.
    Resume {
        /// The session, by its id or as much of its beginning as no other has; without it, the newest of this technician that is not
        /// closed.
        session: Option<String>,
        #[command(flatten)]
        walking: Walking,
    },
    /// List the sessions: open, closed, damaged.
    ///
    /// A line each: its id, when it was opened, with which tree, by whom and where, and how it stands. The exit code is 1 where
    /// one is damaged, 2 where one cannot be read.
    Sessions {
        #[command(flatten)]
        sessions: Sessions,
    },
    /// Print the job report of a session.
    Report {
        /// The session, by its id or as much of its beginning as no other has; `proofwalk sessions` lists them.
        session: String,
        /// How to print it.
        #[arg(long, value_enum, default_value_t = ReportFormat::Text)]
        format: ReportFormat,
        #[command(flatten)]
        sessions: Sessions,
    },
    /// Print a call in at most twelve short lines, to read out on the phone.
    Brief {
        /// The session, by its id or as much of its beginning as no other has; `proofwalk sessions` lists them.
        session: String,
        #[command(flatten)]
        sessions: Sessions,
    },
    /// Print what is known of an equipment: earlier calls, readings with their trend, its plate, what was advised.
    History {
        /// The equipment's id.
        equipment: String,
        /// How to print it.
        #[arg(long, value_enum, default_value_t = HistoryFormat::Text)]
        format: HistoryFormat,
        #[command(flatten)]
        sessions: Sessions,
    },
    /// Walk a session again, step by step: what was asked, what was answered, and what came of it.
    ///
    /// What was taken back is shown, too. Without a terminal it prints all steps at once.
    Replay {
        /// The session, by its id or as much of its beginning as no other has; `proofwalk sessions` lists them.
        session: String,
        #[command(flatten)]
        sessions: Sessions,
    },
    /// Check a library.
    Check {
        #[command(flatten)]
        library: Place,
        #[command(flatten)]
        overlays: Overlays,
        /// Refuse what is not fit for release: drafts, and approved trees without an edition and a note of what changed.
        #[arg(long)]
        release: bool,
        /// How to print what is found.
        #[arg(long, value_enum, default_value_t = CheckFormat::Text)]
        format: CheckFormat,
        /// Print a rule's page instead; without a rule, list them all.
        #[arg(long, value_name = "RULE", num_args = 0..=1)]
        explain: Option<Option<String>>,
        /// Check again whenever a file of the folder is saved.
        #[arg(long)]
        watch: bool,
    },
    /// Run a library's scenarios.
    ///
    /// Says which steps and edges of each tree they walk, and shows each scenario that departs from what it expects with the
    /// walk as it went and the answer on which it left the expected way. The exit code is 1 where one departs, or something is in
    /// no scenario that `--require` asks for; `--cost` finds nothing wrong, so with it the code is 0.
    Rehearse(Rehearse),
    /// Practise on a simulated furnace with a hidden fault.
    ///
    /// Free: you choose what is looked at and measured, each for its minutes, and name the fault once what you took proves it.
    /// A right name that nothing proves is told as a lucky guess. Where nothing is wrong, name that, too. Who stops has named
    /// nothing.
    ///
    /// Guided, with `--guided`: the tree asks, you say where the probe goes, and the furnace answers when it is where it
    /// should be. Elsewhere it shows what is measured there, and the minutes count.
    ///
    /// Afterwards it is told what the fault was, what would have proven it, your minutes against the tree's, the parts you
    /// condemned for nothing, the dangers you overlooked, what you left open, and the tree's way.
    ///
    /// It is kept as a session that says that it is practice: `resume` takes it up, `report` and `replay` tell it, and an
    /// audit does not count it as a call. For a class, give everybody the same `--level` and `--seed`: the same furnace, the
    /// same fault, and meters that show the same.
    Practice(Practising),
    /// Draw a tree, to look at or to print.
    Picture {
        /// The tree, for instance no-heat.
        tree: String,
        /// How to draw it.
        #[arg(long, value_enum, default_value_t = PictureFormat::Svg)]
        format: PictureFormat,
        /// Draw only what follows from a step.
        #[arg(long, value_name = "STEP")]
        from: Option<String>,
        /// Draw only so many steps on.
        #[arg(long, value_name = "N", value_parser = depth, allow_negative_numbers = true)]
        depth: Option<usize>,
        /// The library's folder; without it, the built-in library.
        #[arg(long, value_name = "DIR")]
        library: Option<PathBuf>,
        #[command(flatten)]
        overlays: Overlays,
    },
    /// List, explain and compute what the trade computes.
    ///
    /// For instance: proofwalk formula temperature_rise supply='128 °F ± 1 °F' return='20 °C'
    Formula(Compute),
    /// Check session files: chain, order, and that every move follows from its library.
    ///
    /// A line each: whether it is whole and follows from its library, and the sum of its last line, to note down elsewhere. Each move
    /// is decided again from what was answered; the answers themselves, their times and names are believed. The exit code is 1
    /// where one is damaged or does not follow, 2 where one cannot be checked.
    Verify {
        /// Session files, packs of them, or folders.
        #[arg(required = true, value_name = "PATH")]
        paths: Vec<PathBuf>,
    },
    /// Audit folders of sessions: what came back, what was wrong, and what the numbers are too small to say.
    ///
    /// An audit finds causes; it does not assign liability.
    Audit(Audited),
    /// Pack the closed sessions of each month that is over into one file, `2026-11.sessions.zip`, or unpack one.
    ///
    /// Everything reads packed sessions as before. Their own files are removed once the pack was read back from the disk.
    Pack(Packing),
    /// What an editor should know of the files of a library: JSON Schema.
    ///
    /// Without a kind it lists the kinds and says how an editor comes to know.
    Schema {
        /// The kind of file whose schema to print.
        #[arg(value_parser = kind(), conflicts_with = "write")]
        kind: Option<FileKind>,
        /// Write the schemas of all kinds into the folder schema/ of this library.
        #[arg(long, value_name = "DIR")]
        write: Option<PathBuf>,
        /// Also put the line that names its schema at the top of each file of the library, or put it right.
        #[arg(long, requires = "write")]
        modelines: bool,
    },
    /// Print a script that completes commands in a shell.
    Completions {
        /// The shell.
        shell: clap_complete::Shell,
    },
    /// Print the manual page.
    Man,
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
