//! Writing a simulated season into session files.

mod truth;

use std::num::NonZero;
use std::path::Path;
use std::thread;
use std::time::Instant;

use jiff::{SignedDuration, Timestamp};

use super::trials::known_to_furnace;
use crate::bench::dice::Dice;
use crate::bench::season::{Crew, Season, Visit};
use crate::bench::simulated::Probes;
use crate::cli::arguments::Rehearse;
use crate::cli::failure::{FINDINGS, Failure, NOT_SAVED, WRONG_USE};
use crate::cli::library::Loaded;
use crate::source::safe;
use crate::store::{SessionFolder, SessionId};
use crate::walk::{Refusal, encode};
use truth::Truths;

/// When the season begins, in seconds since 1970: the first of October 2025, midnight UTC.
const BEGINS: i64 = 1_759_276_800;

/// Furnaces that are walked before what they came to is written: enough to keep every core busy, few enough to keep in memory.
const TOGETHER: u32 = 256;

/// Furnaces that a core takes at a time.
const AT_A_TIME: usize = 8;

/// Writes the season's sessions and what was true; what to print, and the exit code.
pub(super) fn run(loaded: &Loaded, at: &Path, how: &Rehearse) -> Result<(String, u8), Failure> {
    let library = &loaded.library;
    let probes = Probes::of(library);
    known_to_furnace(library, &probes)?;
    let folder = empty(at)?;
    folder.keep_library(&loaded.hash, library.files.as_slice())?;
    let seed = how.trials.seed;
    let season = Season {
        library,
        mark: loaded.mark(),
        probes: &probes,
        crew: Crew::of(how.trials.calls, seed),
        seed,
    };
    let started = Instant::now();
    let mut truths = Truths::create(at, how.trials.calls, seed)?;
    let mut left = how.trials.calls as usize;
    let mut first = 0;
    while left > 0 {
        let numbers: Vec<u32> = (first..first + TOGETHER.min(left as u32)).collect();
        let furnaces = on_all_cores(&numbers, |number| season.furnace(*number));
        let mut visits = Vec::new();
        for (number, walked) in numbers.iter().zip(furnaces) {
            let mut walked = walked.map_err(|why| stopped(*number, &why))?;
            // The archive ends in the middle of what happens at a furnace, as archives do.
            walked.truncate(left);
            left -= walked.len();
            visits.push(walked);
        }
        let written = on_all_cores(&visits, |visits| write(&folder, seed, visits));
        for (visits, ids) in visits.iter().zip(written) {
            truths.add(&season, visits, &ids?)?;
        }
        first += numbers.len() as u32;
    }
    let said = truths.finish(how.format)?;
    let seconds = started.elapsed().as_secs_f64();
    super::super::tell(&format!(
        "{:.0} calls a second",
        f64::from(how.trials.calls) / seconds.max(1e-9)
    ));
    Ok((said, 0))
}

/// The folder, which must hold no sessions yet: a season among real calls would be taken for them.
fn empty(at: &Path) -> Result<SessionFolder, Failure> {
    let folder = SessionFolder::open(at)?;
    match folder.list()?.is_empty() {
        true => Ok(folder),
        false => {
            let shown = safe(&at.to_string_lossy()).to_string();
            Err(Failure::new(WRONG_USE, format!("{shown} holds sessions already"))
                .help("write the season into a folder of its own, or remove the sessions of an older one"))
        }
    }
}

/// What comes of each, in their order, worked out on as many threads as there are cores.
fn on_all_cores<T: Sync, R: Send>(all: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let cores = thread::available_parallelism().map_or(1, NonZero::get);
    let next = std::sync::atomic::AtomicUsize::new(0);
    let shares: Vec<&[T]> = all.chunks(AT_A_TIME).collect();
    let done = std::sync::Mutex::new(Vec::new());
    thread::scope(|scope| {
        for _ in 0..cores.min(shares.len()) {
            scope.spawn(|| {
                loop {
                    let share = next.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
                    let Some(items) = shares.get(share) else { return };
                    let came: Vec<R> = items.iter().map(&work).collect();
                    // A thread that panics takes the whole run with it; until then the list is whole.
                    done.lock()
                        .unwrap_or_else(|poisoned| poisoned.into_inner())
                        .push((share, came));
                }
            });
        }
    });
    let mut done = done.into_inner().unwrap_or_else(|poisoned| poisoned.into_inner());
    done.sort_by_key(|(share, _)| *share);
    done.into_iter().flat_map(|(_, came)| came).collect()
}

/// Writes the calls at one furnace; their ids.
fn write(folder: &SessionFolder, seed: u64, visits: &[Visit]) -> Result<Vec<SessionId>, Failure> {
    let ids = visits.iter().enumerate().map(|(place, visit)| {
        let id = id_of(seed, visit, place);
        let mut journal = folder.create_made(&id)?;
        for said in &visit.said {
            let lines: Result<Vec<String>, _> = said.events.iter().map(encode).collect();
            let lines = lines
                .map_err(|error| Failure::new(NOT_SAVED, format!("an event cannot be written: {error}")))?;
            journal.append(&lines, time(said.at))?;
        }
        Ok(id)
    });
    ids.collect()
}

/// A time of the season, to the second.
fn time(at: f64) -> Timestamp {
    // A season is half a year, so no time of it is out of range.
    let begins = Timestamp::from_second(BEGINS).unwrap_or_default();
    begins
        .saturating_add(SignedDuration::from_secs(at as i64))
        .unwrap_or(Timestamp::MAX)
}

/// The id of a furnace's call, by its place among them: the same for the same season.
fn id_of(seed: u64, visit: &Visit, place: usize) -> SessionId {
    let mut dice = Dice::of(&[seed, 2, u64::from(visit.furnace), place as u64]);
    let mut random = [0; 10];
    let thrown = [dice.whole(), dice.whole()];
    let bytes = thrown.iter().flat_map(|number| number.to_le_bytes());
    random
        .iter_mut()
        .zip(bytes)
        .for_each(|(byte, thrown)| *byte = thrown);
    SessionId::new(time(visit.said.first().map_or(0.0, |said| said.at)), random)
}

fn stopped(furnace: u32, why: &Refusal) -> Failure {
    let message = format!(
        "a call at simulated furnace {} could not be walked: {}",
        furnace + 1,
        why.message
    );
    Failure::new(FINDINGS, message).help(why.help.clone())
}
