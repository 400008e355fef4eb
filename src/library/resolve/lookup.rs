//! Looking names up.

use std::fmt;

use super::super::problem::What;
use super::super::raw::{Text, Texts};
use super::super::registry::{Caution, Choice, Datum, PlateField, Restore, Sign, Source};
use super::super::table::Id;
use super::super::tree::Tree;
use super::super::yaml::{At, Entries, Keyed};
use super::Resolver;
use super::scope::{Names, Scope, Taken};
use crate::source::{FileId, Span, nearest};

/// Most values that are listed where one is unknown.
const FEW: usize = 6;

impl Resolver<'_> {
    /// The id of a name; an unknown one is reported.
    pub(super) fn find<T: 'static>(
        &mut self,
        what: What,
        name: &Text,
        file: FileId,
        names: fn(&Scope) -> &Names<T>,
    ) -> Option<Id<T>> {
        let found = names(&self.scope).find(&name.value);
        if found.is_none() {
            let nearest = self.suggest(&name.value, |scope| Box::new(names(scope).iter()));
            self.unknown(what, &name.value, name.span(file), nearest);
        }
        found
    }

    /// The registered name that was probably meant.
    pub(super) fn suggest(
        &mut self,
        name: &str,
        names: impl for<'a> Fn(&'a Scope) -> Box<dyn Iterator<Item = &'a str> + 'a>,
    ) -> Option<String> {
        meant(&mut self.patience, name, names(&self.scope))
    }

    /// As [`Resolver::suggest`], from names that are not those of the whole library.
    pub(super) fn suggest_of<'n>(
        &mut self,
        name: &str,
        names: impl Iterator<Item = &'n str>,
    ) -> Option<String> {
        meant(&mut self.patience, name, names)
    }

    /// The ids of a list of names, without those that are unknown.
    pub(super) fn find_all<T: 'static>(
        &mut self,
        what: What,
        list: Option<&Texts>,
        file: FileId,
        names: fn(&Scope) -> &Names<T>,
    ) -> Vec<Id<T>> {
        let list = list.map(Vec::as_slice).unwrap_or_default();
        list.iter()
            .filter_map(|name| self.find(what, name, file, names))
            .collect()
    }

    pub(super) fn find_cautions(&mut self, list: Option<&Texts>, file: FileId) -> Vec<Id<Caution>> {
        self.find_all(What::Caution, list, file, |scope| &scope.cautions)
    }

    pub(super) fn find_restores(&mut self, list: Option<&Texts>, file: FileId) -> Vec<Id<Restore>> {
        self.find_all(What::Restore, list, file, |scope| &scope.restores)
    }

    pub(super) fn find_source(&mut self, name: Option<&Text>, file: FileId) -> Option<Id<Source>> {
        self.find(What::Source, name?, file, |scope| &scope.sources)
    }

    /// The reading or sign, or where `fields` says so the plate field, of a name.
    pub(super) fn find_datum(&mut self, name: &Text, file: FileId) -> Option<Datum> {
        let scope = &self.scope;
        let found = (scope.readings.find(&name.value).map(Datum::Reading))
            .or_else(|| scope.signs.find(&name.value).map(Datum::Sign))
            .or_else(|| scope.fields.find(&name.value).map(Datum::Field));
        if found.is_none() {
            let nearest = self.suggest(&name.value, |scope| {
                Box::new(
                    scope
                        .readings
                        .iter()
                        .chain(scope.signs.iter())
                        .chain(scope.fields.iter()),
                )
            });
            self.unknown(What::Datum, &name.value, name.span(file), nearest);
        }
        found
    }

    pub(super) fn find_data(&mut self, list: Option<&Texts>, file: FileId) -> Vec<Datum> {
        let list = list.map(Vec::as_slice).unwrap_or_default();
        list.iter()
            .filter_map(|name| self.find_datum(name, file))
            .collect()
    }

    /// The position of a value among those of a sign or plate field; an unknown one is reported.
    pub(super) fn find_value(&mut self, of: Valued, name: &Text, file: FileId) -> Option<usize> {
        let found = self.scope.values(of).and_then(|values| values.find(&name.value));
        if found.is_none() {
            let nearest = self.suggest(&name.value, |scope| {
                Box::new(scope.values(of).into_iter().flat_map(Names::iter))
            });
            let mut registered: Vec<String> = (self.scope.values(of).into_iter())
                .flat_map(Names::iter)
                .map(str::to_owned)
                .take(FEW + 1)
                .collect();
            registered.sort();
            if registered.len() > FEW {
                registered.clear();
            }
            self.unknown_of(What::Value, &name.value, name.span(file), nearest, registered);
        }
        found.map(Id::index)
    }

    /// The position of an outcome among those of a tree; an unknown one is reported.
    pub(super) fn find_outcome(&mut self, of: Id<Tree>, name: &Text, file: FileId) -> Option<usize> {
        let outcomes = self.scope.outcomes.get(of.index());
        let found = outcomes.and_then(|outcomes| outcomes.find(&name.value));
        if found.is_none() {
            let nearest = self.suggest(&name.value, |scope| {
                Box::new(scope.outcomes.get(of.index()).into_iter().flat_map(Names::iter))
            });
            self.unknown(What::Outcome, &name.value, name.span(file), nearest);
        }
        found.map(Id::index)
    }

    /// The values of a sign or of a plate field, and their names.
    pub(super) fn choices(&mut self, entries: &Entries<Text>, file: FileId) -> (Vec<Choice>, Names<Choice>) {
        let mut taken = Taken::default();
        let mut choices = Vec::new();
        for entry in &entries.0 {
            let at = entry.key.span(file);
            if self.claim(What::Value, &mut taken, &entry.key.value, at) {
                choices.push(Choice {
                    name: entry.key.value.clone(),
                    at,
                    text: entry.value.value.clone(),
                });
            }
        }
        let names = choices.iter().map(|choice| choice.name.clone()).collect();
        (choices, names)
    }

    /// A text that must be there: an absent one is reported at `owner` and stands empty.
    pub(super) fn text(&mut self, text: Option<Text>, owner: &Owner<'_>, key: &str) -> String {
        match text {
            Some(text) if !text.value.trim().is_empty() => text.value,
            Some(text) => {
                self.missing(text.span(owner.file), owner.name, key);
                String::new()
            }
            None => {
                self.missing(owner.at, owner.name, key);
                String::new()
            }
        }
    }

    /// A number of minutes, or another that must be finite and not negative.
    pub(super) fn positive(&mut self, number: Option<&At<f64>>, file: FileId, what: &str) -> Option<f64> {
        let number = number?;
        if number.value.is_finite() && number.value >= 0.0 {
            return Some(number.value);
        }
        self.malformed(
            number.span(file),
            format!("{what} cannot be {}", number.value),
            "write a plain number, not below nothing",
        );
        None
    }
}

