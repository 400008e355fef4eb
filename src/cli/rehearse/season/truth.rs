//! What was true of a season: a line a call, and the sums.

use std::fs::File;
use std::io::{BufWriter, Write};
use std::path::{Path, PathBuf};

use serde::Serialize;

use crate::bench::season::{Crew, Season, Visit};
use crate::bench::trials::Outcome;
use crate::cli::arguments::RehearseFormat;
use crate::cli::failure::{Failure, NOT_SAVED};
use crate::cli::message::folded;
use crate::source::safe;
use crate::store::SessionId;

/// The columns of `truth.csv`.
const COLUMNS: &str = "session,equipment,technician,habit,complaint,fault,ended,outcome,insisted,left_open,\
    closed,skipped_test,because_of";

/// The sums of a season.
#[derive(Debug, Default, Serialize)]
struct Sums {
    simulated: bool,
    seed: u64,
    calls: u32,
    furnaces: u32,
    /// A verdict that names the true fault, or nothing found where nothing was wrong.
    right: u32,
    /// Handed on or unproven.
    referred: u32,
    /// Ended as if nothing were wrong.
    missed: u32,
    /// A good part condemned, or put right what was in order.
    wrong: u32,
    /// Ended on the technician's own verdict.
    insisted: u32,
    /// Calls with something left open.
    left_open: u32,
    /// Calls that were never closed.
    not_closed: u32,
    /// Calls without the test of the flue gas that was asked for.
    skipped_test: u32,
    /// Calls because an earlier one got something wrong or left it open.
    called_again: u32,
}

/// A season as another program reads it: its sums, and where the calls are told one by one.
#[derive(Debug, Serialize)]
struct Written<'a> {
    #[serde(flatten)]
    sums: &'a Sums,
    files: Places,
}

/// The files of a season beside its sessions.
#[derive(Debug, Serialize)]
struct Places {
    /// The folder of the sessions.
    sessions: String,
    /// A line a call.
    truth_csv: String,
    /// The sums.
    truth_json: String,
}

/// What was true, on its way into the folder.
#[derive(Debug)]
pub(super) struct Truths {
    at: PathBuf,
    lines: BufWriter<File>,
    sums: Sums,
}

impl Truths {
    /// In the season's folder.
    pub fn create(at: &Path, calls: u32, seed: u64) -> Result<Self, Failure> {
        let file = at.join("truth.csv");
        let mut lines = BufWriter::new(File::create(&file).map_err(|error| not_saved(&file, &error))?);
        writeln!(lines, "{COLUMNS}").map_err(|error| not_saved(&file, &error))?;
        let sums = Sums {
            simulated: true,
            seed,
            calls,
            ..Sums::default()
        };
        let at = at.to_owned();
        Ok(Self { at, lines, sums })
    }

    /// Takes the calls at one furnace.
    pub fn add(&mut self, season: &Season<'_>, visits: &[Visit], ids: &[SessionId]) -> Result<(), Failure> {
        self.sums.furnaces += u32::from(!visits.is_empty());
        for (visit, id) in visits.iter().zip(ids) {
            self.count(visit);
            let truth = &visit.truth;
            let because_of = truth.because_of.and_then(|place| ids.get(place));
            let line = [
                id.as_str(),
                visit.equipment().as_str(),
                &Crew::id(visit.technician),
                season.crew.habit(visit.technician).name(),
                &truth.complaint,
                truth.fault.map_or("none", |fault| fault.name),
                truth.ended.name(),
                outcome(truth.outcome),
                yes(truth.insisted),
                &truth.left_open.join(" "),
                yes(truth.closed),
                yes(truth.skipped_test),
                because_of.map_or("", SessionId::as_str),
            ]
            .join(",");
            writeln!(self.lines, "{line}").map_err(|error| not_saved(&self.at.join("truth.csv"), &error))?;
        }
        Ok(())
    }

    fn count(&mut self, visit: &Visit) {
        let (truth, sums) = (&visit.truth, &mut self.sums);
        *match truth.outcome {
            Outcome::Right => &mut sums.right,
            Outcome::Referred => &mut sums.referred,
            Outcome::Missed => &mut sums.missed,
            Outcome::Wrong => &mut sums.wrong,
        } += 1;
        sums.insisted += u32::from(truth.insisted);
        sums.left_open += u32::from(!truth.left_open.is_empty());
        sums.not_closed += u32::from(!truth.closed);
        sums.skipped_test += u32::from(truth.skipped_test);
        sums.called_again += u32::from(truth.because_of.is_some());
    }

    /// Writes the sums; what was written, to be printed.
    pub fn finish(mut self, format: RehearseFormat) -> Result<String, Failure> {
        let lines = self.at.join("truth.csv");
        self.lines.flush().map_err(|error| not_saved(&lines, &error))?;
        let file = self.at.join("truth.json");
        let sums = &self.sums;
        let text = serde_json::to_string_pretty(sums).unwrap_or_default() + "\n";
        std::fs::write(&file, text).map_err(|error| not_saved(&file, &error))?;
        if let RehearseFormat::Json = format {
            return Ok(self.json(&lines, &file));
        }
        let told = format!(
            "{} at {}: {} right, {} referred, {} missed, {} wrong; {} called again\n\
             What was true: {} and {}\n",
            counted(sums.calls, "call"),
            counted(sums.furnaces, "simulated furnace"),
            sums.right,
            sums.referred,
            sums.missed,
            sums.wrong,
            sums.called_again,
            safe(&lines.to_string_lossy()),
            safe(&file.to_string_lossy()),
        );
        Ok(folded(&told).unwrap_or(told))
    }

    fn json(&self, lines: &Path, sums: &Path) -> String {
        let shown = |path: &Path| safe(&path.to_string_lossy()).to_string();
        let written = Written {
            sums: &self.sums,
            files: Places {
                sessions: shown(&self.at),
                truth_csv: shown(lines),
                truth_json: shown(sums),
            },
        };
        serde_json::to_string_pretty(&written).unwrap_or_default() + "\n"
    }
}

fn counted(count: u32, what: &str) -> String {
    let plural = if count == 1 { "" } else { "s" };
    format!("{count} {what}{plural}")
}

fn yes(is: bool) -> &'static str {
    if is { "yes" } else { "no" }
}

fn outcome(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Right => "right",
        Outcome::Referred => "referred",
        Outcome::Missed => "missed",
        Outcome::Wrong => "wrong",
    }
}

fn not_saved(file: &Path, error: &std::io::Error) -> Failure {
    let message = format!("{} cannot be written: {error}", safe(&file.to_string_lossy()));
    Failure::new(NOT_SAVED, message)
}
