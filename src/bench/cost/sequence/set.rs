//! Sets of small numbers.

/// A set of numbers below a size that was settled when it was made; equal sets of one size hash alike.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Set {
    words: Box<[u64]>,
}

impl Set {
    /// None of `size` numbers.
    pub fn none(size: usize) -> Self {
        Self {
            words: vec![0; size.div_ceil(64)].into_boxed_slice(),
        }
    }

    /// All of `size` numbers.
    pub fn all(size: usize) -> Self {
        let mut set = Self::none(size);
        (0..size).for_each(|number| set.insert(number));
        set
    }

    /// Puts a number in. A number at or above the size is a mistake of the caller's, and panics as an index does.
    pub fn insert(&mut self, number: usize) {
        self.words[number / 64] |= 1 << (number % 64);
    }

    /// Whether a number is in it.
    pub fn contains(&self, number: usize) -> bool {
        let word = self.words.get(number / 64);
        word.is_some_and(|word| word >> (number % 64) & 1 == 1)
    }

    /// How many are in it.
    pub fn len(&self) -> usize {
        self.words.iter().map(|word| word.count_ones() as usize).sum()
    }

    /// Whether none is.
    pub fn is_empty(&self) -> bool {
        self.words.iter().all(|word| *word == 0)
    }

    /// Those in it, from the smallest.
    pub fn iter(&self) -> impl Iterator<Item = usize> + '_ {
        self.words.iter().enumerate().flat_map(|(at, word)| {
            let rests = std::iter::successors(Some(*word), |rest| Some(rest & rest.wrapping_sub(1)));
            rests
                .take_while(|rest| *rest != 0)
                .map(move |rest| at * 64 + rest.trailing_zeros() as usize)
        })
    }
}
