//! Which values go when one is taken anew.

use std::collections::HashMap;

use crate::library::{Datum, Id, Input, Library, Obtained, Reading};

/// What each reading is worked out from, and what is worked out from each value.
#[derive(Debug)]
pub(in crate::check) struct Dependence {
    /// By reading, the readings it is worked out from, all the way down.
    inputs: Vec<Vec<Datum>>,
    /// By value, the readings that are worked out from it, however far up.
    leaning: HashMap<Datum, Vec<Datum>>,
}

impl Dependence {
    pub fn of(library: &Library) -> Self {
        let mut dependence = Self {
            inputs: Vec::with_capacity(library.readings.len()),
            leaning: HashMap::new(),
        };
        for (id, _) in library.readings.iter() {
            let mut inputs = Vec::new();
            let mut waiting = vec![id];
            while let Some(reading) = waiting.pop() {
                for datum in direct(library, reading) {
                    let leaning = dependence.leaning.entry(datum).or_default();
                    if leaning.last() != Some(&Datum::Reading(id)) {
                        leaning.push(Datum::Reading(id));
                    }
                    if let Datum::Reading(input) = datum
                        && !inputs.contains(&datum)
                    {
                        inputs.push(datum);
                        waiting.push(input);
                    }
                }
            }
            dependence.inputs.push(inputs);
        }
        dependence
    }

    /// The readings that a value is worked out from, all the way down; none where it is taken as it is.
    pub fn inputs(&self, of: Datum) -> &[Datum] {
        match of {
            Datum::Reading(id) => &self.inputs[id.index()],
            Datum::Sign(_) | Datum::Field(_) => &[],
        }
    }

    /// The readings that are worked out from a value, however far up.
    pub fn leaning_on(&self, datum: Datum) -> &[Datum] {
        // Nothing is worked out from a sign, and a hash takes its time.
        if matches!(datum, Datum::Sign(_)) || self.leaning.is_empty() {
            return &[];
        }
        self.leaning.get(&datum).map_or(&[], Vec::as_slice)
    }

    /// Everything that no longer counts once a value does not, itself first.
    pub fn gone_with(&self, datum: Datum) -> impl Iterator<Item = Datum> + '_ {
        let beside = self.inputs(datum).iter().chain(self.leaning_on(datum));
        std::iter::once(datum).chain(beside.copied())
    }
}

fn direct(library: &Library, reading: Id<Reading>) -> impl Iterator<Item = Datum> + '_ {
    let inputs = match &library.readings[reading].source_of_value {
        Obtained::WorkedOut { inputs, .. } => inputs.as_slice(),
        Obtained::Measured(_) => &[],
    };
    inputs.iter().filter_map(|input| match input {
        Input::Reading(reading) => Some(Datum::Reading(*reading)),
        Input::Field(field) => Some(Datum::Field(*field)),
        Input::Fixed(_) => None,
    })
}
