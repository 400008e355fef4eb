//! Random numbers that are the same for the same seed, on every machine and with every version of this program's libraries.

use rand_pcg::Pcg64Mcg;
use rand_pcg::rand_core::{Rng, SeedableRng};

/// A seeded source of random numbers: O'Neill's PCG, whose values are part of the library's promise. What is made of them is
/// worked out here, not by a library of distributions, whose values may change.
#[derive(Clone, Debug)]
pub struct Dice(Pcg64Mcg);

impl Dice {
    /// From a seed.
    pub fn new(seed: u64) -> Self {
        Self(Pcg64Mcg::seed_from_u64(seed))
    }

    /// From several numbers that name what the dice are for: a run's seed, a fault, a call.
    pub fn of(names: &[u64]) -> Self {
        Self::new(seed_of(names))
    }

    /// A number below 2⁶⁴.
    pub fn whole(&mut self) -> u64 {
        self.0.next_u64()
    }

    /// A number from 0 up to, not including, 1.
    pub fn share(&mut self) -> f64 {
        // The upper 53 bits are all that a number of this kind holds.
        (self.whole() >> 11) as f64 / (1u64 << 53) as f64
    }

    /// A number from `low` up to `high`.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }

    /// True `share` of the time.
    pub fn chance(&mut self, share: f64) -> bool {
        self.share() < share
    }

    /// A whole number below `sides`, which is not 0.
    pub fn below(&mut self, sides: usize) -> usize {
        ((self.share() * sides as f64) as usize).min(sides.saturating_sub(1))
    }

    /// One of several, each as likely.
    pub fn one_of<T: Copy, const N: usize>(&mut self, several: [T; N]) -> T {
        several[self.below(N)]
    }
}

/// One seed of several numbers; another order is another seed.
pub fn seed_of(names: &[u64]) -> u64 {
    names.iter().fold(0x9e37_79b9_7f4a_7c15, |seed, name| {
        // The finalizer of SplitMix64 (Steele, Lea and Flood 2014; its constants from memory).
        let mut mixed = seed ^ name.wrapping_add(0x9e37_79b9_7f4a_7c15);
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_seed_throws_the_same_numbers() {
        let thrown = |seed| {
            let mut dice = Dice::new(seed);
            [dice.whole(), dice.whole()]
        };
        // Written down once: a library that changes its values changes every seed that was ever handed on.
        assert_eq!(thrown(1), [15803641690485367939, 2537432388316380799]);
        assert_ne!(thrown(1), thrown(2));
        assert_ne!(seed_of(&[1, 2]), seed_of(&[2, 1]));
    }

    #[test]
    fn shares_lie_evenly_between_nothing_and_all() {
        let mut dice = Dice::new(7);
        let thrown: Vec<f64> = (0..10_000).map(|_| dice.share()).collect();
        assert!(thrown.iter().all(|share| (0.0..1.0).contains(share)));
        let mean = thrown.iter().sum::<f64>() / 10_000.0;
        // Five standard errors of a mean of ten thousand: 5 × 0.2887 / 100.
        assert!((mean - 0.5).abs() < 0.0145, "{mean}");
    }
}
