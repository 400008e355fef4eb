//! A simulated furnace as a technician meets it: whatever a library registers is asked of it by name.

mod work;

use super::condition::Condition;
use super::furnace::{Furnace, Run};
use super::machine::{Machine, Truth};
use super::probe::{self, PlateProbe, Printed, ReadingProbe, SignProbe};
use crate::library::{Choice, Datum, FieldKind, Id, Input, Library, Obtained, Reading, Step};
use crate::measure::Quantity;
use work::Mend;

/// The probes of everything that a library registers, looked up once.
#[derive(Clone, Debug)]
pub struct Probes<'a> {
    library: &'a Library,
    readings: Vec<Option<ReadingProbe>>,
    signs: Vec<Option<SignProbe>>,
    plate: Vec<Option<PlateProbe>>,
    work: Vec<Option<Mend>>,
}

impl<'a> Probes<'a> {
    /// The probes of a library.
    pub fn of(library: &'a Library) -> Self {
        let work = library.steps.iter();
        Self {
            library,
            readings: library
                .readings
                .iter()
                .map(|(_, reading)| probe::reading(&reading.name))
                .collect(),
            signs: library
                .signs
                .iter()
                .map(|(_, sign)| probe::sign(&sign.name))
                .collect(),
            plate: library
                .plate
                .iter()
                .map(|(_, field)| probe::plate(&field.name))
                .collect(),
            work: work
                .map(|step| work::mend(&library.trees[step.tree].name, &step.name))
                .collect(),
        }
    }

    /// Whether there is any reading or sign of the library that a furnace can answer.
    pub fn answer_any(&self) -> bool {
        self.readings.iter().any(Option::is_some) || self.signs.iter().any(Option::is_some)
    }

    /// What no simulated furnace can answer, by name.
    pub fn missing(&self) -> impl Iterator<Item = &'a str> {
        let library = self.library;
        let readings = (library.readings.iter())
            .filter(|(id, reading)| {
                let measured = matches!(reading.source_of_value, Obtained::Measured(_));
                measured && self.readings[id.index()].is_none()
            })
            .map(|(_, reading)| reading.name.as_str());
        let signs = (library.signs.iter())
            .filter(|(id, _)| self.signs[id.index()].is_none())
            .map(|(_, sign)| sign.name.as_str());
        let plate = (library.plate.iter())
            .filter(|(id, _)| self.plate[id.index()].is_none())
            .map(|(_, field)| field.name.as_str());
        readings.chain(signs).chain(plate)
    }
}

/// A furnace that answers.
#[derive(Clone, Debug)]
pub struct Simulated<'a> {
    probes: &'a Probes<'a>,
    furnace: Furnace,
    run: Option<Run>,
}

impl<'a> Simulated<'a> {
    /// A furnace as it is found.
    pub fn new(probes: &'a Probes<'a>, furnace: Furnace) -> Self {
        Self {
            probes,
            furnace,
            run: None,
        }
    }

    /// The furnace as it stands now.
    pub fn furnace(&self) -> &Furnace {
        &self.furnace
    }

    /// Its call for heat as it would go now.
    pub fn run(&mut self) -> &Run {
        self.run.get_or_insert_with(|| self.furnace.run())
    }

    fn reading(&mut self, id: Id<Reading>) -> Option<f64> {
        let library = self.probes.library;
        match &library.readings[id].source_of_value {
            Obtained::Measured(_) => {
                let probe = self.probes.readings[id.index()]?;
                let run = self.run.get_or_insert_with(|| self.furnace.run());
                probe(&self.furnace, run)
            }
            Obtained::WorkedOut { formula, inputs } => {
                let mut numbers = Vec::with_capacity(inputs.len());
                for input in inputs {
                    numbers.push(match input {
                        Input::Fixed(quantity) => *quantity,
                        Input::Reading(of) => Quantity::new(self.reading(*of)?, library.readings[*of].scale),
                        Input::Field(of) => {
                            let scale = library.scale_of(Datum::Field(*of))?;
                            match self.plate(Datum::Field(*of))? {
                                Truth::Number(number) => Quantity::new(number, scale),
                                Truth::Value(_) => return None,
                            }
                        }
                    });
                }
                let result = formula.compute(&numbers).ok()?;
                Some(result.number_in(library.readings[id].scale))
            }
        }
    }

    fn plate(&mut self, of: Datum) -> Option<Truth> {
        let Datum::Field(id) = of else { return None };
        let probe = self.probes.plate[id.index()]?;
        let run = self.run.get_or_insert_with(|| self.furnace.run());
        let printed = probe(&self.furnace, run)?;
        match (printed, &self.probes.library.plate[id].kind) {
            (Printed::Number(number), FieldKind::Number { .. }) => Some(Truth::Number(number)),
            (Printed::Word(word), FieldKind::Choices(choices)) => place(choices, word),
            _ => None,
        }
    }
}

impl Machine for Simulated<'_> {
    fn ask(&mut self, of: Datum) -> Option<Truth> {
        match of {
            Datum::Reading(id) => self.reading(id).map(Truth::Number),
            Datum::Field(_) => self.plate(of),
            Datum::Sign(id) => {
                let probe = self.probes.signs[id.index()]?;
                let run = self.run.get_or_insert_with(|| self.furnace.run());
                let word = probe(&self.furnace, run)?;
                place(&self.probes.library.signs[id].values, word)
            }
        }
    }

    fn work(&mut self, step: Id<Step>) {
        if let Some(mend) = self.probes.work[step.index()] {
            mend(&mut self.furnace.condition);
            self.run = None;
        }
    }

    fn is_mended(&self) -> bool {
        self.furnace.condition == Condition::default()
    }
}

/// The place of a word among the values of a sign or a field; none where an author has named them otherwise.
fn place(choices: &[Choice], word: &str) -> Option<Truth> {
    let place = choices.iter().position(|choice| choice.name == word);
    place.map(Truth::Value)
}
