//! One call of a season: walked by the trees, with the times at which it was answered.

use super::worker::{Deed, Worker};
use crate::bench::faults::Fault;
use crate::bench::machine::Machine;
use crate::bench::trials::{Ending, Outcome, Walked, ending, judge, judge_verdict};
use crate::library::{Id, Library, Restore};
use crate::walk::{End, Event, Opened, Refusal, State, apply, carry_out, open};

/// More answers than any call needs: a walk that takes so many is going round in circles.
const MOST: usize = 2_000;

/// What was said at one moment: the events that one answer led to.
#[derive(Clone, Debug, PartialEq)]
pub struct Said {
    /// Seconds since the season began.
    pub at: f64,
    /// What happened.
    pub events: Vec<Event>,
}

/// A call of the season.
#[derive(Clone, Debug)]
pub struct Visit {
    /// The furnace, by number from 0.
    pub furnace: u32,
    /// The technician, by number from 0.
    pub technician: usize,
    /// All that happened.
    pub said: Vec<Said>,
    /// What was true.
    pub truth: Truth,
}

impl Visit {
    /// How its furnace is called in the sessions, by number from 0: nobody can take it for one of a customer.
    pub fn equipment(&self) -> String {
        equipment(self.furnace)
    }
}

pub(super) fn equipment(furnace: u32) -> String {
    format!("simulated-{:04}", furnace + 1)
}

/// What was true of a call.
#[derive(Clone, Debug)]
pub struct Truth {
    /// What was really wrong with the furnace; none at one in order.
    pub fault: Option<&'static Fault>,
    /// The tree of the complaint that the owner called with.
    pub complaint: String,
    /// The verdict against the fault.
    pub outcome: Outcome,
    /// What the call ended in.
    pub ended: Ending,
    /// The verdict was the technician's own, without proof.
    pub insisted: bool,
    /// What was left open, by its registered names.
    pub left_open: Vec<String>,
    /// The technician closed it.
    pub closed: bool,
    /// A reading of the flue gas was asked for and not taken, for no good reason.
    pub skipped_test: bool,
    /// The call is about what an earlier one at this furnace got wrong or left open: that one's place among its calls.
    pub because_of: Option<usize>,
}

/// What came of a walk: its events by the moment, and where it ended.
pub(super) struct Walk {
    pub said: Vec<Said>,
    pub state: State,
    pub outcome: Outcome,
    pub ended: Ending,
    pub skipped_test: bool,
}

/// Walks a call from a second of the season on.
///
/// # Errors
///
/// Where an answer is refused or the walk comes to no end: a fault of the library, or of the furnace.
pub(super) fn walk(
    library: &Library,
    opened: Opened,
    worker: &mut Worker<'_, '_>,
    mut at: f64,
    fault: Option<&'static Fault>,
) -> Result<Walk, Refusal> {
    let events = open(library, opened)?;
    let mut state = State::default();
    for event in &events {
        apply(library, &mut state, event)
            .map_err(|misfit| Refusal::new(misfit.to_string(), "run `proofwalk check` on the library"))?;
    }
    let mut said = vec![Said { at, events }];
    for _ in 0..MOST {
        let Some(Deed::Answers(command, seconds)) = worker.next(library, &state) else {
            return Ok(done(library, said, state, worker, fault));
        };
        let events;
        (state, events) = carry_out(library, state, Vec::new(), &command)?;
        at += seconds;
        said.push(Said { at, events });
    }
    Err(Refusal::new(
        format!("the walk took more than {MOST} answers"),
        "run `proofwalk check` on the library: a loop has no limit",
    ))
}

fn done(
    library: &Library,
    said: Vec<Said>,
    state: State,
    worker: &Worker<'_, '_>,
    fault: Option<&'static Fault>,
) -> Walk {
    let walked = Walked {
        events: Vec::new(),
        state,
        minutes: 0.0,
        steps: 0,
        mended: worker.machine().is_mended(),
    };
    let truth: Vec<&Fault> = fault.into_iter().collect();
    let insisted = match &walked.state.ended {
        Some(End::Insisted { fault, .. }) => library.faults.find(fault),
        _ => None,
    };
    let outcome = match insisted {
        Some(insisted) => judge_verdict(library, insisted, &truth, walked.mended),
        None => judge(library, &walked, &truth),
    };
    Walk {
        said,
        outcome,
        ended: ending(library, &walked),
        skipped_test: worker.has_skipped_test(),
        state: walked.state,
    }
}

impl Truth {
    pub(super) fn of(
        library: &Library,
        walk: &Walk,
        fault: Option<&'static Fault>,
        because_of: Option<usize>,
    ) -> Self {
        let state = &walk.state;
        let name = |restore: Id<Restore>| library.restores[restore].name.clone();
        let refused = state.put_backs.iter().filter(|done| done.refused.is_some());
        let left_open = refused
            .map(|done| name(done.restore))
            .chain(state.open.iter().map(|open| name(*open)));
        Self {
            fault,
            complaint: state
                .opened
                .as_ref()
                .map(|opened| opened.tree.clone())
                .unwrap_or_default(),
            outcome: walk.outcome,
            ended: walk.ended.clone(),
            insisted: matches!(state.ended, Some(End::Insisted { .. })),
            left_open: left_open.collect(),
            closed: state.closed,
            skipped_test: walk.skipped_test,
            because_of,
        }
    }
}
