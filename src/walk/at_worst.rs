//! How many questions and pieces of work may still come.

use std::collections::{BTreeMap, BTreeSet};

use super::longest::Longest;
use super::possible::{Search, voidable};
use super::proof;
use super::state::Moment;
use crate::library::{Answers, Datum, Id, Input, Kind, Library, Obtained, PlateField, Step};

/// Questions and pieces of work which may still come, at worst; second takings and what is taken out of turn not counted.
///
/// An upper bound. A walk is made of stretches without a bounded edge, and those have no cycle: it is no longer than the
/// longest stretch from here, and one more from each bounded edge for each time that it may be taken. What can be asked
/// only once, because nothing voids it, counts once.
pub fn at_worst(library: &Library, moment: &Moment) -> usize {
    let voidable = voidable(library, moment);
    let search = Search::new(library, moment, &voidable, true);
    at_worst_by(library, moment, &search, &voidable)
}

/// The same, where it is known what the walk may still come to.
pub(super) fn at_worst_by(
    library: &Library,
    moment: &Moment,
    search: &Search<'_>,
    voidable: &BTreeSet<Datum>,
) -> usize {
    let needs = Needs {
        library,
        moment,
        voidable,
    };
    let asked: BTreeMap<Id<Step>, BTreeSet<Datum>> = search
        .reached
        .iter()
        .map(|step| (*step, needs.of_step(&library[*step])))
        .collect();
    let out_of_turn: BTreeSet<Datum> = moment
        .retaking
        .map(|retaking| needs.of_datum(retaking.datum))
        .unwrap_or_default();

    let mut again = voidable.clone();
    for (step, data) in &asked {
        if may_stay_open(&library[*step].kind) {
            again.extend(data);
        }
    }
    let once: BTreeSet<Datum> = (asked.values().flatten().chain(&out_of_turn).copied())
        .filter(|datum| !again.contains(datum))
        .collect();
    let every = |_: &Datum| true;
    let repeated = |datum: &Datum| again.contains(datum);
    let longest = |counts: &dyn Fn(&Datum) -> bool| {
        let weight = |step: Id<Step>| {
            let questions = asked
                .get(&step)
                .map_or(0, |data| data.iter().filter(|datum| counts(datum)).count());
            questions + usize::from(matches!(library[step].kind, Kind::Do { .. }))
        };
        let taken_first = out_of_turn.iter().filter(|datum| counts(datum)).count();
        Longest::new(library, search, &weight)
            .from(moment)
            .saturating_add(taken_first)
    };
    longest(&every).min(longest(&repeated).saturating_add(once.len()))
}

/// Whether what a step asks for may stay without an answer, so that another step asks for it again.
fn may_stay_open(kind: &Kind) -> bool {
    match kind {
        Kind::Measure { unable, .. } | Kind::Plate { unable, .. } => unable.is_some(),
        Kind::Observe { unsure, unable, .. } => unsure.is_some() || unable.is_some(),
        Kind::Verdict { .. } => true,
        Kind::Do { .. } | Kind::Visit { .. } | Kind::Return { .. } | Kind::Unresolved { .. } => false,
    }
}

/// What must be taken, as far as it does not stand for good.
struct Needs<'a> {
    library: &'a Library,
    moment: &'a Moment,
    voidable: &'a BTreeSet<Datum>,
}

impl Needs<'_> {
    fn of_step(&self, step: &Step) -> BTreeSet<Datum> {
        let (own, answers) = match &step.kind {
            Kind::Measure { reading, answers, .. } => (Datum::Reading(*reading), Some(answers)),
            Kind::Observe { sign, .. } => (Datum::Sign(*sign), None),
            Kind::Plate { field, answers, .. } => (Datum::Field(*field), Some(answers)),
            Kind::Verdict { fault, .. } => {
                let fields = proof::fields(self.library, *fault).into_iter().map(Datum::Field);
                return fields.filter(|field| !self.stands(*field)).collect();
            }
            Kind::Do { .. } | Kind::Visit { .. } | Kind::Return { .. } | Kind::Unresolved { .. } => {
                return BTreeSet::new();
            }
        };
        let mut needs = self.of_datum(own);
        let fields = answers.into_iter().flat_map(bound_fields).map(Datum::Field);
        needs.extend(fields.filter(|field| !self.stands(*field)));
        needs
    }

    fn of_datum(&self, datum: Datum) -> BTreeSet<Datum> {
        let mut needs = BTreeSet::new();
        let mut waiting = vec![datum];
        while let Some(datum) = waiting.pop() {
            if self.stands(datum) {
                continue;
            }
            let inputs = match datum {
                Datum::Reading(id) => match &self.library.readings[id].source_of_value {
                    Obtained::WorkedOut { inputs, .. } => Some(inputs),
                    Obtained::Measured(_) => None,
                },
                Datum::Sign(_) | Datum::Field(_) => None,
            };
            match inputs {
                None => {
                    needs.insert(datum);
                }
                Some(inputs) => waiting.extend(inputs.iter().filter_map(|input| match input {
                    Input::Reading(reading) => Some(Datum::Reading(*reading)),
                    Input::Field(field) => Some(Datum::Field(*field)),
                    Input::Fixed(_) => None,
                })),
            }
        }
        needs
    }

    fn stands(&self, datum: Datum) -> bool {
        self.moment.values.contains_key(&datum) && !self.voidable.contains(&datum)
    }
}

fn bound_fields(answers: &Answers) -> Vec<Id<PlateField>> {
    match answers {
        Answers::Bands(bands) => (bands.iter())
            .flat_map(|answer| answer.band.bounds())
            .filter_map(|bound| bound.leans_on().copied())
            .collect(),
        Answers::Go(_) | Answers::Choices(_) => Vec::new(),
    }
}
