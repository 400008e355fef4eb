//! Names, each kept once: an archive has as many as it has equipment, so what stands beside each must be small.

use std::hash::BuildHasher;

use foldhash::fast::RandomState;
use hashbrown::HashTable;

/// The number of a name, or of no name.
pub(super) type NameNo = u32;

/// No name.
pub(super) const NO_NAME: NameNo = NameNo::MAX;

/// Names in one text, numbered as they came.
#[derive(Debug, Default)]
pub(super) struct Names {
    text: String,
    /// Where each ends; it begins where the one before ends.
    ends: Vec<usize>,
    numbers: HashTable<NameNo>,
    hasher: RandomState,
}

impl Names {
    /// The number of a name, which is new if it was not known.
    pub fn number(&mut self, name: &str) -> NameNo {
        let hash = self.hasher.hash_one(name);
        let known = self.numbers.find(hash, |number| self.get(*number) == Some(name));
        if let Some(number) = known {
            return *number;
        }
        let number = self.ends.len() as NameNo;
        self.text.push_str(name);
        self.ends.push(self.text.len());
        let Self {
            text,
            ends,
            numbers,
            hasher,
        } = self;
        numbers.insert_unique(hash, number, |number| {
            hasher.hash_one(name_of(text, ends, *number).unwrap_or_default())
        });
        number
    }

    /// The name of a number; none of [`NO_NAME`].
    pub fn get(&self, number: NameNo) -> Option<&str> {
        name_of(&self.text, &self.ends, number)
    }
}

fn name_of<'t>(text: &'t str, ends: &[usize], number: NameNo) -> Option<&'t str> {
    let number = number as usize;
    let end = *ends.get(number)?;
    let begin = number.checked_sub(1).map_or(0, |before| ends[before]);
    text.get(begin..end)
}
