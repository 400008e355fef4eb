//! What a library says of the names in a session's log.

use std::collections::{BTreeMap, HashMap, HashSet};

use foldhash::fast::RandomState;

use super::call::Remedy;
use crate::library::{Id, Input, Kind, Library, Obtained, Reading, Remedy as Written};

/// What a library says of the names in a session's log: enough to tell a call, and far smaller than the library.
///
/// The default knows nothing, for calls whose library is not at hand.
#[derive(Clone, Debug, Default)]
pub struct Meanings {
    remedies: HashMap<String, Remedy, RandomState>,
    /// Of readings and signs, which share no name.
    taken: HashMap<String, Meaning, RandomState>,
    starts: HashMap<String, String, RandomState>,
    minutes: HashMap<String, f64, RandomState>,
    /// The tree by which work is proven.
    after_work: Option<String>,
    is_known: bool,
    tests_combustion: bool,
}

/// What is known of a reading or a sign.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Meaning {
    /// Minutes it takes; of what is worked out, those of all that it is worked out from.
    pub minutes: Option<f64>,
    /// It is of the flue gas.
    pub combustion: bool,
}

impl Meanings {
    /// What a library says.
    pub fn of(library: &Library) -> Self {
        let combustion = of_flue_gas(library);
        let remedies = library.faults.iter().map(|(_, fault)| {
            let remedy = match fault.remedy {
                Written::Replace(part) => Remedy::Replace(library.parts[part].name.as_str().into()),
                Written::Correct => Remedy::Correct,
                Written::ShutDown => Remedy::ShutDown,
                Written::Refer => Remedy::Refer,
                Written::None => Remedy::Nothing,
                Written::Unresolved => Remedy::Unknown,
            };
            (fault.name.clone(), remedy)
        });
        let readings = library.readings.iter().map(|(id, reading)| {
            let meaning = Meaning {
                minutes: minutes_of(library, id),
                combustion: combustion.contains(&id),
            };
            (reading.name.clone(), meaning)
        });
        let signs = library.signs.iter().map(|(_, sign)| {
            let meaning = Meaning {
                minutes: sign.taking.minutes,
                combustion: false,
            };
            (sign.name.clone(), meaning)
        });
        let starts = (library.trees.iter())
            .filter_map(|(_, tree)| Some((tree.name.clone(), library.path_of(tree.start?))));
        let minutes = (0..library.steps.len()).map(Id::new).filter_map(|id| {
            let step = &library[id];
            let minutes = step.minutes.or_else(|| taking(library, &step.kind))?;
            Some((library.path_of(id), minutes))
        });
        Self {
            remedies: remedies.collect(),
            taken: readings.chain(signs).collect(),
            starts: starts.collect(),
            minutes: minutes.collect(),
            after_work: library.after_work.map(|tree| library.trees[tree].name.clone()),
            is_known: true,
            tests_combustion: !combustion.is_empty(),
        }
    }

    /// The same for a call whose own library is not at hand: another edition's meanings have to do.
    pub fn presumed(self) -> Self {
        Self {
            is_known: false,
            ..self
        }
    }

    /// All of it in one text: the same for the same meanings.
    pub fn in_one_text(&self) -> String {
        let Self {
            remedies,
            taken,
            starts,
            minutes,
            after_work,
            is_known,
            tests_combustion,
        } = self;
        let remedies: BTreeMap<_, _> = remedies.iter().collect();
        let taken: BTreeMap<_, _> = taken.iter().collect();
        let starts: BTreeMap<_, _> = starts.iter().collect();
        let minutes: BTreeMap<_, _> = minutes.iter().collect();
        format!("{remedies:?} {taken:?} {starts:?} {minutes:?} {after_work:?} {is_known} {tests_combustion}")
    }

    /// Whether the call's own library was at hand.
    pub fn is_known(&self) -> bool {
        self.is_known
    }

    /// Whether it has readings of the flue gas.
    pub(super) fn tests_combustion(&self) -> bool {
        self.tests_combustion
    }

    /// Whether work is proven by walking this tree.
    pub(super) fn proves_work(&self, tree: &str) -> bool {
        self.after_work.as_deref() == Some(tree)
    }

    /// What is done about a fault.
    pub(super) fn remedy(&self, fault: &str) -> Remedy {
        self.remedies.get(fault).cloned().unwrap_or(Remedy::Unknown)
    }

    /// What is known of a reading or a sign.
    pub(super) fn taken(&self, name: &str) -> Meaning {
        self.taken.get(name).copied().unwrap_or_default()
    }

    /// The first step of a tree; the tree itself where nobody knows.
    pub(super) fn start<'a>(&'a self, tree: &'a str) -> &'a str {
        self.starts.get(tree).map_or(tree, String::as_str)
    }

    /// Minutes that a step takes.
    pub(super) fn minutes(&self, step: &str) -> Option<f64> {
        self.minutes.get(step).copied()
    }
}

/// Minutes that it takes to look or measure.
fn taking(library: &Library, kind: &Kind) -> Option<f64> {
    match kind {
        Kind::Measure { reading, .. } => minutes_of(library, *reading),
        Kind::Observe { sign, .. } => library.signs[*sign].taking.minutes,
        _ => None,
    }
}

/// Minutes that a reading takes; where it is worked out, those of all that are measured for it, each once.
fn minutes_of(library: &Library, reading: Id<Reading>) -> Option<f64> {
    let (mut seen, mut waiting) = (HashSet::from([reading]), vec![reading]);
    let mut sum = None;
    while let Some(id) = waiting.pop() {
        let reading = &library.readings[id];
        if let Some(minutes) = reading.taking.minutes {
            *sum.get_or_insert(0.0) += minutes;
        } else if let Obtained::WorkedOut { inputs, .. } = &reading.source_of_value {
            let inputs = inputs.iter().filter_map(|input| match input {
                Input::Reading(id) => Some(*id),
                Input::Field(_) | Input::Fixed(_) => None,
            });
            waiting.extend(inputs.filter(|input| seen.insert(*input)));
        }
    }
    sum
}

/// The readings of the flue gas: those that a formula of combustion works out, and those that it works them out from.
fn of_flue_gas(library: &Library) -> HashSet<Id<Reading>> {
    let mut found = HashSet::new();
    for (id, reading) in library.readings.iter() {
        if let Obtained::WorkedOut { formula, inputs } = &reading.source_of_value
            && formula.group.name() == "combustion"
        {
            let inputs = inputs.iter().filter_map(|input| match input {
                Input::Reading(reading) => Some(*reading),
                Input::Field(_) | Input::Fixed(_) => None,
            });
            found.extend(inputs.chain([id]));
        }
    }
    found
}
