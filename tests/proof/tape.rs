//! Random choices, one after another, from bytes that proptest can shrink.

/// Choices that are made in turn; when they run out, every choice is the first.
pub struct Tape<'a>(std::slice::Iter<'a, u8>);

impl<'a> Tape<'a> {
    pub fn new(bytes: &'a [u8]) -> Self {
        Self(bytes.iter())
    }

    /// A number below `count`.
    pub fn below(&mut self, count: usize) -> usize {
        usize::from(self.0.next().copied().unwrap_or_default()) % count
    }

    /// One of these.
    pub fn one_of<T: Copy>(&mut self, all: &[T]) -> T {
        all[self.below(all.len())]
    }

    /// True once in so many times.
    pub fn once_in(&mut self, times: usize) -> bool {
        self.below(times) + 1 == times
    }
}
