//! Sorted lists of sessions, read as one.

use std::cmp::Reverse;
use std::collections::BinaryHeap;
use std::collections::binary_heap::PeekMut;

use super::SessionId;
use super::name::Name;

/// A session, and the position of the folder that has it.
type Placed<'n> = (&'n Name, u32);

/// Sorted lists of sessions, read as one in the same order.
#[derive(Default)]
pub(super) struct Merged<'n> {
    heads: BinaryHeap<Reverse<Head<'n>>>,
    rest: Vec<Box<dyn Iterator<Item = Placed<'n>> + Send + 'n>>,
}

/// The next session of a list, and which list that is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Head<'n> {
    placed: Placed<'n>,
    list: usize,
}

impl<'n> Merged<'n> {
    /// One more list.
    pub fn add(&mut self, list: impl Iterator<Item = Placed<'n>> + Send + 'n) {
        let mut list: Box<dyn Iterator<Item = Placed<'n>> + Send + 'n> = Box::new(list);
        if let Some(placed) = list.next() {
            let list = self.rest.len();
            self.heads.push(Reverse(Head { placed, list }));
        }
        self.rest.push(list);
    }

    /// The next session of all lists, if it is this one or none is asked for.
    fn next_of(&mut self, name: Option<&Name>) -> Option<Placed<'n>> {
        let mut head = self.heads.peek_mut()?;
        let Head { placed, list } = head.0;
        if name.is_some_and(|name| name != placed.0) {
            return None;
        }
        match self.rest[list].next() {
            Some(placed) => head.0.placed = placed,
            None => drop(PeekMut::pop(head)),
        }
        Some(placed)
    }
}

impl Iterator for Merged<'_> {
    type Item = (SessionId, Vec<u32>);

    /// A session, and the folders that have it, each once.
    fn next(&mut self) -> Option<Self::Item> {
        let (name, place) = self.next_of(None)?;
        let mut places = vec![place];
        while let Some((_, place)) = self.next_of(Some(name)) {
            if places.last() != Some(&place) {
                places.push(place);
            }
        }
        Some((name.into(), places))
    }
}
