//! Where a walk is not as its scenario expects.

use std::collections::BTreeSet;

use super::parting::Goal;
use crate::library::{Datum, ExpectedEnd, Id, Library, Restore, Scenario, Severity};
use crate::source::Span;
use crate::walk::event::End;
use crate::walk::state::State;

/// A way in which a walk was not as its scenario expects.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Departure {
    /// Where the scenario says so.
    pub at: Span,
    /// What was expected.
    pub expected: String,
    /// What happened.
    pub happened: String,
    /// What the walk should have come to, where it is something that a step can lead to.
    pub goal: Option<Goal>,
    /// What was asked for and has no answer.
    pub unanswered: Option<Datum>,
}

impl Departure {
    pub(super) fn new(at: Span, expected: impl Into<String>, happened: impl Into<String>) -> Self {
        Self {
            at,
            expected: expected.into(),
            happened: happened.into(),
            goal: None,
            unanswered: None,
        }
    }
}

/// Compares a walk that came to its end with what its scenario expects.
pub fn departures(library: &Library, scenario: &Scenario, state: &State) -> Vec<Departure> {
    let mut found = Vec::new();
    let expect = &scenario.expect;
    if let Some(end) = &expect.end
        && !ends_so(library, scenario, state, &end.what)
    {
        let at = state
            .top()
            .map(|frame| library.path_of(frame.step))
            .unwrap_or_default();
        let happened = state
            .ended
            .as_ref()
            .map_or_else(|| "it has not ended".to_owned(), happened);
        found.push(Departure {
            goal: Goal::of(scenario),
            ..Departure::new(
                end.at,
                expected_words(library, scenario, &end.what),
                format!("{happened}, at {at}"),
            )
        });
    }
    for asked in &expect.asked {
        if !state.asked.contains(&asked.what) {
            let name = library.name_of(asked.what);
            found.push(Departure {
                goal: Some(Goal::Asked(asked.what)),
                ..Departure::new(asked.at, format!("`{name}` asked for"), "it was not")
            });
        }
    }
    let left = left_to_put_back(state);
    for restore in &expect.put_back {
        if !left.contains(&restore.what) {
            let name = &library.restores[restore.what].name;
            let was_open = state.ever_open.contains(&restore.what);
            let happened = match was_open {
                true => "it was put back on the way",
                false => "it was never opened",
            };
            found.push(Departure {
                // What was opened needs no other answer to be opened.
                goal: (!was_open).then_some(Goal::Opened(restore.what)),
                ..Departure::new(restore.at, format!("`{name}` left to be put back"), happened)
            });
        }
    }
    if let (Some(at), false) = (expect.leaves_nothing, left.is_empty()) {
        let names = (left.iter()).map(|restore| format!("`{}`", library.restores[*restore].name));
        let happened = format!("{} was left open", names.collect::<Vec<_>>().join(", "));
        found.push(Departure::new(at, "nothing left to be put back", happened));
    }
    if let Some(expected) = &expect.findings {
        let noted: Vec<Severity> = (state.moment.findings.iter())
            .map(|(_, finding)| finding.severity)
            .collect();
        if noted != expected.what {
            found.push(Departure::new(
                expected.at,
                severities(&expected.what),
                severities(&noted),
            ));
        }
    }
    found
}

/// What was open when the walk ended, whether it has been put back since or not: steps that `restores` on the way do not
/// leave it to the end.
fn left_to_put_back(state: &State) -> BTreeSet<Id<Restore>> {
    let since = state.put_backs.iter().map(|done| done.restore);
    state.open.iter().copied().chain(since).collect()
}

fn severities(list: &[Severity]) -> String {
    let names: Vec<&str> = list.iter().map(|severity| severity.name()).collect();
    format!("findings [{}]", names.join(", "))
}

fn ends_so(library: &Library, scenario: &Scenario, state: &State, end: &ExpectedEnd) -> bool {
    match (end, &state.ended) {
        (ExpectedEnd::Verdict(fault), Some(End::Verdict { .. })) => state.moment.stated.last() == Some(fault),
        // A tune-up notes verdicts and goes on: the last one counts.
        (ExpectedEnd::Verdict(fault), Some(End::Outcome { .. })) => state.moment.stated.last() == Some(fault),
        (ExpectedEnd::Outcome(at), Some(End::Outcome { outcome })) => {
            let outcomes = &library.trees[scenario.tree].outcomes;
            outcomes
                .get(*at)
                .is_some_and(|expected| expected.name == *outcome)
        }
        (ExpectedEnd::Unproven, Some(End::Unproven { .. })) => true,
        _ => false,
    }
}

fn expected_words(library: &Library, scenario: &Scenario, end: &ExpectedEnd) -> String {
    match end {
        ExpectedEnd::Verdict(fault) => format!("the verdict `{}`", library.faults[*fault].name),
        ExpectedEnd::Outcome(at) => {
            let outcomes = &library.trees[scenario.tree].outcomes;
            let name = outcomes
                .get(*at)
                .map(|outcome| outcome.name.as_str())
                .unwrap_or_default();
            format!("the outcome `{name}`")
        }
        ExpectedEnd::Unproven => "an end without a verdict".to_owned(),
    }
}

fn happened(end: &End) -> String {
    match end {
        End::Verdict { fault, .. } => format!("the verdict `{fault}`"),
        End::Outcome { outcome } => format!("the outcome `{outcome}`"),
        End::Unproven { why } => format!("an end without a verdict ({why})"),
        End::Insisted { fault, .. } => format!("the technician's own verdict on `{fault}`"),
    }
}
