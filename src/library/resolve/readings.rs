//! Readings: those that are measured, and those that a formula works out.

use super::super::problem::What;
use super::super::raw::{self, Text};
use super::super::registry::{Input, Obtained, Reading};
use super::super::yaml::{Entries, Keyed};
use super::Resolver;
use super::lookup::Owner;
use super::registries::{scale_of, table};
use super::scope::{Opened, Registered};
use crate::measure::{Accuracy, Scale, Unit};
use crate::trade::{self, Formula};

impl Resolver<'_> {
    pub(super) fn readings(&mut self, opened: Opened<Keyed<raw::Reading>>) {
        // What each reading is in must be known before one that is worked out from it is looked at.
        let scales: Vec<Scale> = (opened.entries.iter())
            .map(|entry| {
                let raw = &entry.raw.value;
                let unit = raw.unit.as_ref().and_then(|unit| Unit::parse(&unit.value));
                scale_of(unit.unwrap_or(Unit::Number), raw.difference)
            })
            .collect();
        self.library.readings = table(opened.entries, |name, entry| self.reading(name, entry, &scales));
        self.worked_out_from_each_other();
    }

    fn reading(&mut self, name: &str, entry: Registered<Keyed<raw::Reading>>, scales: &[Scale]) -> Reading {
        let owner = Owner::of(self, What::Reading, name, entry.at, &entry.raw);
        let raw::Reading {
            title,
            unit,
            difference,
            plausible,
            accuracy,
            worked_out,
            minutes,
            cautions,
            leaves,
            source,
            how,
        } = entry.raw.value;
        let scale = self.scale(unit, difference, &owner);
        let measured = worked_out.is_none();
        let source_of_value = match worked_out {
            Some(worked_out) => {
                if let Some(accuracy) = &accuracy {
                    self.malformed(
                        accuracy.span(owner.file),
                        format!("{} is worked out and has an accuracy of its own", owner.name),
                        "take `accuracy` out: it follows from the readings that go in",
                    );
                }
                self.worked_out(&worked_out, scale, &owner, scales)
            }
            None => Obtained::Measured(self.accuracy(accuracy.as_ref(), scale, &owner)),
        };
        Reading {
            title: self.text(title, &owner, "title"),
            scale,
            source_of_value,
            plausible: self.plausible(plausible.as_ref(), scale, &owner, measured),
            taking: self.taking(&owner, minutes, cautions, leaves, source, how),
        }
    }

    fn accuracy(&mut self, text: Option<&Text>, scale: Scale, owner: &Owner<'_>) -> Accuracy {
        let Some(text) = text else {
            self.missing(owner.at, owner.name, "accuracy");
            return Accuracy::exact();
        };
        match Accuracy::parse(&text.value, scale) {
            Ok(accuracy) => accuracy,
            Err(wrong) => {
                self.quantity_wrong(text, owner.file, wrong);
                Accuracy::exact()
            }
        }
    }

    fn worked_out(
        &mut self,
        lines: &Entries<Text>,
        result: Scale,
        owner: &Owner<'_>,
        scales: &[Scale],
    ) -> Obtained {
        let unresolved = Obtained::Measured(Accuracy::exact());
        let file = owner.file;
        let Some(named) = lines.0.iter().find(|line| line.key.value == "formula") else {
            self.missing(
                owner.at,
                format_args!("the `worked_out` of {}", owner.name),
                "formula",
            );
            return unresolved;
        };
        let Some(formula) = trade::find(&named.value.value) else {
            let names = trade::all().iter().map(|formula| formula.name);
            let nearest = crate::source::nearest(&named.value.value, names).map(str::to_owned);
            self.unknown(What::Formula, &named.value.value, named.value.span(file), nearest);
            return unresolved;
        };
        if formula.result.dimension() != result.dimension() {
            self.result_of_another_dimension(&named.value, file, formula, result);
        }
        self.arguments(formula, lines, owner);
        let mut inputs = Vec::new();
        for argument in formula.arguments {
            let Some(line) = lines.0.iter().find(|line| line.key.value == argument.name) else {
                if let Some(usual) = argument.usual() {
                    inputs.push(Input::Fixed(usual));
                    continue;
                }
                self.missing(
                    owner.at,
                    format_args!("the `worked_out` of {}", owner.name),
                    argument.name,
                );
                continue;
            };
            if let Some(input) = self.input(&line.value, argument.scale, file, scales) {
                inputs.push(input);
            }
        }
        if inputs.len() == formula.arguments.len() {
            Obtained::WorkedOut { formula, inputs }
        } else {
            unresolved
        }
    }

    /// Every line of a `worked_out` must be an argument of its formula, once.
    fn arguments(&mut self, formula: &Formula, lines: &Entries<Text>, owner: &Owner<'_>) {
        for (index, line) in lines.0.iter().enumerate() {
            let name = &line.key.value;
            let span = line.key.span(owner.file);
            if let Some(first) = lines.0[..index].iter().find(|earlier| earlier.key.value == *name) {
                self.duplicate(What::Argument, name, span, first.key.span(owner.file), None);
            } else if name != "formula" && formula.argument(name).is_none() {
                let arguments = formula.arguments.iter().map(|argument| argument.name);
                let nearest = crate::source::nearest(name, arguments).map(str::to_owned);
                self.unknown(What::Argument, name, span, nearest);
            }
        }
    }
}
