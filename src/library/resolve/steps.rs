//! Steps: exactly one kind each, with the keys that go with it.

use super::super::problem::What;
use super::super::raw;
use super::super::registry::{Choice, FieldKind};
use super::super::table::Id;
use super::super::tree::{Answers, BandAnswer, ChoiceAnswer, Edge, Kind, Step, Tree};
use super::super::yaml::{Entries, Keyed};
use super::Resolver;
use super::edges::Within;
use super::lookup::Owner;
use super::scope::{Registered, Taken};
use crate::measure::Scale;

/// The kinds of steps, each with the keys that only some have.
pub(in crate::library) const KINDS: [(&str, &[&str]); 7] = [
    ("measure", &["bands", "go", "unable", "how"]),
    ("observe", &["choices", "go", "unsure", "unable", "how"]),
    ("do", &["go", "voids", "leaves", "restores"]),
    ("plate", &["choices", "bands", "unable"]),
    ("visit", &["returns", "on_verdict"]),
    ("verdict", &["because", "advice"]),
    ("return", &[]),
];

/// Keys that any step may have.
pub(in crate::library) const ANY: [&str; 5] = ["title", "why", "cautions", "source", "minutes"];

impl Resolver<'_> {
    pub(super) fn resolve_step(
        &mut self,
        tree: Id<Tree>,
        entry: Registered<Keyed<raw::Step>>,
        within: &Within<'_>,
    ) -> Step {
        let Registered { name, at, raw: keyed } = entry;
        let owner = Owner::of(self, What::Step, &name, at, &keyed);
        let file = within.file;
        let answers_at = ["bands", "choices", "returns"]
            .into_iter()
            .find_map(|key| keyed.key(key, file));
        let kind = self.kind_of(&keyed, &owner, within);
        let mut raw = keyed.value;
        let cautions = raw.cautions.take();
        let source = raw.source.take();
        let kind = match kind {
            Some(kind) => self.kind(kind, &mut raw, tree, &owner, within),
            None => Kind::Unresolved {
                edges: Vec::new(),
                lost: true,
            },
        };
        Step {
            name,
            at,
            tree,
            kind,
            title: raw.title.map(|text| text.value),
            why: raw.why.map(|text| text.value),
            cautions: self.find_cautions(cautions.as_ref(), file),
            source: self.find_source(source.as_ref(), file),
            minutes: self.positive(raw.minutes.as_ref(), file, "a time"),
            answers_at,
        }
    }

    /// Which kind a step is; keys of other kinds are reported.
    fn kind_of(
        &mut self,
        keyed: &Keyed<raw::Step>,
        owner: &Owner,
        within: &Within<'_>,
    ) -> Option<&'static str> {
        let given: Vec<&'static str> = keyed.names().collect();
        let kinds: Vec<_> = KINDS.iter().filter(|(kind, _)| given.contains(kind)).collect();
        let [(kind, own)] = kinds.as_slice() else {
            let found = kinds
                .iter()
                .map(|(kind, _)| *kind)
                .collect::<Vec<_>>()
                .join(" and ");
            let message = match kinds.len() {
                0 => format!("{} does nothing", owner.name),
                _ => format!("{} is {found} at once", owner.name),
            };
            self.malformed(
                owner.at,
                message,
                "give it exactly one of measure, observe, do, plate, visit, verdict or return",
            );
            return None;
        };
        for key in given {
            if key != *kind && !own.contains(&key) && !ANY.contains(&key) {
                let span = keyed.key(key, within.file).unwrap_or(owner.at);
                let message = format!("`{key}` means nothing on a `{kind}` step");
                self.malformed(
                    span,
                    message,
                    format!("its keys are {}", [own, ANY.as_slice()].concat().join(", ")),
                );
            }
        }
        Some(kind)
    }

    fn kind(
        &mut self,
        kind: &str,
        raw: &mut raw::Step,
        tree: Id<Tree>,
        owner: &Owner,
        within: &Within<'_>,
    ) -> Kind {
        let mut exits = Exits::default();
        let named = [
            &raw.measure,
            &raw.observe,
            &raw.act,
            &raw.plate,
            &raw.visit,
            &raw.verdict,
            &raw.back,
        ];
        if named.into_iter().all(Option::is_none) {
            // The key stands there, and nothing behind it.
            self.missing(owner.at, &owner.name, kind);
            exits.lost = true;
        }
        let resolved = match kind {
            "measure" => self.measure(raw, owner, within, &mut exits),
            "observe" => self.observe(raw, owner, within, &mut exits),
            "do" => self.act(raw, owner, within, &mut exits),
            "plate" => self.plate_step(raw, owner, within, &mut exits),
            "visit" => self.visit(raw, within, &mut exits),
            "verdict" => self.verdict(raw, owner),
            _ => self.back(raw, tree, within),
        };
        resolved.unwrap_or(Kind::Unresolved {
            edges: exits.edges,
            lost: exits.lost,
        })
    }

    fn measure(
        &mut self,
        raw: &mut raw::Step,
        owner: &Owner,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Kind> {
        let name = raw.measure.take()?;
        let reading = self.find(What::Reading, &name, within.file, |scope| &scope.readings);
        let scale = reading.and_then(|reading| Some(self.library.readings.get(reading)?.scale));
        let answers = self.bands_or_go(raw, scale, owner, within, exits);
        let unable = self.way_out(raw.unable.take(), within, exits);
        Some(Kind::Measure {
            reading: reading?,
            answers: answers?,
            unable: unable?,
            how: raw.how.take().map(|text| text.value),
        })
    }

    fn observe(
        &mut self,
        raw: &mut raw::Step,
        owner: &Owner,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Kind> {
        let name = raw.observe.take()?;
        let sign = self.find(What::Sign, &name, within.file, |scope| &scope.signs);
        let choices = sign.and_then(|sign| Some(self.library.signs.get(sign)?.values.clone()));
        let answers = match (raw.choices.take(), raw.go.take()) {
            (Some(entries), None) => self.choice_answers(&entries, choices.as_deref(), within, exits),
            (None, Some(go)) => self.exit(&go, within, exits).map(Answers::Go),
            (given, _) => self.answers_wrong(given.is_some(), "choices", owner),
        };
        let unsure = self.way_out(raw.unsure.take(), within, exits);
        let unable = self.way_out(raw.unable.take(), within, exits);
        Some(Kind::Observe {
            sign: sign?,
            answers: answers?,
            unsure: unsure?,
            unable: unable?,
            how: raw.how.take().map(|text| text.value),
        })
    }

    fn act(
        &mut self,
        raw: &mut raw::Step,
        owner: &Owner,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Kind> {
        let text = raw.act.take()?.value;
        let file = within.file;
        let go = match raw.go.take() {
            Some(go) => self.exit(&go, within, exits),
            None => {
                self.missing(owner.at, &owner.name, "go");
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

    fn plate_step(
        &mut self,
        raw: &mut raw::Step,
        owner: &Owner,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Kind> {
        let name = raw.plate.take()?;
        let field = self.find(What::PlateField, &name, within.file, |scope| &scope.fields);
        let kind = field.and_then(|field| Some(self.library.plate.get(field)?.kind.clone()));
        let answers = match (raw.choices.take(), raw.bands.take(), kind) {
            (Some(entries), None, None) => self.choice_answers(&entries, None, within, exits),
            (None, Some(entries), None) => self.band_answers(&entries, None, within, exits),
            (Some(entries), None, Some(FieldKind::Choices(choices))) => {
                self.choice_answers(&entries, Some(&choices), within, exits)
            }
            (None, Some(entries), Some(FieldKind::Number { scale, .. })) => {
                self.band_answers(&entries, Some(scale), within, exits)
            }
            (given, _, kind) => {
                let key = match kind {
                    Some(FieldKind::Number { .. }) => "bands",
                    _ => "choices",
                };
                self.answers_wrong(given.is_some(), key, owner)
            }
        };
        let unable = self.way_out(raw.unable.take(), within, exits);
        Some(Kind::Plate {
            field: field?,
            answers: answers?,
            unable: unable?,
        })
    }

    fn visit(&mut self, raw: &mut raw::Step, within: &Within<'_>, exits: &mut Exits) -> Option<Kind> {
        let name = raw.visit.take()?;
        let tree = self.find(What::Tree, &name, within.file, |scope| &scope.trees);
        let outcomes = tree.and_then(|tree| self.outcomes.get(tree.index()).cloned());
        let mut taken = Taken::default();
        let mut returns = Vec::new();
        let mut whole = true;
        for entry in raw.returns.take().unwrap_or_default().0 {
            let edge = self.exit(&entry.value, within, exits);
            let at = entry.key.span(within.file);
            let new = self.claim_any(What::Outcome, &mut taken, &entry.key.value, at);
            let Some(outcomes) = &outcomes else {
                continue;
            };
            let position = outcomes
                .iter()
                .position(|outcome| outcome.name == entry.key.value);
            if position.is_none() {
                let names = outcomes.iter().map(|outcome| outcome.name.as_str());
                let nearest = crate::source::nearest(&entry.key.value, names).map(str::to_owned);
                self.unknown(What::Outcome, &entry.key.value, at, nearest);
            }
            match (position, edge) {
                (Some(position), Some(edge)) if new => returns.push((position, edge)),
                _ => whole = false,
            }
        }
        let on_verdict = self.way_out(raw.on_verdict.take(), within, exits)?;
        whole.then_some(Kind::Visit {
            tree: tree?,
            returns,
            on_verdict,
        })
    }

    fn verdict(&mut self, raw: &mut raw::Step, owner: &Owner) -> Option<Kind> {
        let name = raw.verdict.take()?;
        let fault = self.find(What::Fault, &name, owner.file, |scope| &scope.faults);
        let because = self.text(raw.because.take(), owner, "because");
        Some(Kind::Verdict {
            fault: fault?,
            because,
            advice: raw.advice.take().map(|text| text.value),
        })
    }

    fn back(&mut self, raw: &mut raw::Step, tree: Id<Tree>, within: &Within<'_>) -> Option<Kind> {
        let name = raw.back.take()?;
        let outcomes = self.outcomes.get(tree.index()).cloned().unwrap_or_default();
        let found = outcomes.iter().position(|outcome| outcome.name == name.value);
        if found.is_none() {
            let names = outcomes.iter().map(|outcome| outcome.name.as_str());
            let nearest = crate::source::nearest(&name.value, names).map(str::to_owned);
            self.unknown(What::Outcome, &name.value, name.span(within.file), nearest);
        }
        Some(Kind::Return { outcome: found? })
    }

    fn bands_or_go(
        &mut self,
        raw: &mut raw::Step,
        scale: Option<Scale>,
        owner: &Owner,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Answers> {
        match (raw.bands.take(), raw.go.take()) {
            (Some(entries), None) => self.band_answers(&entries, scale, within, exits),
            (None, Some(go)) => self.exit(&go, within, exits).map(Answers::Go),
            (given, _) => self.answers_wrong(given.is_some(), "bands", owner),
        }
    }

    /// A question with no answers, or with two kinds of them.
    fn answers_wrong(&mut self, both: bool, key: &str, owner: &Owner) -> Option<Answers> {
        if both {
            self.malformed(
                owner.at,
                format!("{} says in two ways where its answers lead", owner.name),
                format!("keep `{key}`, or `go` where every answer leads to one step"),
            );
        } else {
            self.missing(owner.at, &owner.name, key);
        }
        None
    }

    fn band_answers(
        &mut self,
        entries: &Entries<raw::Edge>,
        scale: Option<Scale>,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Answers> {
        let mut answers = Vec::with_capacity(entries.0.len());
        let mut whole = true;
        for entry in &entries.0 {
            let edge = self.exit(&entry.value, within, exits);
            let band = scale.and_then(|scale| self.band(&entry.key, scale, within.file));
            match (edge, band) {
                (Some(edge), Some(band)) => answers.push(BandAnswer {
                    at: entry.key.span(within.file),
                    text: entry.key.value.clone(),
                    band,
                    edge,
                }),
                _ => whole = false,
            }
        }
        whole.then_some(Answers::Bands(answers))
    }

    fn choice_answers(
        &mut self,
        entries: &Entries<raw::Edge>,
        choices: Option<&[Choice]>,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Answers> {
        let mut taken = Taken::default();
        let mut answers = Vec::with_capacity(entries.0.len());
        let mut whole = true;
        for entry in &entries.0 {
            let edge = self.exit(&entry.value, within, exits);
            let at = entry.key.span(within.file);
            let new = self.claim_any(What::Value, &mut taken, &entry.key.value, at);
            let value = choices.and_then(|choices| self.find_choice(choices, &entry.key, within.file));
            match (edge, value) {
                (Some(edge), Some(value)) if new => answers.push(ChoiceAnswer { at, value, edge }),
                _ => whole = false,
            }
        }
        whole.then_some(Answers::Choices(answers))
    }

    /// An edge that may be absent: none where it is there and could not be read.
    fn way_out(
        &mut self,
        edge: Option<raw::Edge>,
        within: &Within<'_>,
        exits: &mut Exits,
    ) -> Option<Option<Edge>> {
        match edge {
            None => Some(None),
            Some(edge) => self.exit(&edge, within, exits).map(Some),
        }
    }

    /// An edge, noted among the step's exits whether or not the rest of the step can be resolved.
    fn exit(&mut self, edge: &raw::Edge, within: &Within<'_>, exits: &mut Exits) -> Option<Edge> {
        let edge = self.edge(edge, within);
        match &edge {
            Some(edge) => exits.edges.push(edge.clone()),
            None => exits.lost = true,
        }
        edge
    }
}

/// The edges of a step as far as they could be read.
#[derive(Default)]
struct Exits {
    edges: Vec<Edge>,
    lost: bool,
}
