//! Steps: exactly one kind each, with the keys that go with it.

use super::super::problem::What;
use super::super::raw;
use super::super::table::Id;
use super::super::tree::{Kind, Step, Tree};
use super::super::yaml::Keyed;
use super::Resolver;
use super::answers::Exits;
use super::edges::Within;
use super::lookup::Owner;
use super::scope::Registered;

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
        entry: Registered<Box<Keyed<raw::Step>>>,
        within: &Within<'_>,
    ) -> Step {
        let Registered {
            name,
            at,
            raw: mut keyed,
        } = entry;
        let owner = Owner::of(self, What::Step, &name, at, &keyed);
        let file = within.file;
        let answers_at = ["bands", "choices", "returns"]
            .into_iter()
            .find_map(|key| keyed.key(key, file));
        let kind = self.kind_of(&keyed, &owner, within);
        let raw = &mut keyed.value;
        let cautions = raw.cautions.take();
        let source = raw.source.take();
        let kind = match kind {
            Some(kind) => self.kind(kind, raw, tree, &owner, within),
            None => Kind::Unresolved {
                edges: Vec::new(),
                lost: true,
                visited: None,
            },
        };
        Step {
            name,
            at,
            tree,
            kind,
            title: raw.title.take().map(|text| text.value),
            why: raw.why.take().map(|text| text.value),
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
        owner: &Owner<'_>,
        within: &Within<'_>,
    ) -> Option<&'static str> {
        let kind_named = |key| KINDS.iter().find(|(kind, _)| *kind == key);
        let mut kinds = keyed.names().filter_map(kind_named);
        let (Some((kind, own)), None) = (kinds.next(), kinds.next()) else {
            let found = KINDS.iter().map(|(kind, _)| *kind).filter(|kind| keyed.has(kind));
            let found: Vec<&str> = found.collect();
            let message = match found.as_slice() {
                [] => format!("{} does nothing", owner.name),
                found => format!("{} is {} at once", owner.name, found.join(" and ")),
            };
            self.malformed(
                owner.at,
                message,
                "give it exactly one of measure, observe, do, plate, visit, verdict or return",
            );
            return None;
        };
        for key in keyed.names() {
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
        owner: &Owner<'_>,
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
            self.missing(owner.at, owner.name, kind);
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
            visited: exits.visited,
        })
    }
}
