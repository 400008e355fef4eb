//! What each kind of step does.

use super::super::problem::What;
use super::super::raw;
use super::super::table::Id;
use super::super::tree::{Answers, Kind, Tree};
use super::Resolver;
use super::answers::Exits;
use super::edges::Within;
use super::lookup::{Owner, Valued};
use super::scope::Taken;
use crate::measure::Scale;

impl Resolver<'_> {
    pub(super) fn measure(
        &mut self,
        raw: &mut raw::Step,
        owner: &Owner<'_>,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Kind> {
        let name = raw.measure.take()?;
        let reading = self.find(What::Reading, &name, within.file, |scope| &scope.readings);
        let scale = reading.and_then(|reading| Some(self.library.readings.get(reading)?.scale));
        let answers = match (raw.bands.take(), raw.go.take()) {
            (Some(entries), None) => self.band_answers(entries, scale, within, exits),
            (None, Some(go)) => self.exit(go, within, exits).map(Answers::Go),
            (given, _) => self.answers_wrong(given.is_some(), "bands", owner),
        };
        let unable = self.way_out(raw.unable.take(), within, exits);
        match (reading, answers, unable) {
            (Some(reading), Some(answers), Some(unable)) => Some(Kind::Measure {
                reading,
                answers,
                unable,
                how: raw.how.take().map(|text| text.value),
            }),
            (_, answers, unable) => exits.keep(answers, [unable]),
        }
    }

    pub(super) fn observe(
        &mut self,
        raw: &mut raw::Step,
        owner: &Owner<'_>,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Kind> {
        let name = raw.observe.take()?;
        let sign = self.find(What::Sign, &name, within.file, |scope| &scope.signs);
        let answers = match (raw.choices.take(), raw.go.take()) {
            (Some(entries), None) => self.choice_answers(entries, sign.map(Valued::Sign), within, exits),
            (None, Some(go)) => self.exit(go, within, exits).map(Answers::Go),
            (given, _) => self.answers_wrong(given.is_some(), "choices", owner),
        };
        let unsure = self.way_out(raw.unsure.take(), within, exits);
        let unable = self.way_out(raw.unable.take(), within, exits);
        match (sign, answers, unsure, unable) {
            (Some(sign), Some(answers), Some(unsure), Some(unable)) => Some(Kind::Observe {
                sign,
                answers,
                unsure,
                unable,
                how: raw.how.take().map(|text| text.value),
            }),
            (_, answers, unsure, unable) => exits.keep(answers, [unsure, unable]),
        }
    }

    pub(super) fn act(
        &mut self,
        raw: &mut raw::Step,
        owner: &Owner<'_>,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Kind> {
        let text = raw.act.take()?.value;
        let file = within.file;
        let go = match raw.go.take() {
            Some(go) => self.exit(go, within, exits),
            None => {
                self.missing(owner.at, owner.name, "go");
                exits.lost = true;
                None
            }
        };
        Some(Kind::Do {
            text,
            go: go?,
            voids: self.find_data(raw.voids.as_ref(), file),
            leaves: self.find_restores(raw.leaves.as_ref(), file),
            restores: self.find_restores(raw.restores.as_ref(), file),
        })
    }

    pub(super) fn plate_step(
        &mut self,
        raw: &mut raw::Step,
        owner: &Owner<'_>,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Kind> {
        let name = raw.plate.take()?;
        let field = self.find(What::PlateField, &name, within.file, |scope| &scope.fields);
        let scale: Option<Option<Scale>> =
            field.and_then(|field| self.field_scales.get(field.index()).copied());
        let answers = match (raw.choices.take(), raw.bands.take(), scale) {
            (Some(entries), None, None | Some(None)) => {
                self.choice_answers(entries, field.map(Valued::Field), within, exits)
            }
            (None, Some(entries), None | Some(Some(_))) => {
                self.band_answers(entries, scale.flatten(), within, exits)
            }
            (given, _, scale) => {
                let key = match scale.flatten() {
                    Some(_) => "bands",
                    None => "choices",
                };
                self.answers_wrong(given.is_some(), key, owner)
            }
        };
        let unable = self.way_out(raw.unable.take(), within, exits);
        match (field, answers, unable) {
            (Some(field), Some(answers), Some(unable)) => Some(Kind::Plate {
                field,
                answers,
                unable,
            }),
            (_, answers, unable) => exits.keep(answers, [unable]),
        }
    }

    pub(super) fn visit(
        &mut self,
        raw: &mut raw::Step,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Kind> {
        let name = raw.visit.take()?;
        let file = within.file;
        let tree = self.find(What::Tree, &name, file, |scope| &scope.trees);
        exits.visited = tree;
        let entries = raw.returns.take().unwrap_or_default();
        let mut taken = Taken::default();
        let mut places = Vec::with_capacity(entries.0.len());
        for entry in &entries.0 {
            let at = entry.key.span(file);
            let new = self.claim_any(What::Outcome, &mut taken, &entry.key.value, at);
            let place = tree.and_then(|tree| self.find_outcome(tree, &entry.key, file));
            places.push(place.filter(|_| new));
        }
        let mut returns = Vec::with_capacity(places.len());
        let mut whole = true;
        for (entry, place) in entries.0.into_iter().zip(places) {
            match (place, self.exit(entry.value, within, exits)) {
                (Some(place), Some(edge)) => returns.push((place, edge)),
                (_, edge) => {
                    whole = false;
                    exits.edges.extend(edge);
                }
            }
        }
        let on_verdict = self.way_out(raw.on_verdict.take(), within, exits);
        returns.sort_by_key(|(place, _)| *place);
        match (tree, on_verdict) {
            (Some(tree), Some(on_verdict)) if whole => Some(Kind::Visit {
                tree,
                returns,
                on_verdict,
            }),
            (_, on_verdict) => {
                exits.edges.extend(returns.into_iter().map(|(_, edge)| edge));
                exits.keep(None, [on_verdict])
            }
        }
    }

    pub(super) fn verdict(&mut self, raw: &mut raw::Step, owner: &Owner<'_>) -> Option<Kind> {
        let name = raw.verdict.take()?;
        let fault = self.find(What::Fault, &name, owner.file, |scope| &scope.faults);
        let because = self.text(raw.because.take(), owner, "because");
        Some(Kind::Verdict {
            fault: fault?,
            because,
            advice: raw.advice.take().map(|text| text.value),
        })
    }

    pub(super) fn back(&mut self, raw: &mut raw::Step, tree: Id<Tree>, within: &Within<'_>) -> Option<Kind> {
        let name = raw.back.take()?;
        let outcome = self.find_outcome(tree, &name, within.file)?;
        Some(Kind::Return { outcome })
    }
}
