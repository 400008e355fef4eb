//! The command line. Its doc comments are the help.

mod formats;
mod values;

use std::path::{Path, PathBuf};

use clap::{Args, Parser, Subcommand};
use jiff::Timestamp;

pub(super) use self::formats::{
    AuditFormat, CheckFormat, FormulaFormat, HistoryFormat, PictureFormat, PracticeFormat, RehearseFormat,
    ReportFormat, Required, Units,
};
use self::values::{clock, days, identity, kind, month};
use super::failure::{Failure, WRONG_USE};
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
        /// The session.
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
    /// walk as it went and the answer on which it left the expected way.
    Rehearse(Rehearse),
    /// Practise on a simulated furnace with a hidden fault.
    ///
    /// Free: you choose what is looked at and measured, each for its minutes, and name the fault once what you took proves it.
    /// A right name that nothing proves is told as a lucky guess. Where nothing is wrong, name that, or stop and say so.
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
        #[arg(long, value_name = "N")]
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
    /// Check session files: chain, order, replay.
    Verify {
        /// Session files, or folders of them.
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

/// How a library is rehearsed.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(super) struct Rehearse {
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
    /// The exit code is 1 where a good part was condemned, or a condition put right that was in order.
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

/// Which furnace is practised on, and how.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(super) struct Practising {
    /// The tree asks, and the furnace answers where the probe is put where it should be.
    #[arg(long)]
    pub guided: bool,
    /// How hard it is: 1, 2 or 3.
    ///
    /// 1: one of the faults that are met every winter. 2: any fault the furnace can have, also rare ones, or none at all.
    /// 3: two faults at once, of which one is to be found; or one that shows only warm, under load, in the wind or after a
    /// while.
    #[arg(long, value_name = "N", default_value_t = 1, value_parser = clap::value_parser!(u8).range(1..=3))]
    pub level: u8,
    /// Set the practice sessions below these folders side by side instead: each furnace with everybody who practised on it, and
    /// each apprentice.
    #[arg(long, value_name = "DIR", num_args = 1.., conflicts_with_all = ["guided", "level", "seed", "library", "folders", "sessions", "plain", "clock"])]
    pub class: Vec<PathBuf>,
    /// With `--class`: how to print it; without it, as text.
    #[arg(long, value_enum)]
    pub format: Option<PracticeFormat>,
    /// The furnace of this number: the same level and seed are the same furnace for a whole class. Without it, any.
    #[arg(long, value_name = "N")]
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

/// Which calls are walked at simulated furnaces.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(super) struct Trials {
    /// With `--bench`: so many calls for each fault; with `--season`, so many in all.
    #[arg(long, value_name = "N", default_value_t = 100, requires = "bench", value_parser = clap::value_parser!(u32).range(1..=1_000_000))]
    pub calls: u32,
    /// With `--bench`: the seed of each fault's first call; the next has the next. The same seeds are the same calls.
    #[arg(long, value_name = "N", default_value_t = 0, requires = "bench")]
    pub seed: u64,
    /// With `--bench`: every furnace has a second fault, drawn at random.
    #[arg(long, requires = "bench")]
    pub pairs: bool,
    /// With `--bench`: write the sessions of a company's simulated season into this folder, with what was true of each in
    /// `truth.csv` and the sums in `truth.json`.
    ///
    /// Its technicians have habits, good and bad, and owners call again where something was got wrong. With `--format json`
    /// it prints the sums of `truth.json` and, as `files`, where the season was written.
    #[arg(long, value_name = "DIR", requires = "bench", conflicts_with_all = ["pairs", "only", "watch"])]
    pub season: Option<PathBuf>,
}

/// What is computed.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(super) struct Compute {
    /// The formula, to explain it; a group, a unit or some words, to list those with them. Without it, all are listed.
    pub name: Option<String>,
    /// What to compute it on. A bare number is in the argument's own unit; any unit of the kind is taken. How far a value
    /// may be off can stand behind it: `supply='128 °F ± 1 °F'`, also written `+-`.
    #[arg(value_name = "ARG=QUANTITY", allow_negative_numbers = true)]
    pub inputs: Vec<String>,
    /// How far an input may be off; may be given several times.
    #[arg(long = "accuracy", value_name = "ARG=±QUANTITY")]
    pub accuracies: Vec<String>,
    /// The system of units of the page, or of the result; without it, the one that the inputs are given in.
    #[arg(long, value_enum, ignore_case = true)]
    pub units: Option<Units>,
    /// How to print it.
    #[arg(long, value_enum, default_value_t = FormulaFormat::Text)]
    pub format: FormulaFormat,
}

/// What is audited.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(super) struct Audited {
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

/// What is packed.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(super) struct Packing {
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

/// Where sessions are kept.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(super) struct Sessions {
    /// The folder of the sessions; without it, the usual place for a program's state.
    #[arg(long, value_name = "DIR")]
    pub sessions: Option<PathBuf>,
}

/// Where the library is that is worked on.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(super) struct Place {
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
pub(super) struct Overlays {
    /// A folder laid over the library: it adds to it, and replaces by name. Of several, the later ones win.
    #[arg(long = "overlay", value_name = "DIR")]
    pub folders: Vec<PathBuf>,
}

/// How a call is walked.
#[derive(Clone, Debug, Args)]
#[group(skip)]
pub(super) struct Walking {
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

#[cfg(test)]
mod tests {
    use clap::CommandFactory;

    use super::Arguments;

    #[test]
    fn the_command_line_holds_together() {
        Arguments::command().debug_assert();
    }
}
