//! Whether two groups share their counts over ten kinds alike: the chi-square test of homogeneity.
//!
//! # Equation
//!
//! `χ² = Σ (counted − expected)²/expected` over both groups and all kinds that were counted at all, where expected is the group's
//! size times the kind's share of both; against the chi-square distribution with one degree of freedom less than such kinds.
//!
//! # Range
//!
//! At least five expected of every kind that was counted, or nothing is said; and at least two kinds.
//!
//! # Example
//!
//! Constructed, exact by hand: 30 and 20 against 20 and 30 gives 4, with one degree of freedom, which chance passes in 4.55 % of
//! all times.
//!
//! ```
//! use proofwalk::audit::statistics::apart::chance;
//!
//! let chance = chance(&[30, 20, 0, 0, 0, 0, 0, 0, 0, 0], &[20, 30, 0, 0, 0, 0, 0, 0, 0, 0]).ok_or("too few")?;
//! assert!((chance - 0.0455).abs() < 1e-4);
//! # Ok::<(), &str>(())
//! ```
//!
//! # References
//!
//! - K. Pearson, *On the probability that two independent distributions of frequency are really samples from the same
//!   population*, Biometrika 8 (1911).
//! - Five expected of each kind: common practice with the chi-square test.

use statrs::function::gamma::gamma_ur;

/// How often chance alone would set two groups so far apart; nothing where they are too small.
pub fn chance(one: &[u64; 10], other: &[u64; 10]) -> Option<f64> {
    let sum = |counts: &[u64; 10]| counts.iter().sum::<u64>() as f64;
    let (ones, others) = (sum(one), sum(other));
    let mut chi_square = 0.0;
    let mut kinds = 0;
    for (count, counter) in one
        .iter()
        .zip(other)
        .filter(|(count, counter)| *count + *counter > 0)
    {
        let share = (count + counter) as f64 / (ones + others);
        for (counted, size) in [(*count, ones), (*counter, others)] {
            let expected = share * size;
            if expected < 5.0 {
                return None;
            }
            chi_square += (counted as f64 - expected).powi(2) / expected;
        }
        kinds += 1;
    }
    (kinds >= 2).then(|| match chi_square > 0.0 {
        true => gamma_ur(f64::from(kinds - 1) / 2.0, chi_square / 2.0),
        // The library takes no zero.
        false => 1.0,
    })
}
