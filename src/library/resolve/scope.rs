//! Which names there are, before what stands behind them is resolved.

use std::collections::HashMap;
use std::collections::hash_map::Entry::{Occupied, Vacant};

use super::super::load::From;
use super::super::name::Look;
use super::super::overlay::Replaceable;
use super::super::problem::What;
use super::super::registry::{Caution, Choice, Fault, Part, PlateField, Reading, Restore, Sign, Source};
use super::super::table::Id;
use super::super::tree::{Outcome, Tree};
use super::super::yaml::{Entries, Entry, Keyed};
use super::super::{name, raw};
use super::Resolver;
use super::lookup::Valued;
use crate::source::{FileId, Span};

/// The names of one kind of thing.
pub(super) struct Names<T> {
    ids: HashMap<String, Id<T>>,
}

impl<T> Default for Names<T> {
    fn default() -> Self {
        Self { ids: HashMap::new() }
    }
}

impl<T> FromIterator<String> for Names<T> {
    /// Names of things that stand in this order.
    fn from_iter<I: IntoIterator<Item = String>>(names: I) -> Self {
        let ids = names.into_iter().enumerate();
        Self {
            ids: ids.map(|(index, name)| (name, Id::new(index))).collect(),
        }
    }
}

impl<T> Names<T> {
    pub fn find(&self, name: &str) -> Option<Id<T>> {
        self.ids.get(name).copied()
    }

    pub fn iter(&self) -> impl Iterator<Item = &str> {
        self.ids.keys().map(String::as_str)
    }

    /// Puts an entry where what came of its name wants it.
    fn settle<R>(&mut self, claimed: Claimed, registered: &mut Vec<Registered<R>>, entry: Registered<R>) {
        match claimed {
            Claimed::Taken => {}
            Claimed::New => {
                self.ids.insert(entry.name.clone(), Id::new(registered.len()));
                registered.push(entry);
            }
            Claimed::Replaces => {
                let id = self.find(&entry.name);
                if let Some(place) = id.and_then(|id| registered.get_mut(id.index())) {
                    *place = entry;
                }
            }
        }
    }
}

/// The names of everything.
#[derive(Default)]
pub(super) struct Scope {
    pub fields: Names<PlateField>,
    pub readings: Names<Reading>,
    pub signs: Names<Sign>,
    pub parts: Names<Part>,
    pub faults: Names<Fault>,
    pub restores: Names<Restore>,
    pub cautions: Names<Caution>,
    pub sources: Names<Source>,
    pub trees: Names<Tree>,
    /// Of each sign.
    pub sign_values: Vec<Names<Choice>>,
    /// Of each plate field; a field with a number has none.
    pub field_values: Vec<Names<Choice>>,
    /// Of each tree, known before any step is resolved.
    pub outcomes: Vec<Names<Outcome>>,
}

impl Scope {
    /// The values of a sign or of a plate field.
    pub fn values(&self, of: Valued) -> Option<&Names<Choice>> {
        match of {
            Valued::Sign(sign) => self.sign_values.get(sign.index()),
            Valued::Field(field) => self.field_values.get(field.index()),
        }
    }
}

/// A name that was registered, with what stands behind it.
pub(super) struct Registered<R> {
    pub name: String,
    pub at: Span,
    pub raw: R,
}

/// A registry whose names are known and whose entries are not resolved yet.
pub(super) struct Opened<R> {
    pub entries: Vec<Registered<R>>,
}

/// What comes of a name that was given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Claimed {
    /// It is new.
    New,
    /// An overlay gives it again: what stood under it no longer counts.
    Replaces,
    /// It was given in the same layer already.
    Taken,
}

/// Names that were given in one place, to find the second of a kind.
#[derive(Default)]
pub(super) struct Taken<'a> {
    /// The last name of each look.
    looks: HashMap<Look<'a>, (&'a str, Span)>,
    /// Names from before the last of their look: there are few.
    earlier: HashMap<&'a str, Span>,
}

impl<'a> Taken<'a> {
    /// For so many names: what grows on the way hashes them all again and again.
    fn with_room(names: usize) -> Self {
        Self {
            looks: HashMap::with_capacity(names),
            earlier: HashMap::new(),
        }
    }

    /// Takes a name; says where it stood before, or which other name looks like it.
    fn take(&mut self, name: &'a str, at: Span) -> Result<(), (Span, Option<String>)> {
        let mut last = match self.looks.entry(Look(name)) {
            Vacant(free) => {
                free.insert((name, at));
                return Ok(());
            }
            Occupied(last) => last,
        };
        let (other, first) = *last.get();
        if other == name {
            return Err((first, None));
        }
        if let Some(&first) = self.earlier.get(name) {
            return Err((first, None));
        }
        self.earlier.insert(other, first);
        last.insert((name, at));
        Err((first, Some(other.to_owned())))
    }

    /// Notes that a name which was taken stands elsewhere now.
    fn moved(&mut self, name: &'a str, at: Span) {
        match self.looks.get_mut(&Look(name)) {
            Some((last, stands)) if *last == name => *stands = at,
            _ => _ = self.earlier.insert(name, at),
        }
    }
}

