//! A worked call's answers, one at a time, to what a walk waits for.

use std::collections::BTreeMap;

use crate::library::{Datum, FieldKind, Given, Id, Library, Placed, Scenario, Sign};
use crate::walk::apply::inputs_of;
use crate::walk::command::Command;
use crate::walk::proof;
use crate::walk::state::State;
use crate::walk::wanted::{Wanted, wanted};

/// Answers what a walk waits for from a scenario: each answer in turn, the last repeats.
#[derive(Debug)]
pub struct Answerer<'s> {
    scenario: &'s Scenario,
    /// What was used, and how many values of it.
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

    /// What the scenario has and nothing has asked for so far. A plate is written down whole, whatever is asked of it.
    pub fn idle(&self) -> Vec<Placed<Datum>> {
        (self.scenario.answered())
            .filter(|answer| !matches!(answer.what, Datum::Field(_)) && !self.used.contains_key(&answer.what))
            .collect()
    }

    /// The command that answers; none where the scenario has no answer for it.
    ///
    /// A verdict that is not proven is answered by taking what it lacks, as far as the scenario has it, and otherwise by
    /// ending without a verdict. What is open at the end is put back.
    pub fn answer(&mut self, library: &Library, state: &State) -> Option<Command> {
        match wanted(library, state) {
            Wanted::Value { of, .. } if self.is_unable(of) => {
                self.used.entry(of).or_default();
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
        if self.is_unable(leaf) {
            self.used.entry(leaf).or_default();
            return Some(Command::Unable("the scenario says so".to_owned()));
        }
        let turn = self.used.get(&leaf).copied().unwrap_or_default();
        let command = match leaf {
            Datum::Reading(id) => Command::Type(in_turn(&self.scenario.readings, id, turn)?),
            Datum::Sign(id) => match in_turn(&self.scenario.signs, id, turn) {
                Some(value) => Command::Choose(value),
                None if self.is_unsure(id) => Command::Unsure,
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

    fn is_unable(&self, datum: Datum) -> bool {
        self.scenario.unable.iter().any(|unable| unable.what == datum)
    }

    fn is_unsure(&self, sign: Id<Sign>) -> bool {
        self.scenario.unsure.iter().any(|unsure| unsure.what == sign)
    }

    /// Whether the scenario can answer for a datum, or for everything it is worked out from.
    fn has(&self, library: &Library, datum: Datum) -> bool {
        if self.is_unable(datum) {
            return false;
        }
        let own = match datum {
            Datum::Reading(id) => self.scenario.readings.iter().any(|given| given.of == id),
            Datum::Sign(id) => self.scenario.signs.iter().any(|given| given.of == id),
            Datum::Field(id) => self.scenario.plate.iter().any(|given| given.of == id),
        };
        let inputs = inputs_of(library, datum);
        own || (!inputs.is_empty() && inputs.iter().all(|input| self.has(library, *input)))
    }
}

fn in_turn<K: PartialEq, V: Clone>(answers: &[Given<K, V>], of: K, turn: usize) -> Option<V> {
    let given = &answers.iter().find(|given| given.of == of)?.answers;
    given.get(turn).or(given.last()).cloned()
}
