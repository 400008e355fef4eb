//! Worked calls.

use std::collections::HashMap;

use super::super::overlay::Replaceable;
use super::super::problem::What;
use super::super::raw::{self, Text, Texts};
use super::super::registry::{Datum, Restore};
use super::super::scenario::{Expect, ExpectedEnd, Given, Placed, Scenario};
use super::super::table::Id;
use super::super::yaml::{Entries, Entry, Keyed, Node};
use super::Resolver;
use super::lookup::{Owner, Valued, Whose};
use crate::measure::{Amount, Scale};
use crate::source::{FileId, Span};

/// A scenario file with the stem of its name.
type File = (FileId, String, Keyed<raw::ScenarioFile>);

impl Resolver<'_> {
    pub(super) fn scenarios(&mut self, files: Vec<File>) {
        for (file, name, keyed) in self.last_of_each(files) {
            self.stray(&keyed, file);
            if let Some(scenario) = self.scenario(file, name, keyed.value) {
                self.library.scenarios.push(scenario);
            }
        }
    }

    /// Of the files that have one name in their layers, the one of the last layer, in the place of the first.
    fn last_of_each(&mut self, files: Vec<File>) -> Vec<File> {
        let mut places: HashMap<&str, usize> = HashMap::new();
        let mut kept: Vec<File> = Vec::with_capacity(files.len());
        for file in files {
            let name = self.files.get(file.0).name();
            match places.get(name).and_then(|&place| kept.get_mut(place)) {
                Some(place) => {
                    let (first, by) = (place.0, file.0);
                    *place = file;
                    self.replaced(Replaceable::Scenario, name, self.top(first), self.top(by));
                }
                None => {
                    places.insert(name, kept.len());
                    kept.push(file);
                }
            }
        }
        kept
    }

    fn scenario(&mut self, file: FileId, name: String, raw: raw::ScenarioFile) -> Option<Scenario> {
        let at = raw
            .scenario
            .as_ref()
            .map_or(self.top(file), |title| title.span(file));
        let owner = Owner {
            file,
            at,
            name: Whose::This("the scenario"),
        };
        let title = self.text(raw.scenario, &owner, "scenario");
        let tree = match &raw.tree {
            Some(tree) => self.find(What::Tree, tree, file, |scope| &scope.trees),
            None => {
                self.missing(at, owner.name, "tree");
                None
            }
        };
        let mut scenario = Scenario {
            title,
            name,
            at,
            tree: tree?,
            plate: Vec::new(),
            readings: Vec::new(),
            signs: Vec::new(),
            unable: self.placed_data(raw.unable.as_ref(), file),
            unsure: self.placed(raw.unsure.as_ref(), file, |resolver, name| {
                resolver.find(What::Sign, name, file, |scope| &scope.signs)
            }),
            expect: Expect::default(),
        };
        let (plate, readings) = (raw.plate.unwrap_or_default(), raw.readings.unwrap_or_default());
        let signs = raw.signs.unwrap_or_default();
        for entries in [&plate, &readings, &signs] {
            self.once_each(&entries.0, file);
        }
        for entry in &plate.0 {
            self.plate_answer(entry, file, &mut scenario);
        }
        for entry in &readings.0 {
            self.reading_answer(entry, file, &mut scenario);
        }
        self.sign_answers(signs, file, &mut scenario);
        match raw.expect {
            Some(expect) => scenario.expect = self.expect(&expect, &scenario, &owner),
            None => self.missing(at, owner.name, "expect"),
        }
        Some(scenario)
    }

    fn plate_answer(&mut self, entry: &Entry<Node>, file: FileId, scenario: &mut Scenario) {
        let Some(field) = self.find(What::PlateField, &entry.key, file, |scope| &scope.fields) else {
            return;
        };
        let Some(texts) = self.texts(&entry.value, file) else {
            return;
        };
        let scale = self.field_scales.get(field.index()).copied().flatten();
        for text in &texts {
            match scale {
                Some(scale) => self.typed(text, scale, file),
                None => _ = self.find_value(Valued::Field(field), text, file),
            }
        }
        let at = entry.key.span(file);
        scenario.plate.push(given(field, at, typed_texts(texts)));
    }

    fn reading_answer(&mut self, entry: &Entry<Node>, file: FileId, scenario: &mut Scenario) {
        let Some(reading) = self.find(What::Reading, &entry.key, file, |scope| &scope.readings) else {
            return;
        };
        let Some(texts) = self.texts(&entry.value, file) else {
            return;
        };
        if let Some(scale) = self.library.readings.get(reading).map(|reading| reading.scale) {
            for text in &texts {
                self.typed(text, scale, file);
            }
        }
        let at = entry.key.span(file);
        scenario.readings.push(given(reading, at, typed_texts(texts)));
    }

    /// An answer must be one that the walk would take.
    fn typed(&mut self, text: &Text, scale: Scale, file: FileId) {
        if let Err(wrong) = Amount::parse(&text.value).and_then(|amount| amount.quantity(scale)) {
            self.quantity_wrong(text, file, wrong);
        }
    }

    fn sign_answers(&mut self, entries: Entries<Node>, file: FileId, scenario: &mut Scenario) {
        for entry in entries.0 {
            let Some(sign) = self.find(What::Sign, &entry.key, file, |scope| &scope.signs) else {
                continue;
            };
            let texts = self.texts(&entry.value, file).unwrap_or_default();
            let values: Vec<usize> = texts
                .iter()
                .filter_map(|text| self.find_value(Valued::Sign(sign), text, file))
                .collect();
            scenario.signs.push(given(sign, entry.key.span(file), values));
        }
    }

    fn expect(&mut self, expect: &Keyed<raw::Expect>, scenario: &Scenario, owner: &Owner<'_>) -> Expect {
        let file = owner.file;
        self.stray(expect, file);
        let raw::Expect {
            verdict,
            outcome,
            ends,
            asked,
            put_back,
            findings,
        } = &expect.value;
        let ways = [verdict, outcome, ends].into_iter().flatten().count();
        if ways != 1 {
            self.malformed(
                owner.at,
                "the scenario does not say in one way how the walk must end",
                "write exactly one of `verdict: FAULT`, `outcome: NAME` or `ends: unproven` under `expect`",
            );
        }
        let end = if let Some(name) = verdict {
            self.find(What::Fault, name, file, |scope| &scope.faults)
                .map(ExpectedEnd::Verdict)
        } else if let Some(name) = outcome {
            self.find_outcome(scenario.tree, name, file)
                .map(ExpectedEnd::Outcome)
        } else {
            ends.as_ref().and_then(|text| self.expected_end(text, file))
        };
        // From the key to the name: the line reads as its author wrote it.
        let written = ["verdict", "outcome", "ends"]
            .into_iter()
            .zip([verdict, outcome, ends]);
        let end_at = written
            .filter_map(|(key, value)| Some((expect.key(key, file)?, value.as_ref()?.span(file))))
            .map(|(key, value)| Span {
                end: value.end,
                ..key
            })
            .next();
        Expect {
            end: end.map(|what| Placed {
                what,
                at: end_at.unwrap_or(owner.at),
            }),
            asked: self.placed_data(asked.as_ref(), file),
            put_back: self.placed_restores(put_back.as_ref(), file),
            leaves_nothing: match put_back {
                Some(list) if list.is_empty() => expect.key("put_back", file),
                _ => None,
            },
            findings: (findings.as_ref()).map(|list| Placed {
                what: list.iter().filter_map(|name| self.severity(name, file)).collect(),
                at: expect.key("findings", file).unwrap_or(owner.at),
            }),
        }
    }

    /// What names lead to, each with its place.
    fn placed<T>(
        &mut self,
        list: Option<&Texts>,
        file: FileId,
        mut find: impl FnMut(&mut Self, &Text) -> Option<T>,
    ) -> Vec<Placed<T>> {
        let list = list.map(Vec::as_slice).unwrap_or_default();
        list.iter()
            .filter_map(|name| {
                let at = name.span(file);
                find(self, name).map(|what| Placed { what, at })
            })
            .collect()
    }

    fn placed_data(&mut self, list: Option<&Texts>, file: FileId) -> Vec<Placed<Datum>> {
        self.placed(list, file, |resolver, name| resolver.find_datum(name, file))
    }

    fn placed_restores(&mut self, list: Option<&Texts>, file: FileId) -> Vec<Placed<Id<Restore>>> {
        self.placed(list, file, |resolver, name| {
            resolver.find(What::Restore, name, file, |scope| &scope.restores)
        })
    }

    fn expected_end(&mut self, text: &Text, file: FileId) -> Option<ExpectedEnd> {
        if text.value == "unproven" {
            return Some(ExpectedEnd::Unproven);
        }
        self.malformed(
            text.span(file),
            format!("a walk does not end `{}`", text.value),
            "write `ends: unproven`, or `verdict:` or `outcome:` with a name",
        );
        None
    }
}

fn given<K, V>(of: K, at: Span, answers: Vec<V>) -> Given<K, V> {
    Given { of, at, answers }
}

fn typed_texts(texts: Vec<Text>) -> Vec<String> {
    texts.into_iter().map(|text| text.value).collect()
}