impl Resolver<'_> {
    /// Opens a registry, layer after layer: reports its stray keys and registers its names.
    pub(super) fn open<F, R, T>(
        &mut self,
        files: From<F>,
        mut entries: impl FnMut(FileId, F) -> Option<Entries<R>>,
        what: What,
        names: impl FnOnce(&mut Scope) -> &mut Names<T>,
    ) -> Opened<R> {
        let mut layers = Vec::with_capacity(files.len());
        for (file, content) in files {
            self.stray(&content, file);
            layers.push((file, entries(file, content.value)));
        }
        let (ids, registered) = self.register(what, layers);
        *names(&mut self.scope) = ids;
        Opened { entries: registered }
    }

    /// Registers the keys of maps, one a layer. An overlay's entry takes the place of the one whose name it has; a second
    /// of the same name in one layer is reported and left out.
    pub(super) fn register<T, R>(
        &mut self,
        what: What,
        layers: Vec<(FileId, Option<Entries<R>>)>,
    ) -> (Names<T>, Vec<Registered<R>>) {
        let layers: Vec<_> = (layers.into_iter())
            .map(|(file, entries)| (file, entries.unwrap_or_default().0))
            .collect();
        let count = layers.iter().map(|(_, entries)| entries.len()).sum();
        let mut taken = Taken::with_room(count);
        let mut claims = Vec::with_capacity(count);
        for (file, entries) in &layers {
            for entry in entries {
                let (name, at) = (&entry.key.value, entry.key.span(*file));
                self.good_name(what, name, at);
                claims.push(self.claim_layered(what, &mut taken, name, at));
            }
        }
        let mut names = Names {
            ids: HashMap::with_capacity(count),
        };
        let mut registered = Vec::with_capacity(count);
        let entries = layers.into_iter().flat_map(|(file, entries)| {
            let registered = move |entry: Entry<R>| Registered {
                at: entry.key.span(file),
                name: entry.key.value,
                raw: entry.value,
            };
            entries.into_iter().map(registered)
        });
        for (entry, claimed) in entries.zip(claims) {
            names.settle(claimed, &mut registered, entry);
        }
        (names, registered)
    }

    fn good_name(&mut self, what: What, name: &str, at: Span) {
        if !name::is_snake(name) {
            self.bad_name(what, name, at);
        }
    }

    /// Takes a name of a snake-case kind that stands in one file: says whether it is good and new, and reports it
    /// otherwise.
    pub(super) fn claim<'a>(&mut self, what: What, taken: &mut Taken<'a>, name: &'a str, at: Span) -> bool {
        self.good_name(what, name, at);
        self.claim_any(what, taken, name, at)
    }

    /// As [`Resolver::claim`], for a name whose form has been looked at.
    pub(super) fn claim_any<'a>(
        &mut self,
        what: What,
        taken: &mut Taken<'a>,
        name: &'a str,
        at: Span,
    ) -> bool {
        self.claim_layered(what, taken, name, at) != Claimed::Taken
    }

    /// Takes a name, in whatever layer; what an overlay replaces is noted.
    fn claim_layered<'a>(&mut self, what: What, taken: &mut Taken<'a>, name: &'a str, at: Span) -> Claimed {
        let Err((first, look_alike)) = taken.take(name, at) else {
            return Claimed::New;
        };
        let same = look_alike.is_none();
        if same && self.is_laid_over(at, first) {
            taken.moved(name, at);
            self.replaced(Replaceable::Named(what), name, first, at);
            return Claimed::Replaces;
        }
        self.duplicate(what, name, at, first, look_alike);
        if same { Claimed::Taken } else { Claimed::New }
    }

    /// The trees' names, from the files they stand in.
    pub(super) fn register_trees(
        &mut self,
        files: Vec<(FileId, String, Keyed<raw::TreeFile>)>,
    ) -> Vec<Registered<(FileId, Keyed<raw::TreeFile>)>> {
        let stems: Vec<String> = files.iter().map(|(_, stem, _)| stem.clone()).collect();
        let mut taken = Taken::default();
        let mut names = Names::default();
        let mut registered = Vec::new();
        for ((file, stem, tree), name) in files.into_iter().zip(&stems) {
            let at = tree
                .value
                .tree
                .as_ref()
                .map_or(self.top(file), |name| name.span(file));
            if !name::is_kebab(&stem) {
                self.malformed(
                    at,
                    format!("a tree's file is named for its tree, and `{stem}` is no name for one"),
                    "name the file in lower case with hyphens, like no-heat.yaml",
                );
            }
            match &tree.value.tree {
                None => self.missing(at, "the tree", "tree"),
                Some(name) if name.value != stem => self.malformed(
                    at,
                    format!(
                        "the tree calls itself `{}`, but its file is `{stem}.yaml`",
                        name.value
                    ),
                    "give both the same name",
                ),
                Some(_) => {}
            }
            let claimed = self.claim_layered(What::Tree, &mut taken, name, at);
            let raw = (file, tree);
            names.settle(claimed, &mut registered, Registered { name: stem, at, raw });
        }
        self.scope.trees = names;
        registered
    }
}
