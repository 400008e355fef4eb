//! The binomial distribution.

use super::beta::below;

/// How probable it is to count at most so many of so many, each with a chance.
pub(super) fn at_most(count: u64, of: u64, chance: f64) -> f64 {
    if count >= of || chance <= 0.0 {
        return 1.0;
    }
    if chance >= 1.0 {
        return 0.0;
    }
    below((of - count) as f64, count as f64 + 1.0, 1.0 - chance)
}

/// How probable it is to count at least so many.
pub(in super::super) fn at_least(count: u64, of: u64, chance: f64) -> f64 {
    if count == 0 {
        return 1.0;
    }
    if count > of || chance <= 0.0 {
        return 0.0;
    }
    if chance >= 1.0 {
        return 1.0;
    }
    below(count as f64, (of - count) as f64 + 1.0, chance)
}

/// The least count that leaves at least a share at or below it.
pub(super) fn quantile(share: f64, of: u64, chance: f64) -> u64 {
    let (mut low, mut high) = (0, of);
    while low < high {
        let middle = low + (high - low) / 2;
        match at_most(middle, of, chance) >= share {
            true => high = middle,
            false => low = middle + 1,
        }
    }
    low
}
