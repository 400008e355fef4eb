//! Rating-plate fields, and the order among them.

use super::super::problem::What;
use super::super::raw::{self, Texts};
use super::super::registry::{FieldKind, PlateField};
use super::super::table::Id;
use super::super::yaml::Keyed;
use super::Resolver;
use super::lookup::Owner;
use super::registries::table;
use super::scope::{Names, Opened, Registered};
use super::worked_out::circles;
use crate::measure::{PlausibleRange, Quantity, Scale};
use crate::source::FileId;

impl Resolver<'_> {
    pub(super) fn plate(&mut self, opened: Opened<Keyed<raw::Field>>, order: Vec<(FileId, Texts)>) {
        // What is wrong with a field itself, mended, may put it where it stands in an order.
        let mut doubtful = Vec::new();
        self.library.plate = table(opened.entries, |name, entry| {
            let before = self.problems.len();
            let field = self.field(name, entry);
            doubtful.push(self.problems.len() > before);
            field
        });
        self.field_scales = (self.library.plate.iter())
            .map(|(_, field)| match field.kind {
                FieldKind::Number { scale, .. } => Some(scale),
                FieldKind::Choices(_) => None,
            })
            .collect();
        let mut chains = Vec::new();
        for (file, chain) in order {
            let fields = chain
                .iter()
                .map(|name| self.find(What::PlateField, name, file, |scope| &scope.fields));
            if let Some(fields) = fields.collect::<Vec<_>>().into_iter().collect::<Option<Vec<_>>>() {
                if !fields.iter().any(|field| doubtful[field.index()]) {
                    self.ordered(&chain, &fields, file);
                }
                chains.push((file, chain, fields));
            }
        }
        let contradicts_itself = self.has_circle(&chains);
        for (file, chain, fields) in chains {
            self.library.order.push(fields.clone());
            if contradicts_itself {
                self.in_a_circle(&chain, &fields, file);
            }
        }
        for pair in self.library.order.iter().flat_map(|fields| fields.windows(2)) {
            let (smaller, larger) = (pair[0], pair[1]);
            self.library.plate[smaller].value.larger.push(larger);
            self.library.plate[larger].value.smaller.push(smaller);
        }
    }

    /// Whether some field would have to be smaller than itself: which chain says so takes far longer to find.
    fn has_circle(&self, chains: &[(FileId, Texts, Vec<Id<PlateField>>)]) -> bool {
        let mut larger = vec![Vec::new(); self.library.plate.len()];
        for pair in chains.iter().flat_map(|(_, _, fields)| fields.windows(2)) {
            larger[pair[0].index()].push(pair[1].index());
        }
        !circles(&larger).is_empty()
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
        let mut values = Names::default();
        let kind = match (choices, unit) {
            (Some(choices), None) => {
                let (choices, names) = self.choices(&choices, owner.file);
                values = names;
                FieldKind::Choices(choices)
            }
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
        self.scope.field_values.push(values);
        PlateField {
            title: self.text(title, &owner, "title"),
            kind,
            how: how.map(|how| how.value),
            smaller: Vec::new(),
            larger: Vec::new(),
        }
    }
}
