//! Parts with their proofs, and faults with their remedies.

use super::super::problem::What;
use super::super::raw::{self, Text};
use super::super::registry::{Fault, Part, Proof, Remedy};
use super::super::yaml::{At, Keyed};
use super::Resolver;
use super::lookup::Owner;
use super::registries::table;
use super::scope::Opened;
use crate::source::FileId;

impl Resolver<'_> {
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

    fn remedy(&mut self, remedy: Option<&Text>, owner: &Owner<'_>) -> Remedy {
        let Some(text) = remedy else {
            self.missing(owner.at, owner.name, "remedy");
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
