//! Units, ranges and the arguments of formulas.

use super::super::problem::What;
use super::super::raw::Text;
use super::super::registry::Input;
use super::Resolver;
use super::lookup::Owner;
use super::registries::scale_of;
use crate::measure::{Amount, Dimension, Misread, PlausibleRange, Scale, Unit};
use crate::source::{FileId, Span, nearest};
use crate::trade::Formula;

impl Resolver<'_> {
    /// What a reading or a plate field is in.
    pub(super) fn scale(&mut self, unit: Option<Text>, difference: Option<bool>, owner: &Owner<'_>) -> Scale {
        let Some(text) = unit else {
            self.missing(owner.at, owner.name, "unit");
            return Scale::of(Unit::Number);
        };
        let Some(unit) = Unit::parse(&text.value) else {
            let units: Vec<&str> = Unit::all().map(Unit::symbol).collect();
            let help = match nearest(&text.value, units.iter().copied()) {
                Some(meant) => format!("did you mean `{meant}`?"),
                None => format!("the units are {}", units.join(", ")),
            };
            self.malformed(
                text.span(owner.file),
                format!("`{}` is no unit", text.value),
                help,
            );
            return Scale::of(Unit::Number);
        };
        scale_of(unit, difference)
    }

    /// The plausible range; an absent one is reported where it is `required`.
    pub(super) fn plausible(
        &mut self,
        text: Option<&Text>,
        scale: Scale,
        owner: &Owner<'_>,
        required: bool,
    ) -> Option<PlausibleRange> {
        let Some(text) = text else {
            if required {
                self.missing(owner.at, owner.name, "plausible");
            }
            return None;
        };
        match PlausibleRange::parse(&text.value, scale) {
            Ok(range) => Some(range),
            Err(wrong) => {
                self.quantity_wrong(text, owner.file, wrong);
                None
            }
        }
    }

    /// Reports a quantity that could not be read, or measures something else than it should.
    ///
    /// The text is malformed where no reader of quantities could make sense of it, and of the wrong dimension otherwise.
    pub(super) fn quantity_wrong(&mut self, text: &Text, file: FileId, wrong: Misread) {
        if wrong.is_mismatch() {
            self.unit_mismatch(text, file, wrong);
        } else {
            self.misread(text, file, wrong);
        }
    }

    pub(super) fn field_without_number(&mut self, name: &str, span: Span) {
        if self.scope.fields.find(name).is_some() {
            self.malformed(
                span,
                format!("the plate field `{name}` has choices, and no number to compare with"),
                "use a field with a `unit`, or a `plate` step with `choices`",
            );
        } else {
            let nearest = self.suggest(name, |scope| Box::new(scope.fields.iter()));
            self.unknown(What::PlateField, name, span, nearest);
        }
    }

    /// An argument of a formula: a reading, a plate field, or a quantity.
    pub(super) fn input(
        &mut self,
        text: &Text,
        argument: Scale,
        file: FileId,
        reading_scales: &[Scale],
    ) -> Option<Input> {
        let name = text.value.trim();
        let (input, scale) = if let Some(field) = name.strip_prefix("plate.") {
            let Some(id) = self.scope.fields.find(field) else {
                self.field_without_number(field, text.span(file));
                return None;
            };
            let Some(scale) = self.field_scales.get(id.index()).copied().flatten() else {
                self.field_without_number(field, text.span(file));
                return None;
            };
            (Input::Field(id), scale)
        } else if let Some(id) = self.scope.readings.find(name) {
            (Input::Reading(id), *reading_scales.get(id.index())?)
        } else if name.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '-' | '+' | '.' | '−')) {
            return match Amount::parse(name).and_then(|amount| amount.quantity(argument)) {
                Ok(quantity) => Some(Input::Fixed(quantity)),
                Err(wrong) => {
                    self.quantity_wrong(text, file, wrong);
                    None
                }
            };
        } else {
            let nearest = self.suggest(name, |scope| Box::new(scope.readings.iter()));
            self.unknown(What::Reading, name, text.span(file), nearest);
            return None;
        };
        if scale.dimension() != argument.dimension() {
            let message = format!(
                "`{name}` is {}; the argument is {}",
                scale.dimension().name(),
                argument.dimension().name()
            );
            let help =
                "give it a reading of the argument's kind; a temperature difference is not a temperature";
            let wrong = Misread::new(0..text.value.len(), message, help);
            self.unit_mismatch(text, file, wrong);
            return None;
        }
        Some(input)
    }

    /// A formula that yields something else than its reading is.
    pub(super) fn result_of_another_dimension(
        &mut self,
        text: &Text,
        file: FileId,
        formula: &Formula,
        result: Scale,
    ) {
        let message = format!(
            "the formula `{}` yields {}; this reading is {}",
            formula.name,
            formula.result.dimension().name(),
            result.dimension().name()
        );
        let unit = formula.result.symbol();
        let help = match (formula.result.dimension(), result.dimension()) {
            (Dimension::TemperatureDifference, Dimension::Temperature) => {
                "add `difference: true` to the reading".to_owned()
            }
            (Dimension::Temperature, Dimension::TemperatureDifference) => {
                "take `difference: true` out of the reading".to_owned()
            }
            _ => format!("give the reading the unit {unit}"),
        };
        self.unit_mismatch(text, file, Misread::new(0..text.value.len(), message, help));
    }
}
