//! Walking calls at simulated furnaces.

use std::io;
use std::num::NonZero;
use std::path::Path;
use std::thread;

use crate::bench::condition::Condition;
use crate::bench::faults;
use crate::bench::machine::Machine;
use crate::bench::make::Make;
use crate::bench::trials::{Outcome, Plan, Stopped, Subject, Trials, complaints, play, run as run_all};
use crate::cli::arguments::{Rehearse, RehearseFormat};
use crate::cli::failure::{FINDINGS, Failure, WRONG_USE};
use crate::cli::library::called;
use crate::cli::look;
use crate::library::Library;
use crate::report::rehearsal::trials::{Report, json, text};
use crate::source::safe;

/// What to print, and the exit code: a good part that is condemned is a finding.
pub(super) fn run(library: &Library, folder: Option<&Path>, how: &Rehearse) -> Result<(String, u8), Failure> {
    fits(library)?;
    let plan = Plan {
        subjects: subjects(&how.only, how.trials.pairs)?,
        calls: how.trials.calls as usize,
        seed: how.trials.seed,
        threads: thread::available_parallelism().unwrap_or(NonZero::<usize>::MIN),
    };
    let probes = crate::bench::simulated::Probes::of(library);
    let build = |make: Make, condition: Condition| probes.at(make, condition);
    let trials = run_all(library, &plan, build).map_err(stopped)?;
    let report = Report {
        library,
        seed: plan.seed,
        pairs: how.trials.pairs,
        trials: &trials,
        shown: again(library, &trials, build)?,
    };
    let text = match how.format {
        RehearseFormat::Text => {
            let called = called(library, folder);
            text(&report, &called, look::of_findings(&io::stdout()))
        }
        RehearseFormat::Json => json(&report),
    };
    let code = if trials.sum().wrong == 0 { 0 } else { FINDINGS };
    Ok((text, code))
}
