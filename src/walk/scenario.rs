//! A worked call, walked: the same loop as a technician's, with a file for answers.

use std::collections::BTreeMap;

use super::apply::apply;
use super::command::{Command, Refusal};
use super::decide::{decide, open_at};
use super::event::{End, Event, LibraryMark, Opened};
use super::proof;
use super::state::State;
use super::wanted::{Wanted, wanted};
use crate::library::{Datum, ExpectedEnd, FieldKind, Library, Scenario, Severity};

/// More commands than any scenario needs: a walk that takes so many is going round in circles.
const MOST: usize = 10_000;

/// Answers what a walk waits for from a scenario: each answer in turn, the last repeats.
#[derive(Debug)]
pub struct Answerer<'s> {
    scenario: &'s Scenario,
    used: BTreeMap<Datum, usize>,
}

impl<'s> Answerer<'s> {
    /// Answers from the first on.
    pub fn new(scenario: &'s Scenario) -> Self {
        Self {
            scenario,
            used: BTreeMap::new(),
        }
    }

    /// The command that answers; none where the scenario has no answer for it.
    ///
    /// A verdict that is not proven is answered by taking what it lacks, as far as the scenario has it, and otherwise by
    /// ending without a verdict. What is open at the end is put back.
    pub fn answer(&mut self, library: &Library, state: &State) -> Option<Command> {
        match wanted(library, state) {
            Wanted::Value { of, .. } if self.scenario.unable.contains(&of) => {
                Some(Command::Unable("the scenario says so".to_owned()))
            }
            Wanted::Value { leaf, .. } => self.value(library, leaf),
            Wanted::Work(_) => Some(Command::Done),
            Wanted::Decision(fault) => {
                let lines = proof::lines(library, state, fault);
                let lacking = lines
                    .iter()
                    .filter(|(_, holding)| *holding == proof::Holding::Missing);
                let mut data = lacking.flat_map(|(line, _)| proof::takeable(state, line));
                let take = data.find(|datum| state.value(*datum).is_none() && self.has(library, *datum));
                Some(match take {
                    Some(datum) => Command::Take(datum),
                    None => Command::Stop("the verdict is not proven".to_owned()),
                })
            }
            Wanted::PutBack(restore) => Some(Command::PutBack(restore)),
            Wanted::Close => Some(Command::Close),
            Wanted::Nothing | Wanted::Onward => None,
        }
    }

    fn value(&mut self, library: &Library, leaf: Datum) -> Option<Command> {
        if self.scenario.unable.contains(&leaf) {
            return Some(Command::Unable("the scenario says so".to_owned()));
        }
        let turn = self.used.get(&leaf).copied().unwrap_or_default();
        let command = match leaf {
            Datum::Reading(id) => Command::Type(in_turn(&self.scenario.readings, id, turn)?),
            Datum::Sign(id) => match in_turn(&self.scenario.signs, id, turn) {
                Some(value) => Command::Choose(value),
                None if self.scenario.unsure.contains(&id) => Command::Unsure,
                None => return None,
            },
            Datum::Field(id) => {
                let text = in_turn(&self.scenario.plate, id, turn)?;
                match &library.plate[id].kind {
                    FieldKind::Number { .. } => Command::Type(text),
                    FieldKind::Choices(choices) => {
                        Command::Choose(choices.iter().position(|choice| choice.name == text)?)
                    }
                }
            }
        };
        self.used.insert(leaf, turn + 1);
        Some(command)
    }

    /// Whether the scenario can answer for a datum, or for everything it is worked out from.
    fn has(&self, library: &Library, datum: Datum) -> bool {
        if self.scenario.unable.contains(&datum) {
            return false;
        }
        let own = match datum {
            Datum::Reading(id) => self.scenario.readings.iter().any(|(reading, _)| *reading == id),
            Datum::Sign(id) => self.scenario.signs.iter().any(|(sign, _)| *sign == id),
            Datum::Field(id) => self.scenario.plate.iter().any(|(field, _)| *field == id),
        };
        let inputs = super::apply::inputs_of(library, datum);
        own || (!inputs.is_empty() && inputs.iter().all(|input| self.has(library, *input)))
    }
}

