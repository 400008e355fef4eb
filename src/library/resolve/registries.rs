//! The registries' entries, one kind after the other.

use super::super::problem::What;
use super::super::raw::{self, Text, Texts};
use super::super::registry::{
    Caution, Fault, FieldKind, Input, Obtained, Part, PlateField, Proof, Reading, Remedy, Restore, Sign,
    Source, Taking,
};
use super::super::table::{Id, Table};
use super::super::yaml::{At, Entries, Keyed};
use super::Resolver;
use super::lookup::Owner;
use super::scope::{Opened, Registered};
use crate::measure::{Accuracy, PlausibleRange, Quantity, Scale, Unit};
use crate::source::FileId;
use crate::trade::{self, Formula};

/// Registered entries become table entries in the same order, so that the ids given out for their names are right.
pub(super) fn table<R, T>(
    entries: Vec<Registered<R>>,
    mut resolve: impl FnMut(&str, Registered<R>) -> T,
) -> Table<T> {
    let mut table = Table::default();
    for entry in entries {
        let (name, at) = (entry.name.clone(), entry.at);
        let value = resolve(&name, entry);
        table.push(name, at, value);
    }
    table
}

impl Resolver<'_> {
    pub(super) fn readings_and_signs_apart(
        &mut self,
        readings: &Opened<Keyed<raw::Reading>>,
        signs: &Opened<Keyed<raw::Sign>>,
    ) {
        for sign in &signs.entries {
            let reading = self.scope.readings.find(&sign.name);
            if let Some(reading) = reading.and_then(|id| readings.entries.get(id.index())) {
                let (second, first) = match self.is_laid_over(reading.at, sign.at) {
                    true => (reading.at, sign.at),
                    false => (sign.at, reading.at),
                };
                self.duplicate(What::ReadingOrSign, &sign.name, second, first, None);
            }
        }
    }

    pub(super) fn sources(&mut self, opened: Opened<Keyed<raw::Source>>) {
        self.library.sources = table(opened.entries, |name, entry| {
            let owner = Owner::of(self, What::Source, name, entry.at, &entry.raw);
            let raw::Source { title, section, kind } = entry.raw.value;
            Source {
                title: self.text(title, &owner, "title"),
                section: section.map(|section| section.value),
                kind: self.text(kind, &owner, "kind"),
            }
        });
    }

    pub(super) fn restores(&mut self, opened: Opened<Text>) {
        self.library.restores = table(opened.entries, |_, entry| Restore {
            text: entry.raw.value,
        });
    }

    pub(super) fn cautions(&mut self, opened: Opened<Keyed<raw::Caution>>) {
        self.library.cautions = table(opened.entries, |name, entry| {
            let owner = Owner::of(self, What::Caution, name, entry.at, &entry.raw);
            let raw::Caution { text, source } = entry.raw.value;
            Caution {
                text: self.text(text, &owner, "text"),
                source: self.find_source(source.as_ref(), owner.file),
            }
        });
    }

    pub(super) fn plate(&mut self, opened: Opened<Keyed<raw::Field>>, order: Vec<(FileId, Texts)>) {
        self.library.plate = table(opened.entries, |name, entry| self.field(name, entry));
        self.field_scales = (self.library.plate.iter())
            .map(|(_, field)| match field.kind {
                FieldKind::Number { scale, .. } => Some(scale),
                FieldKind::Choices(_) => None,
            })
            .collect();
        for (file, chain) in order {
            let fields = chain
                .iter()
                .map(|name| self.find(What::PlateField, name, file, |scope| &scope.fields));
            if let Some(fields) = fields.collect::<Vec<_>>().into_iter().collect::<Option<Vec<_>>>() {
                self.ordered(&chain, &fields, file);
                self.library.order.push(fields.clone());
                self.in_a_circle(&chain, &fields, file);
            }
        }
    }

    /// Reports a field that would have to be smaller than itself: no plate has such numbers.
    fn in_a_circle(&mut self, names: &Texts, fields: &[Id<PlateField>], file: FileId) {
        let smaller = |field: Id<PlateField>| {
            let chains = self.library.order.iter().filter_map(move |chain| {
                let at = chain.iter().position(|other| *other == field)?;
                Some(&chain[at + 1..])
            });
            chains.flatten().copied()
        };
        let circular = fields.iter().position(|field| {
            let mut seen = Vec::new();
            let mut waiting: Vec<_> = smaller(*field).collect();
            while let Some(next) = waiting.pop() {
                if next == *field {
                    return true;
                }
                if !seen.contains(&next) {
                    seen.push(next);
                    waiting.extend(smaller(next));
                }
            }
            false
        });
        if let Some(name) = circular.and_then(|at| names.get(at)) {
            self.malformed(
                name.span(file),
                format!("by this order `{}` would be smaller than itself", name.value),
                "put each field where the plate has it: smaller ones first, in every list",
            );
            self.library.order.pop();
        }
    }

    /// Fields in an order must be numbers of one dimension.
    fn ordered(&mut self, names: &Texts, fields: &[Id<PlateField>], file: FileId) {
        let dimension = |resolver: &Self, field: Id<PlateField>| {
            let scale = resolver.field_scales.get(field.index()).copied().flatten();
            scale.map(Scale::dimension)
        };
        for (name, &field) in names.iter().zip(fields) {
            if dimension(self, field).is_none() || dimension(self, field) != dimension(self, fields[0]) {
                self.malformed(
                    name.span(file),
                    format!("`{}` cannot stand in this order", name.value),
                    "put fields with numbers of the same kind in order, smallest first",
                );
            }
        }
    }

    fn field(&mut self, name: &str, entry: Registered<Keyed<raw::Field>>) -> PlateField {
        let owner = Owner::of(self, What::PlateField, name, entry.at, &entry.raw);
        let raw::Field {
            title,
            choices,
            unit,
            difference,
            plausible,
            how,
        } = entry.raw.value;
        let kind = match (choices, unit) {
            (Some(choices), None) => FieldKind::Choices(self.choices(&choices, owner.file)),
            (None, unit) => {
                let scale = self.scale(unit, difference, &owner);
                let plausible = self.plausible(plausible.as_ref(), scale, &owner, true);
                FieldKind::Number {
                    scale,
                    plausible: plausible.unwrap_or(PlausibleRange {
                        low: Quantity::new(0.0, scale),
                        high: Quantity::new(1.0, scale),
                    }),
                }
            }
            (Some(_), Some(unit)) => {
                self.malformed(
                    unit.span(owner.file),
                    format!("{} has choices and a unit", owner.name),
                    "keep `choices` for a field of words, or `unit` and `plausible` for a number",
                );
                FieldKind::Choices(Vec::new())
            }
        };
        PlateField {
            title: self.text(title, &owner, "title"),
            kind,
            how: how.map(|how| how.value),
        }
    }

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

    fn accuracy(&mut self, text: Option<&Text>, scale: Scale, owner: &Owner) -> Accuracy {
        let Some(text) = text else {
            self.missing(owner.at, &owner.name, "accuracy");
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
        owner: &Owner,
        scales: &[Scale],
    ) -> Obtained {
        let unresolved = Obtained::Measured(Accuracy::exact());
        let file = owner.file;
        let Some(named) = lines.0.iter().find(|line| line.key.value == "formula") else {
            self.missing(
                owner.at,
                &format!("the `worked_out` of {}", owner.name),
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
                    &format!("the `worked_out` of {}", owner.name),
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
    fn arguments(&mut self, formula: &Formula, lines: &Entries<Text>, owner: &Owner) {
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

    pub(super) fn signs(&mut self, opened: Opened<Keyed<raw::Sign>>) {
        self.library.signs = table(opened.entries, |name, entry| {
            let owner = Owner::of(self, What::Sign, name, entry.at, &entry.raw);
            let raw::Sign {
                ask,
                values,
                minutes,
                cautions,
                leaves,
                source,
                how,
            } = entry.raw.value;
            let values = values.unwrap_or_default();
            if values.0.is_empty() {
                self.missing(owner.at, &owner.name, "values");
            }
            Sign {
                ask: self.text(ask, &owner, "ask"),
                values: self.choices(&values, owner.file),
                taking: self.taking(&owner, minutes, cautions, leaves, source, how),
            }
        });
    }

    fn taking(
        &mut self,
        owner: &Owner,
        minutes: Option<At<f64>>,
        cautions: Option<Texts>,
        leaves: Option<Texts>,
        source: Option<Text>,
        how: Option<Text>,
    ) -> Taking {
        Taking {
            minutes: self.positive(minutes.as_ref(), owner.file, "a time"),
            cautions: self.find_cautions(cautions.as_ref(), owner.file),
            leaves: self.find_restores(leaves.as_ref(), owner.file),
            source: self.find_source(source.as_ref(), owner.file),
            how: how.map(|how| how.value),
        }
    }

    pub(super) fn parts(&mut self, opened: Opened<Keyed<raw::Part>>) {
        self.library.parts = table(opened.entries, |name, entry| {
            let owner = Owner::of(self, What::Part, name, entry.at, &entry.raw);
            let raw::Part { title, proof } = entry.raw.value;
            let title = self.text(title, &owner, "title");
            let proof = match proof {
                Some(proof) if !proof.is_empty() => self.proof(&proof, owner.file),
                _ => {
                    self.malformed(
                        owner.at,
                        format!("{} has no `proof`", owner.name),
                        "say what must be measured, and how, before this part may be condemned",
                    );
                    Proof::default()
                }
            };
            Part { title, proof }
        });
    }

    pub(super) fn faults(&mut self, opened: Opened<Keyed<raw::Fault>>) {
        self.library.faults = table(opened.entries, |name, entry| {
            let owner = Owner::of(self, What::Fault, name, entry.at, &entry.raw);
            let raw::Fault {
                title,
                remedy,
                text,
                proof,
                group,
                weight,
            } = entry.raw.value;
            let file = owner.file;
            Fault {
                title: self.text(title, &owner, "title"),
                remedy: self.remedy(remedy.as_ref(), &owner),
                text: text.map(|text| text.value),
                proof: proof.map(|proof| self.proof(&proof, file)).unwrap_or_default(),
                group: self.find_all(What::Part, group.as_ref(), file, |scope| &scope.parts),
                weight: self.weight(weight.as_ref(), file),
            }
        });
    }

    fn weight(&mut self, weight: Option<&At<f64>>, file: FileId) -> Option<f64> {
        let number = self.positive(weight, file, "a weight")?;
        if number == 0.0 {
            let span = weight.map(|weight| weight.span(file))?;
            self.malformed(
                span,
                "a weight of nothing",
                "write a number above nothing, or leave `weight` out",
            );
        }
        Some(number)
    }

    fn remedy(&mut self, remedy: Option<&Text>, owner: &Owner) -> Remedy {
        let Some(text) = remedy else {
            self.missing(owner.at, &owner.name, "remedy");
            return Remedy::Unresolved;
        };
        let mut words = text.value.split_whitespace();
        match (words.next(), words.next(), words.next()) {
            (Some("correct"), None, _) => Remedy::Correct,
            (Some("shut_down"), None, _) => Remedy::ShutDown,
            (Some("refer"), None, _) => Remedy::Refer,
            (Some("none"), None, _) => Remedy::None,
            (Some("replace"), Some(part), None) => {
                let found = self.scope.parts.find(part);
                if found.is_none() {
                    let nearest = self.suggest(part, |scope| Box::new(scope.parts.iter()));
                    self.unknown(What::Part, part, text.span(owner.file), nearest);
                }
                found.map_or(Remedy::Unresolved, Remedy::Replace)
            }
            _ => {
                self.malformed(
                    text.span(owner.file),
                    format!("`{}` is no remedy", text.value),
                    "write `replace PART`, `correct`, `shut_down`, `refer` or `none`",
                );
                Remedy::Unresolved
            }
        }
    }
}

/// What a number with this unit is in.
pub(super) fn scale_of(unit: Unit, difference: Option<bool>) -> Scale {
    if difference == Some(true) {
        Scale::difference(unit)
    } else {
        Scale::of(unit)
    }
}
