//! Registered things and their numbers.

use std::collections::HashMap;
use std::fmt;
use std::hash::{Hash, Hasher};
use std::marker::PhantomData;
use std::ops::{Index, IndexMut};

use crate::source::Span;

/// The number of a `T` in its [`Table`]; it is good for the library it came from.
pub struct Id<T> {
    index: u32,
    of: PhantomData<fn() -> T>,
}

impl<T> Id<T> {
    /// The id at a position.
    pub fn new(index: usize) -> Self {
        Self {
            index: index as u32,
            of: PhantomData,
        }
    }

    /// The position, from 0.
    pub fn index(self) -> usize {
        self.index as usize
    }
}

// Derived, these would ask the same of `T`, which an id does not hold.
impl<T> Clone for Id<T> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<T> Copy for Id<T> {}
impl<T> PartialEq for Id<T> {
    fn eq(&self, other: &Self) -> bool {
        self.index == other.index
    }
}
impl<T> Eq for Id<T> {}
impl<T> PartialOrd for Id<T> {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}
impl<T> Ord for Id<T> {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        self.index.cmp(&other.index)
    }
}
impl<T> Hash for Id<T> {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.index.hash(state);
    }
}
impl<T> fmt::Debug for Id<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "#{}", self.index)
    }
}

/// A registered thing with its name and where that stands.
#[derive(Clone, Debug)]
pub struct Named<T> {
    /// Its name.
    pub name: String,
    /// Where it was registered: the name's own place.
    pub at: Span,
    /// The thing.
    pub value: T,
}

impl<T> std::ops::Deref for Named<T> {
    type Target = T;

    fn deref(&self) -> &T {
        &self.value
    }
}

/// Registered things of one kind, in the author's order.
#[derive(Clone, Debug)]
pub struct Table<T> {
    entries: Vec<Named<T>>,
    by_name: HashMap<String, Id<T>>,
}

impl<T> Default for Table<T> {
    fn default() -> Self {
        Self {
            entries: Vec::new(),
            by_name: HashMap::new(),
        }
    }
}

impl<T> Table<T> {
    /// Adds an entry whose name is not taken yet.
    pub(super) fn push(&mut self, name: String, at: Span, value: T) {
        self.by_name.insert(name.clone(), Id::new(self.entries.len()));
        self.entries.push(Named { name, at, value });
    }

    /// The id of a name.
    pub fn find(&self, name: &str) -> Option<Id<T>> {
        self.by_name.get(name).copied()
    }

    /// The entry, where there is one of that number.
    pub fn get(&self, id: Id<T>) -> Option<&Named<T>> {
        self.entries.get(id.index())
    }

    /// All entries with their ids.
    pub fn iter(&self) -> impl ExactSizeIterator<Item = (Id<T>, &Named<T>)> + DoubleEndedIterator {
        self.entries
            .iter()
            .enumerate()
            .map(|(index, entry)| (Id::new(index), entry))
    }

    /// All names.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.entries.iter().map(|entry| entry.name.as_str())
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.entries.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.entries.is_empty()
    }
}

impl<T> Index<Id<T>> for Table<T> {
    type Output = Named<T>;

    fn index(&self, id: Id<T>) -> &Named<T> {
        &self.entries[id.index()]
    }
}

impl<T> IndexMut<Id<T>> for Table<T> {
    fn index_mut(&mut self, id: Id<T>) -> &mut Named<T> {
        &mut self.entries[id.index()]
    }
}