fn in_turn<K: PartialEq, V: Clone>(answers: &[(K, Vec<V>)], key: K, turn: usize) -> Option<V> {
    let (_, values) = answers.iter().find(|(known, _)| *known == key)?;
    values.get(turn).or(values.last()).cloned()
}

/// A scenario that was walked.
#[derive(Clone, Debug)]
pub struct Run {
    /// Everything that happened.
    pub events: Vec<Event>,
    /// Where it ended.
    pub state: State,
    /// Where it departed from what the scenario expects; empty where it holds.
    pub departures: Vec<Departure>,
}

/// A way in which a walk was not as its scenario expects.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Departure {
    /// What was expected.
    pub expected: String,
    /// What happened.
    pub happened: String,
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
    };
    let mut run = Run {
        events: Vec::new(),
        state: State::default(),
        departures: Vec::new(),
    };
    if let Err(departure) = walk(library, scenario, opened, &mut run) {
        run.departures.push(departure);
        return run;
    }
    run.departures = departures(library, scenario, &run.state);
    run
}

fn walk(library: &Library, scenario: &Scenario, opened: Opened, run: &mut Run) -> Result<(), Departure> {
    let refused = |refusal: Refusal| Departure {
        expected: "every answer is taken".to_owned(),
        happened: refusal.to_string(),
    };
    let mut answerer = Answerer::new(scenario);
    let mut events = open_at(library, opened).map_err(refused)?;
    for _ in 0..MOST {
        for event in &events {
            apply(library, &mut run.state, event).map_err(|misfit| Departure {
                expected: "the library holds together".to_owned(),
                happened: misfit.to_string(),
            })?;
        }
        run.events.append(&mut events);
        if run.state.closed {
            return Ok(());
        }
        let command = answerer
            .answer(library, &run.state)
            .ok_or_else(|| no_answer(library, &run.state))?;
        events = decide(library, &run.state, &command).map_err(refused)?;
    }
    Err(Departure {
        expected: "the walk comes to an end".to_owned(),
        happened: format!("it took more than {MOST} answers"),
    })
}

fn no_answer(library: &Library, state: &State) -> Departure {
    let asked = wanted_words(library, state);
    Departure {
        expected: "an answer to every question".to_owned(),
        happened: format!("the walk asks for {asked}, and the scenario has no answer"),
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

/// Compares a walk that came to its end with what its scenario expects.
pub fn departures(library: &Library, scenario: &Scenario, state: &State) -> Vec<Departure> {
    let mut found = Vec::new();
    let mut compare = |expected: String, happened: String| found.push(Departure { expected, happened });
    let expect = &scenario.expect;
    if let Some(end) = &expect.end
        && !ends_so(library, scenario, state, end)
    {
        let at = state
            .top()
            .map(|frame| library.path_of(frame.step))
            .unwrap_or_default();
        let happened = state
            .ended
            .as_ref()
            .map_or_else(|| "it has not ended".to_owned(), happened);
        compare(
            expected_words(library, scenario, end),
            format!("{happened}, at {at}"),
        );
    }
    for datum in &expect.asked {
        if !state.asked.contains(datum) {
            let name = library.name_of(*datum);
            compare(format!("`{name}` is asked for"), "it was not".to_owned());
        }
    }
    for restore in &expect.put_back {
        if !state.ever_open.contains(restore) {
            let name = &library.restores[*restore].name;
            compare(
                format!("`{name}` is left to be put back"),
                "it was never opened".to_owned(),
            );
        }
    }
    if let Some(expected) = &expect.findings {
        let found: Vec<Severity> = state
            .moment
            .findings
            .iter()
            .map(|(_, finding)| finding.severity)
            .collect();
        if found != *expected {
            let words = |list: &[Severity]| {
                let names: Vec<&str> = list.iter().map(|severity| severity.name()).collect();
                format!("findings [{}]", names.join(", "))
            };
            compare(words(expected), words(&found));
        }
    }
    found
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
