//! A list that never moves what it holds: one that doubles holds twice its items while it grows, and leaves holes behind.

use std::ops::{Index, IndexMut};

/// Items of a block: memory that is not written to yet takes none, and a large block goes back to the system at once.
const BLOCK: usize = 1 << 16;

/// A list in blocks.
#[derive(Debug)]
pub(super) struct Blocks<T>(Vec<Vec<T>>);

impl<T> Default for Blocks<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<T> Blocks<T> {
    /// One more item.
    pub fn push(&mut self, item: T) {
        match self.0.last_mut().filter(|block| block.len() < BLOCK) {
            Some(block) => block.push(item),
            None => {
                // The first grows with its items: most lists are short.
                let room = if self.0.is_empty() { 1 } else { BLOCK };
                let mut block = Vec::with_capacity(room);
                block.push(item);
                self.0.push(block);
            }
        }
    }

    /// How many items there are.
    pub fn len(&self) -> usize {
        let full = self.0.len().saturating_sub(1) * BLOCK;
        full + self.0.last().map_or(0, Vec::len)
    }

    /// Every item.
    pub fn iter(&self) -> impl Iterator<Item = &T> {
        self.0.iter().flatten()
    }

    /// An item, to change.
    pub fn get_mut(&mut self, at: usize) -> Option<&mut T> {
        self.0.get_mut(at / BLOCK)?.get_mut(at % BLOCK)
    }
}

impl<T> Index<usize> for Blocks<T> {
    type Output = T;

    fn index(&self, at: usize) -> &T {
        &self.0[at / BLOCK][at % BLOCK]
    }
}

impl<T> IndexMut<usize> for Blocks<T> {
    fn index_mut(&mut self, at: usize) -> &mut T {
        &mut self.0[at / BLOCK][at % BLOCK]
    }
}

#[cfg(test)]
mod tests {
    use super::{BLOCK, Blocks};

    #[test]
    fn items_stand_where_they_were_put() {
        let mut blocks = Blocks::default();
        let many = 2 * BLOCK + 1;
        for item in 0..many {
            assert_eq!(blocks.len(), item);
            blocks.push(item);
        }
        assert!(blocks.iter().copied().eq(0..many));
        blocks[BLOCK] = 7;
        assert_eq!(
            (blocks[BLOCK - 1], blocks[BLOCK], blocks[2 * BLOCK]),
            (BLOCK - 1, 7, 2 * BLOCK)
        );
        assert_eq!(blocks.get_mut(many), None);
    }
}
