//! A bit for each call: whether something holds of it.

/// Bits of a word.
const WORD: u32 = 64;

/// A bit for each number; not set until it is.
#[derive(Debug, Default)]
pub(super) struct Bits(Vec<u64>);

impl Bits {
    /// Sets the bit of a number.
    pub fn set(&mut self, number: u32) {
        let word = (number / WORD) as usize;
        if self.0.len() <= word {
            self.0.resize(word + 1, 0);
        }
        self.0[word] |= 1 << (number % WORD);
    }

    /// Whether it is set.
    pub fn has(&self, number: u32) -> bool {
        let word = self.0.get((number / WORD) as usize);
        word.is_some_and(|word| word >> (number % WORD) & 1 == 1)
    }
}

#[cfg(test)]
mod tests {
    use super::Bits;

    #[test]
    fn a_bit_is_set_once_it_was() {
        let mut bits = Bits::default();
        [0, 63, 64, 200].into_iter().for_each(|number| bits.set(number));
        let set: Vec<u32> = (0..1000).filter(|number| bits.has(*number)).collect();
        assert_eq!(set, [0, 63, 64, 200]);
    }
}
