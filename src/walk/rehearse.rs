//! A worked call, walked: the same loop as a technician's, with a file for answers.

mod answerer;
mod coverage;
mod departure;
mod nearness;
mod parting;
mod passed;
mod rehearsal;
mod suggestion;

use super::apply::apply;
use super::command::Refusal;
use super::decide::{decide, open_at};
use super::event::{Event, LibraryMark, Opened};
use super::state::State;
use super::wanted::{Wanted, wanted};
use crate::library::{Datum, Library, Placed, Scenario};
use crate::source::Span;

pub use answerer::Answerer;
pub use coverage::{Coverage, Missed, Tally, TreeCoverage};
pub use departure::{Departure, departures};
pub use parting::{Goal, Parting, parting};
pub use passed::{Passed, Said, passed};
pub use rehearsal::Rehearsal;
pub use suggestion::{Suggestion, answer_in, suggestion};

/// More commands than any scenario needs: a walk that takes so many is going round in circles.
const MOST: usize = 10_000;

/// A scenario that was walked.
#[derive(Clone, Debug)]
pub struct Run {
    /// Everything that happened.
    pub events: Vec<Event>,
    /// Where it ended.
    pub state: State,
    /// Where it departed from what the scenario expects; empty where it holds.
    pub departures: Vec<Departure>,
    /// What the scenario answers, beside the plate, and was never asked for.
    pub idle: Vec<Placed<Datum>>,
}

/// Walks a scenario and compares.
pub fn rehearse(library: &Library, scenario: &Scenario) -> Run {
    let opened = Opened {
        library: LibraryMark::default(),
        tree: library.trees[scenario.tree].name.clone(),
        technician: None,
        site: None,
        equipment: None,
        program: env!("CARGO_PKG_VERSION").to_owned(),
        answered_from: Some(scenario.name.clone()),
    };
    let mut run = Run {
        events: Vec::new(),
        state: State::default(),
        departures: Vec::new(),
        idle: Vec::new(),
    };
    let mut answerer = Answerer::new(scenario);
    run.departures = match walk(library, scenario, &mut answerer, opened, &mut run) {
        Ok(()) => departures(library, scenario, &run.state),
        Err(departure) => vec![departure],
    };
    run.idle = answerer.idle();
    run
}

fn walk(
    library: &Library,
    scenario: &Scenario,
    answerer: &mut Answerer<'_>,
    opened: Opened,
    run: &mut Run,
) -> Result<(), Departure> {
    let stuck = |expected: &str, happened: String| Departure::new(scenario.at, expected, happened);
    let refused = |refusal: Refusal| stuck("the call to open", refusal.to_string());
    let mut events = open_at(library, opened).map_err(refused)?;
    for _ in 0..MOST {
        for event in &events {
            apply(library, &mut run.state, event)
                .map_err(|misfit| stuck("a library that holds together", misfit.to_string()))?;
        }
        run.events.append(&mut events);
        if run.state.closed {
            return Ok(());
        }
        let command = answerer
            .answer(library, &run.state)
            .ok_or_else(|| no_answer(library, scenario.at, &run.state))?;
        events = decide(library, &run.state, &command).map_err(|refusal| {
            let asked = wanted_words(library, &run.state);
            stuck(&format!("the answer to {asked} to be taken"), refusal.to_string())
        })?;
    }
    Err(stuck(
        "the walk to come to an end",
        format!("it took more than {MOST} answers"),
    ))
}

fn no_answer(library: &Library, at: Span, state: &State) -> Departure {
    let asked = wanted_words(library, state);
    let happened = format!("the walk asks for {asked}, and the scenario has no answer");
    Departure {
        unanswered: match wanted(library, state) {
            Wanted::Value { leaf, .. } => Some(leaf),
            _ => None,
        },
        ..Departure::new(at, "an answer to every question", happened)
    }
}

/// What a walk waits for, and where, in words.
pub fn wanted_words(library: &Library, state: &State) -> String {
    let at = state
        .top()
        .map(|frame| library.path_of(frame.step))
        .unwrap_or_default();
    match wanted(library, state) {
        Wanted::Value { leaf, .. } => {
            format!("`{}` ({}) at {at}", library.name_of(leaf), library.title_of(leaf))
        }
        _ => format!("something at {at}"),
    }
}
