//! Walking calls at simulated furnaces.

use std::io;
use std::num::NonZero;
use std::path::{Path, PathBuf};
use std::thread;

use crate::bench::condition::Condition;
use crate::bench::faults;
use crate::bench::furnace::Furnace;
use crate::bench::make::Make;
use crate::bench::simulated::{Probes, Simulated};
use crate::bench::trials::{Plan, Played, Shown, Stopped, Subject, Trials, ending, play, run as run_all};
use crate::cli::arguments::{Rehearse, RehearseFormat};
use crate::cli::failure::{FINDINGS, Failure, WRONG_USE};
use crate::cli::library::{as_typed, called};
use crate::cli::look;
use crate::library::Library;
use crate::report::rehearsal::trials::{Report, json, text};
use crate::source::safe;

/// What to print, and the exit code: a good part that is condemned is a finding.
pub(super) fn run(library: &Library, folder: Option<&Path>, how: &Rehearse) -> Result<(String, u8), Failure> {
    let probes = Probes::of(library);
    known_to_furnace(library, &probes)?;
    let (seed, calls) = (how.trials.seed, how.trials.calls);
    let last = u64::MAX - u64::from(calls.saturating_sub(1));
    if seed > last {
        let message = format!(
            "with the first seed {seed}, {calls} calls would need seeds beyond the largest, {}",
            u64::MAX
        );
        return Err(Failure::new(WRONG_USE, message).help(format!(
            "each call has the next seed: begin at {last} at most, or walk fewer calls"
        )));
    }
    let plan = Plan {
        subjects: subjects(&how.only, how.trials.pairs)?,
        calls: calls as usize,
        seed,
        threads: thread::available_parallelism().unwrap_or(NonZero::<usize>::MIN),
    };
    let build = |make, condition| Simulated::new(&probes, Furnace { make, condition });
    let trials = run_all(library, &plan, build).map_err(stopped)?;
    let report = Report {
        library,
        seed: plan.seed,
        pairs: how.trials.pairs,
        with: with(folder, &how.overlays.folders),
        trials: &trials,
        shown: again(library, &plan, &trials, &build)?,
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

/// What names the library on a command line.
fn with(folder: Option<&Path>, overlays: &[PathBuf]) -> String {
    let shown = |path: &Path| as_typed(&path.to_string_lossy());
    let folder = folder.map(|folder| format!(" {}", shown(folder)));
    let overlays = overlays
        .iter()
        .map(|overlay| format!(" --overlay {}", shown(overlay)));
    folder.into_iter().chain(overlays).collect()
}

/// The tree that a simulated call begins with where the owner says no more than that.
const ENTRY: &str = "no-heat";

/// A library about something else cannot be walked at a furnace.
pub(in crate::cli) fn known_to_furnace(library: &Library, probes: &Probes<'_>) -> Result<(), Failure> {
    let wrong = |message: &str, help: &str| Err(Failure::new(WRONG_USE, message).help(help));
    if !probes.answer_any() {
        return wrong(
            "this library asks for nothing that the simulated furnace has",
            "its readings and signs are known by the names of the built-in library; name yours so, or rehearse its scenarios",
        );
    }
    match library.trees.find(ENTRY) {
        Some(_) => Ok(()),
        None => wrong(
            "this library has no tree `no-heat`, with which simulated calls begin",
            "give it one, or lay it as an overlay over the built-in library",
        ),
    }
}

/// The faults of these names or parts, or with one of these words in their name; all, and a sound furnace, without any.
fn subjects(words: &[String], pairs: bool) -> Result<Vec<Subject>, Failure> {
    let sound = (!pairs).then_some(Subject::Sound);
    let all: Vec<Subject> = (faults::all())
        .map(|fault| {
            if pairs {
                Subject::Two(fault)
            } else {
                Subject::One(fault)
            }
        })
        .chain(sound)
        .collect();
    if words.is_empty() {
        return Ok(all);
    }
    let mut chosen: Vec<bool> = vec![false; all.len()];
    for word in words {
        let word = word.to_lowercase();
        let exact = |subject: &Subject| subject.name() == word;
        let about = |subject: &Subject| {
            let part = subject.fault().and_then(|fault| fault.part);
            subject.name().contains(&word) || part == Some(word.as_str())
        };
        // A name is that fault, though others have it in theirs.
        let any_exact = all.iter().any(exact);
        let mut found = false;
        for (at, subject) in all.iter().enumerate() {
            if if any_exact { exact(subject) } else { about(subject) } {
                chosen[at] = true;
                found = true;
            }
        }
        if !found && word == Subject::Sound.name() {
            let message =
                "`none` is the furnace with nothing wrong, and with `--pairs` every furnace has two faults";
            return Err(Failure::new(WRONG_USE, message).help("leave out `--pairs`, or name a fault"));
        }
        if !found {
            let message = format!(
                "no simulated fault has `{}` in its name or part",
                safe(&word).cut(64)
            );
            return Err(
                Failure::new(WRONG_USE, message).help("`rehearse --bench` without `--only` lists them all")
            );
        }
    }
    Ok(all
        .into_iter()
        .zip(chosen)
        .filter(|(_, chosen)| *chosen)
        .map(|(subject, _)| subject)
        .collect())
}

/// The calls that are shown, played again; the only one, whatever it came to.
fn again<'a>(
    library: &Library,
    plan: &Plan,
    trials: &Trials,
    build: &impl Fn(Make, Condition) -> Simulated<'a>,
) -> Result<Vec<(Subject, Shown, Played)>, Failure> {
    let alone = plan.calls == 1 && plan.subjects.len() == 1;
    let mut shown = Vec::new();
    for (subject, tally) in &trials.by_fault {
        let seeds: Vec<u64> = match alone {
            true => vec![plan.seed],
            false => tally.shown.iter().map(|call| call.seed).collect(),
        };
        for seed in seeds {
            let failed = |why| {
                stopped(Stopped {
                    subject: subject.name(),
                    seed,
                    why,
                })
            };
            if let Some(played) = play(library, *subject, seed, build).map_err(failed)? {
                let outcome = played.outcome;
                let ended = ending(library, &played.walked).name().to_owned();
                shown.push((*subject, Shown { seed, outcome, ended }, played));
            }
        }
    }
    shown.sort_by_key(|(_, call, _)| std::cmp::Reverse(call.outcome));
    Ok(shown)
}

fn stopped(stopped: Stopped) -> Failure {
    let Stopped { subject, seed, why } = stopped;
    let message = format!(
        "the simulated call {seed} with {subject} could not be walked: {}",
        why.message
    );
    Failure::new(FINDINGS, message).help(why.help)
}
