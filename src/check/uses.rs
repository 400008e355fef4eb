//! What the registries and the trees of a library refer to; its worked calls do not count.

use std::marker::PhantomData;

use crate::library::{
    Answers, Caution, ClaimKind, Datum, Fault, Id, Input, Kind, Library, Obtained, Part, PlateField, Proof,
    Reading, Remedy, Restore, Sign, Source, Step, Table, Taking,
};
use crate::measure::Band;

/// The entries of a table that something refers to, by position.
#[derive(Debug)]
pub(super) struct Used<T>(Vec<bool>, PhantomData<fn() -> T>);

impl<T> Used<T> {
    fn none(table: &Table<T>) -> Self {
        Self(vec![false; table.len()], PhantomData)
    }

    fn insert(&mut self, id: Id<T>) {
        self.0[id.index()] = true;
    }

    fn extend<'i>(&mut self, ids: impl IntoIterator<Item = &'i Id<T>>)
    where
        T: 'i,
    {
        ids.into_iter().for_each(|id| self.insert(*id));
    }

    pub fn contains(&self, id: Id<T>) -> bool {
        self.0[id.index()]
    }
}

/// Everything that something refers to, by kind.
#[derive(Debug)]
pub(super) struct Uses {
    pub fields: Used<PlateField>,
    pub readings: Used<Reading>,
    pub signs: Used<Sign>,
    pub parts: Used<Part>,
    pub faults: Used<Fault>,
    pub restores: Used<Restore>,
    pub cautions: Used<Caution>,
    pub sources: Used<Source>,
}

impl Uses {
    /// What a library refers to, from wherever: what nothing but an unreachable step uses is used.
    pub fn of(library: &Library) -> Self {
        let mut uses = Self {
            fields: Used::none(&library.plate),
            readings: Used::none(&library.readings),
            signs: Used::none(&library.signs),
            parts: Used::none(&library.parts),
            faults: Used::none(&library.faults),
            restores: Used::none(&library.restores),
            cautions: Used::none(&library.cautions),
            sources: Used::none(&library.sources),
        };
        uses.cautions.extend(&library.standing_cautions);
        uses.fields.extend(library.order.iter().flatten());
        for (_, reading) in library.readings.iter() {
            uses.taking(&reading.taking);
            if let Obtained::WorkedOut { inputs, .. } = &reading.source_of_value {
                uses.inputs(inputs);
            }
        }
        for (_, sign) in library.signs.iter() {
            uses.taking(&sign.taking);
        }
        for (_, part) in library.parts.iter() {
            uses.proof(&part.proof);
        }
        for (_, fault) in library.faults.iter() {
            if let Remedy::Replace(part) = fault.remedy {
                uses.parts.insert(part);
            }
            uses.parts.extend(&fault.group);
            uses.proof(&fault.proof);
        }
        for (_, caution) in library.cautions.iter() {
            uses.sources.extend(&caution.source);
        }
        for step in &library.steps {
            uses.step(step);
        }
        uses
    }

    fn taking(&mut self, taking: &Taking) {
        self.cautions.extend(&taking.cautions);
        self.restores.extend(&taking.leaves);
        self.sources.extend(&taking.source);
    }

    fn inputs(&mut self, inputs: &[Input]) {
        for input in inputs {
            match input {
                Input::Reading(reading) => self.datum(Datum::Reading(*reading)),
                Input::Field(field) => self.datum(Datum::Field(*field)),
                Input::Fixed(_) => {}
            }
        }
    }

    fn proof(&mut self, proof: &Proof) {
        let claims = proof
            .lines
            .iter()
            .flat_map(|line| line.alternatives.iter().flatten());
        for claim in claims {
            self.datum(claim.datum());
            if let ClaimKind::Reading(_, band) | ClaimKind::FieldNumber(_, band) = &claim.what {
                self.band(band);
            }
        }
    }

    fn datum(&mut self, datum: Datum) {
        match datum {
            Datum::Reading(reading) => self.readings.insert(reading),
            Datum::Sign(sign) => self.signs.insert(sign),
            Datum::Field(field) => self.fields.insert(field),
        }
    }

    fn band(&mut self, band: &Band<Id<PlateField>>) {
        let fields = band.bounds().filter_map(|bound| bound.leans_on());
        self.fields.extend(fields);
    }

    fn step(&mut self, step: &Step) {
        self.cautions.extend(&step.cautions);
        self.sources.extend(&step.source);
        match &step.kind {
            Kind::Measure { reading, answers, .. } => {
                self.datum(Datum::Reading(*reading));
                self.answers(answers);
            }
            Kind::Observe { sign, .. } => self.datum(Datum::Sign(*sign)),
            Kind::Plate { field, answers, .. } => {
                self.datum(Datum::Field(*field));
                self.answers(answers);
            }
            Kind::Do {
                voids,
                leaves,
                restores,
                ..
            } => {
                voids.iter().for_each(|datum| self.datum(*datum));
                self.restores.extend(leaves.iter().chain(restores));
            }
            Kind::Verdict { fault, .. } => self.faults.insert(*fault),
            Kind::Visit { .. } | Kind::Return { .. } | Kind::Unresolved { .. } => {}
        }
    }

    fn answers(&mut self, answers: &Answers) {
        if let Answers::Bands(bands) = answers {
            bands.iter().for_each(|answer| self.band(&answer.band));
        }
    }
}
