//! What `library.yaml` says, the library's own and those of its overlays.

use std::collections::HashMap;

use super::super::load::From;
use super::super::overlay::{Overlay, Replaceable};
use super::super::problem::What;
use super::super::raw::{self, Text};
use super::super::registry::Danger;
use super::super::yaml::{Entries, Keyed};
use super::super::{Id, Tree};
use super::Resolver;
use super::lookup::{Owner, Whose};
use crate::source::{FileId, Span};

impl Resolver<'_> {
    /// It names trees, so it comes after them.
    pub(super) fn about(&mut self, layers: From<raw::LibraryFile>) {
        let (mut gate, mut after_work) = (None, None);
        let mut dangers = HashMap::new();
        for (file, keyed) in layers {
            self.stray(&keyed, file);
            let about = self.named(keyed, file);
            if let Some(named) = about.gate {
                self.library.gate = self.one_tree(named, file, &mut gate, Replaceable::Gate);
            }
            if let Some(named) = about.after_work {
                self.library.after_work = self.one_tree(named, file, &mut after_work, Replaceable::AfterWork);
            }
            for caution in self.find_cautions(about.standing_cautions.as_ref(), file) {
                if !self.library.standing_cautions.contains(&caution) {
                    self.library.standing_cautions.push(caution);
                }
            }
            self.dangers(about.dangers.unwrap_or_default(), file, &mut dangers);
        }
    }

    /// Takes the name, title and edition of a layer; gives back all else.
    fn named(&mut self, keyed: Keyed<raw::LibraryFile>, file: FileId) -> raw::LibraryFile {
        let mut about = keyed.value;
        let (name, title) = (about.library.take(), about.title.take());
        let edition = about.edition.take().map(|text| text.value).unwrap_or_default();
        let number = self.files.get(file).layer().number();
        let at = self.top(file);
        let overlays = &mut self.library.overlays;
        if let Some(overlay) = overlays.iter_mut().find(|overlay| overlay.number == number) {
            let given =
                |text: Option<Text>| text.map(|text| text.value).filter(|text| !text.trim().is_empty());
            let name = given(name).unwrap_or_else(|| overlay.name.clone());
            *overlay = Overlay {
                number,
                title: given(title).unwrap_or_else(|| name.clone()),
                name,
                edition,
                at: Some(at),
            };
        } else {
            let owner = Owner {
                file,
                at,
                name: Whose::This("library.yaml"),
            };
            self.library.name = self.text(name, &owner, "library");
            self.library.edition = edition;
            self.library.title = title.map_or_else(|| self.library.name.clone(), |text| text.value);
        }
        about
    }

    /// The tree of which there is one; the last layer that names it has the say.
    fn one_tree(
        &mut self,
        named: Text,
        file: FileId,
        before: &mut Option<(String, Span)>,
        what: Replaceable,
    ) -> Option<Id<Tree>> {
        let tree = self.find(What::Tree, &named, file, |scope| &scope.trees);
        let at = named.span(file);
        if let Some((name, first)) = before.replace((named.value, at)) {
            self.replaced(what, &name, first, at);
        }
        tree
    }

    /// Adds what a layer names, and lets it replace what stands under the same label.
    fn dangers(&mut self, named: Entries<Text>, file: FileId, places: &mut HashMap<String, Span>) {
        self.once_each(&named.0, file);
        for danger in named.0 {
            let at = danger.key.span(file);
            let Some(tree) = self.find(What::Tree, &danger.value, file, |scope| &scope.trees) else {
                continue;
            };
            let label = danger.key.value;
            let first = places.insert(label.clone(), at);
            let place = self
                .library
                .dangers
                .iter()
                .position(|danger| danger.label == label);
            let danger = Danger { label, tree, at };
            match (first, place) {
                (Some(first), Some(place)) if self.is_laid_over(at, first) => {
                    self.replaced(Replaceable::Danger, &danger.label, first, at);
                    self.library.dangers[place] = danger;
                }
                _ => self.library.dangers.push(danger),
            }
        }
    }
}
