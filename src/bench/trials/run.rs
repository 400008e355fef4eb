//! Playing many calls, on as many threads as there are, to the same sums on any number of them.

use std::num::NonZero;
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

use super::Trials;
use super::judge::{Ending, Outcome, ending};
use super::play::{Played, Subject, play};
use super::tally::{Shown, Tally};
use crate::bench::condition::Condition;
use crate::bench::machine::Machine;
use crate::bench::make::Make;
use crate::library::{Library, Remedy};
use crate::walk::Refusal;

/// Which calls are played.
#[derive(Clone, Debug)]
pub struct Plan {
    /// What is wrong in them.
    pub subjects: Vec<Subject>,
    /// How many of each.
    pub calls: usize,
    /// The seed of the first call of each; the next has the next, so that there must be as many up to the largest.
    pub seed: u64,
    /// On how many threads.
    pub threads: NonZero<usize>,
}

/// A call that could not be walked: a fault of the library, or of the simulated furnace.
#[derive(Clone, Debug)]
pub struct Stopped {
    /// The name of its subject.
    pub subject: &'static str,
    /// Its seed.
    pub seed: u64,
    /// Why.
    pub why: Refusal,
}

/// Calls that one thread plays in a row: few enough to share the work out evenly, and the same whatever the number of threads,
/// since minutes that are added in another order differ in their last digit.
const STRETCH: usize = 50;

/// Plays a plan's calls.
///
/// # Errors
///
/// The first call, in the plan's order, that could not be walked.
pub fn run<M, F>(library: &Library, plan: &Plan, build: F) -> Result<Trials, Stopped>
where
    M: Machine,
    F: Fn(Make, Condition) -> M + Sync,
{
    let stretches = plan.calls.div_ceil(STRETCH);
    let jobs = plan.subjects.len() * stretches;
    let next = AtomicUsize::new(0);
    let done: Mutex<Vec<Option<Result<Tally, Stopped>>>> = Mutex::new((0..jobs).map(|_| None).collect());
    thread::scope(|scope| {
        for _ in 0..plan.threads.get().min(jobs) {
            scope.spawn(|| {
                loop {
                    let job = next.fetch_add(1, Ordering::Relaxed);
                    if job >= jobs {
                        return;
                    }
                    let first = job % stretches * STRETCH;
                    let calls = first..(first + STRETCH).min(plan.calls);
                    let tally = stretch(library, plan.subjects[job / stretches], plan.seed, calls, &build);
                    // A thread that panics takes the whole run with it; until then the list is whole.
                    let mut done = done.lock().unwrap_or_else(|poisoned| poisoned.into_inner());
                    done[job] = Some(tally);
                }
            });
        }
    });
    let mut by_fault: Vec<_> = plan
        .subjects
        .iter()
        .map(|subject| (*subject, Tally::default()))
        .collect();
    let done = done.into_inner().unwrap_or_else(|poisoned| poisoned.into_inner());
    for (job, tally) in done.into_iter().enumerate() {
        if let Some(tally) = tally {
            by_fault[job / stretches].1.add(&tally?);
        }
    }
    Ok(Trials { by_fault })
}

/// Plays some calls of a subject.
fn stretch<M: Machine>(
    library: &Library,
    subject: Subject,
    seed: u64,
    calls: std::ops::Range<usize>,
    build: &impl Fn(Make, Condition) -> M,
) -> Result<Tally, Stopped> {
    let mut tally = Tally::default();
    for call in calls {
        let seed = seed.wrapping_add(call as u64);
        let played = play(library, subject, seed, build).map_err(|why| Stopped {
            subject: subject.name(),
            seed,
            why,
        })?;
        if let Some(played) = played {
            count(library, &mut tally, seed, &played);
        }
    }
    Ok(tally)
}

fn count(library: &Library, tally: &mut Tally, seed: u64, played: &Played) {
    let Played { walked, outcome, .. } = played;
    let ended = ending(library, walked);
    tally.count(*outcome);
    tally.minutes += walked.minutes;
    tally.most_minutes = tally.most_minutes.max(walked.minutes);
    tally.steps += walked.steps;
    tally.most_steps = tally.most_steps.max(walked.steps);
    *tally.blamed.entry(blamed(library, &ended, *outcome)).or_default() += 1;
    if matches!(outcome, Outcome::Wrong | Outcome::Missed) {
        tally.keep(Shown {
            seed,
            outcome: *outcome,
            ended: ended.name().to_owned(),
        });
    }
    *tally.ended.entry(ended.name().to_owned()).or_default() += 1;
}

/// What a call put the blame on: a part, a condition, or nothing.
fn blamed(library: &Library, ended: &Ending, outcome: Outcome) -> String {
    let fault = match ended {
        Ending::Fault(name) => library.faults.find(name),
        Ending::Outcome(_) | Ending::Unproven => None,
    };
    match (outcome, fault.map(|fault| library.faults[fault].remedy)) {
        (Outcome::Right | Outcome::Wrong, Some(Remedy::Replace(part))) => library.parts[part].name.clone(),
        (Outcome::Right, _) => "the condition".to_owned(),
        (Outcome::Wrong, _) => "a condition in order".to_owned(),
        (Outcome::Referred, _) => "referred".to_owned(),
        (Outcome::Missed, _) => "missed".to_owned(),
    }
}
