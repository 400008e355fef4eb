//! Short lists, one of each of many owners, chained within one list for all: a list of its own would take more than its items.

use super::blocks::Blocks;

/// Where a chain ends.
const END: u32 = u32::MAX;

/// A short list of each owner, who is a number.
#[derive(Debug)]
pub(super) struct Chains<T> {
    /// The newest item of each owner.
    heads: Vec<u32>,
    /// Items, each with the next older one.
    links: Blocks<(T, u32)>,
    /// Links that were removed, chained as well.
    free: u32,
}

impl<T> Default for Chains<T> {
    fn default() -> Self {
        Self {
            heads: Vec::new(),
            links: Blocks::default(),
            free: END,
        }
    }
}

impl<T: Copy> Chains<T> {
    /// An owner's items, the newest first.
    pub fn of(&self, owner: u32) -> impl Iterator<Item = T> {
        self.places(owner).map(|place| self.links[place].0)
    }

    /// The first item of an owner for which this holds.
    pub fn find(&mut self, owner: u32, is: impl Fn(&T) -> bool) -> Option<&mut T> {
        let place = self.places(owner).find(|place| is(&self.links[*place].0))?;
        Some(&mut self.links[place].0)
    }

    /// Gives an owner one more item.
    pub fn push(&mut self, owner: u32, item: T) {
        let head = owner as usize;
        if self.heads.len() <= head {
            self.heads.resize(head + 1, END);
        }
        let link = (item, self.heads[head]);
        self.heads[head] = self.free;
        match self.links.get_mut(self.free as usize) {
            Some(free) => {
                self.free = free.1;
                *free = link;
            }
            None => {
                self.heads[head] = self.links.len() as u32;
                self.links.push(link);
            }
        }
    }

    /// Takes the items of an owner away for which this holds.
    pub fn remove(&mut self, owner: u32, is: impl Fn(&T) -> bool) {
        let kept: Vec<T> = self.of(owner).filter(|item| !is(item)).collect();
        let places: Vec<usize> = self.places(owner).collect();
        for place in places {
            self.heads[owner as usize] = END;
            self.links[place].1 = self.free;
            self.free = place as u32;
        }
        for item in kept.into_iter().rev() {
            self.push(owner, item);
        }
    }

    /// Every item with its owner.
    pub fn all(&self) -> impl Iterator<Item = (u32, T)> {
        (0..self.heads.len() as u32).flat_map(|owner| self.of(owner).map(move |item| (owner, item)))
    }

    fn places(&self, owner: u32) -> impl Iterator<Item = usize> {
        let known = |place: u32| (place != END).then_some(place as usize);
        let head = self.heads.get(owner as usize).and_then(|head| known(*head));
        std::iter::successors(head, move |place| known(self.links[*place].1))
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::Chains;

    proptest! {
        #[test]
        fn chains_hold_what_lists_of_their_own_would(
            done in prop::collection::vec((0..5_u32, 0..8_u8, any::<bool>()), 0..80)
        ) {
            let mut chains = Chains::default();
            let mut lists: [Vec<u8>; 5] = Default::default();
            for (owner, item, is_new) in done {
                let list = &mut lists[owner as usize];
                if is_new {
                    chains.push(owner, item);
                    list.insert(0, item);
                } else {
                    chains.remove(owner, |known| *known == item);
                    list.retain(|known| *known != item);
                }
                for (owner, list) in (0..).zip(&lists) {
                    prop_assert_eq!(&chains.of(owner).collect::<Vec<_>>(), list);
                }
            }
            let most = lists.iter().map(Vec::len).sum::<usize>();
            prop_assert_eq!(chains.all().count(), most);
        }
    }
}
