//! Sorted lists of sessions, read as one.

use std::cmp::Ordering;
use std::collections::BinaryHeap;
use std::collections::binary_heap::PeekMut;

use super::name::Name;
use super::packs::Extent;

/// Where a session lies.
#[derive(Clone, Copy, Debug)]
pub struct Lies {
    /// The position of its folder.
    pub place: u32,
    /// Where it has no file of its own: the position of its pack, and where in that.
    pub(super) packed: Option<(u32, Extent)>,
}

impl Lies {
    /// The position of the pack that it lies in; none where it has a file of its own.
    pub fn pack(&self) -> Option<usize> {
        self.packed.map(|(pack, _)| pack as usize)
    }
}

/// A session, and where it lies.
pub(super) type Placed = (Name, Lies);

/// A sorted list.
pub(super) type List<'l> = Box<dyn Iterator<Item = Placed> + Send + 'l>;

/// How a list is come by, once it is its turn.
pub(super) type Later<'l> = Box<dyn FnOnce() -> List<'l> + Send + 'l>;

/// Sorted lists of sessions, read as one in the same order. A list is opened when its first session is due, and let go after its
/// last: most packs are of a month, and ids sort by time.
#[derive(Default)]
pub(super) struct Merged<'l> {
    heads: BinaryHeap<Head>,
    lists: Vec<Source<'l>>,
}

/// A list that has not been opened, is being read, or has been.
enum Source<'l> {
    Shut(Later<'l>),
    Open(List<'l>),
    Done,
}

/// The next session of a list, and which list that is. Of a list that has not been opened it is not known where that lies.
struct Head {
    name: Name,
    list: usize,
    lies: Option<Lies>,
}

impl<'l> Merged<'l> {
    /// One more list, whose first session is known.
    pub fn add(&mut self, first: Name, list: Later<'l>) {
        let at = self.lists.len();
        self.lists.push(Source::Shut(list));
        self.heads.push(Head {
            name: first,
            list: at,
            lies: None,
        });
    }

    /// The next session of all lists, if it is this one or none is asked for.
    fn next_of(&mut self, name: Option<&Name>) -> Option<Placed> {
        loop {
            let mut head = self.heads.peek_mut()?;
            if name.is_some_and(|name| *name != head.name) {
                return None;
            }
            let source = &mut self.lists[head.list];
            if let Source::Shut(_) = source
                && let Source::Shut(open) = std::mem::replace(source, Source::Done)
            {
                let first = head.name.clone();
                // One that was written anew meanwhile may have what comes before.
                *source = Source::Open(Box::new(open().skip_while(move |(name, _)| *name < first)));
            }
            let next = match source {
                Source::Open(list) => list.next(),
                _ => None,
            };
            let this = (head.name.clone(), head.lies);
            match next {
                Some((name, lies)) => (head.name, head.lies) = (name, Some(lies)),
                None => {
                    *source = Source::Done;
                    PeekMut::pop(head);
                }
            }
            if let (name, Some(lies)) = this {
                return Some((name, lies));
            }
        }
    }
}

impl Iterator for Merged<'_> {
    type Item = (Name, Lies, Vec<Lies>);

    /// A session, where it lies, and where else: in the same folder, too, where it has a file of its own and lies in a pack. Most often the
    /// two are the same, since packing was cut off; but the file may be shorter, or another call's.
    fn next(&mut self) -> Option<Self::Item> {
        let (name, first) = self.next_of(None)?;
        let mut others: Vec<Lies> = Vec::new();
        while let Some((_, lies)) = self.next_of(Some(&name)) {
            others.push(lies);
        }
        Some((name, first, others))
    }
}

impl Ord for Head {
    /// The greatest is the one that is due.
    fn cmp(&self, other: &Self) -> Ordering {
        let place = |head: &Self| head.lies.map(|lies| lies.place);
        (&other.name, place(other), other.list).cmp(&(&self.name, place(self), self.list))
    }
}

impl PartialOrd for Head {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Head {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Head {}
