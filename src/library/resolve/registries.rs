//! The registries' small entries, and what all kinds of entries share.

use super::super::problem::What;
use super::super::raw::{self, Text, Texts};
use super::super::registry::{Caution, Restore, Sign, Source, Taking};
use super::super::table::Table;
use super::super::yaml::{At, Keyed};
use super::Resolver;
use super::lookup::Owner;
use super::scope::{Opened, Registered};
use crate::measure::{Scale, Unit};

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
                self.missing(owner.at, owner.name, "values");
            }
            let (values, names) = self.choices(&values, owner.file);
            self.scope.sign_values.push(names);
            Sign {
                ask: self.text(ask, &owner, "ask"),
                values,
                taking: self.taking(&owner, minutes, cautions, leaves, source, how),
            }
        });
    }

    pub(super) fn taking(
        &mut self,
        owner: &Owner<'_>,
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
}

/// What a number with this unit is in.
pub(super) fn scale_of(unit: Unit, difference: Option<bool>) -> Scale {
    if difference == Some(true) {
        Scale::difference(unit)
    } else {
        Scale::of(unit)
    }
}
