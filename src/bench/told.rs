//! A worked call as a machine: what its file tells is the truth, whatever verdict it expects.
//!
//! So a fault that is only known as a set of readings can be walked like a simulated one.

use std::collections::BTreeMap;

use super::machine::{Machine, Truth};
use crate::library::{Datum, FieldKind, Given, Id, Library, Scenario, Step};
use crate::measure::{Amount, Scale};

/// A machine that shows what a worked call's file says: each answer in turn, the last repeats.
#[derive(Debug)]
pub struct Told<'l> {
    library: &'l Library,
    scenario: &'l Scenario,
    /// How many values of each were shown.
    shown: BTreeMap<Datum, usize>,
}

impl<'l> Told<'l> {
    /// As a scenario of this library tells it.
    pub fn new(library: &'l Library, scenario: &'l Scenario) -> Self {
        Self {
            library,
            scenario,
            shown: BTreeMap::new(),
        }
    }

    fn number(text: &str, scale: Scale) -> Option<Truth> {
        let (_, quantity) = Amount::typed(text, scale).ok()?;
        Some(Truth::Number(quantity.number_in(scale)))
    }
}

impl Machine for Told<'_> {
    fn ask(&mut self, of: Datum) -> Option<Truth> {
        let scenario = self.scenario;
        if scenario.unable.iter().any(|unable| unable.what == of) {
            return None;
        }
        let turn = self.shown.entry(of).or_default();
        let truth = match of {
            Datum::Reading(id) => Self::number(
                in_turn(&scenario.readings, id, *turn)?,
                self.library.readings[id].scale,
            ),
            Datum::Sign(id) => in_turn(&scenario.signs, id, *turn).copied().map(Truth::Value),
            Datum::Field(id) => {
                let text = in_turn(&scenario.plate, id, *turn)?;
                match &self.library.plate[id].kind {
                    FieldKind::Number { scale, .. } => Self::number(text, *scale),
                    FieldKind::Choices(choices) => {
                        let at = choices.iter().position(|choice| choice.name == *text);
                        at.map(Truth::Value)
                    }
                }
            }
        };
        *turn += 1;
        truth
    }

    /// What work changes is in the answers that follow.
    fn work(&mut self, _: Id<Step>) {}
}

fn in_turn<K: PartialEq, V>(answers: &[Given<K, V>], of: K, turn: usize) -> Option<&V> {
    let given = &answers.iter().find(|given| given.of == of)?.answers;
    given.get(turn).or(given.last())
}