/// What has values to choose from.
#[derive(Clone, Copy)]
pub(super) enum Valued {
    Sign(Id<Sign>),
    Field(Id<PlateField>),
}

/// The nearest of some names, as long as there is patience to look through them.
fn meant<'n>(patience: &mut usize, name: &str, names: impl Iterator<Item = &'n str>) -> Option<String> {
    if *patience == 0 {
        return None;
    }
    let counted = names.inspect(|_| *patience = patience.saturating_sub(1));
    nearest(name, counted).map(str::to_owned)
}

/// Whose key is being read, for messages.
pub(super) struct Owner<'a> {
    pub file: FileId,
    pub at: Span,
    pub name: Whose<'a>,
}

/// What an owner is called in messages.
#[derive(Clone, Copy)]
pub(super) enum Whose<'a> {
    /// By its kind and name: "the reading `x`".
    Named(What, &'a str),
    /// As it stands.
    This(&'a str),
}

impl fmt::Display for Whose<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Named(what, name) => write!(f, "the {what} `{name}`"),
            Self::This(name) => f.write_str(name),
        }
    }
}

impl<'a> Owner<'a> {
    /// Reports the stray keys of a registered map and names it.
    pub(super) fn of<T>(
        resolver: &mut Resolver<'_>,
        what: What,
        name: &'a str,
        at: Span,
        keyed: &Keyed<T>,
    ) -> Self {
        resolver.stray(keyed, at.file);
        Self {
            file: at.file,
            at,
            name: Whose::Named(what, name),
        }
    }
}
