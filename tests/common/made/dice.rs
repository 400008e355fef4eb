//! Numbers that look thrown and are the same every time.

/// A generator of numbers: Steele, Lea and Flood's SplitMix64 (2014), constants from memory.
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    /// A number below `sides`.
    pub fn throw(&mut self, sides: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (mixed ^ (mixed >> 31)) as usize % sides
    }

    /// One of several texts.
    pub fn pick<'a>(&mut self, texts: &[&'a str]) -> &'a str {
        texts[self.throw(texts.len())]
    }
}
