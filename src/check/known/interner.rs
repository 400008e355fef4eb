//! Values that are kept once.

use std::collections::HashMap;
use std::hash::Hash;

/// Every value once, by number.
pub(super) struct Interner<K, V> {
    ids: HashMap<K, u32>,
    values: Vec<V>,
}

impl<K, V> Default for Interner<K, V> {
    fn default() -> Self {
        Self {
            ids: HashMap::new(),
            values: Vec::new(),
        }
    }
}

impl<K: Hash + Eq, V> Interner<K, V> {
    /// The number of a value; it is made where it is new.
    pub fn id(&mut self, key: K, value: impl FnOnce() -> V) -> u32 {
        *self.ids.entry(key).or_insert_with(|| {
            self.values.push(value());
            self.values.len() as u32 - 1
        })
    }
}

impl<K, V> std::ops::Index<u32> for Interner<K, V> {
    type Output = V;

    fn index(&self, id: u32) -> &V {
        &self.values[id as usize]
    }
}
