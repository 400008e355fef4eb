//! Whether last digits look read or written: the chi-square test of ten equal shares.
//!
//! The last digit of a reading from a meter is close to chance, so that each comes about equally often. A person who makes
//! readings up likes some digits and shuns others. So does one who rounds, and so does a meter that steps by fives: the test says
//! that digits are uneven, not why.
//!
//! Zeros are a case of their own: who types `26 V` where the meter shows 26.0 has hidden one, and has made nothing up. Where they
//! are fewer than their share, they are left out, and the other nine are held against equal shares of what is left.
//!
//! # Equation
//!
//! `χ² = Σ (counted − n/10)² / (n/10)` over the ten digits, against the chi-square distribution with nine degrees of freedom; over
//! the other nine with eight, where zeros are scarce.
//!
//! # Range
//!
//! At least 50 digits, so that five of each are expected; below, nothing is said. Readings of more than one meter and more
//! than two digits that matter.
//!
//! # Example
//!
//! Published: these eighty digits give 23.5, beyond the 16.919 that chance passes once in twenty times.
//!
//! ```
//! use proofwalk::audit::statistics::digits::test;
//!
//! let digits = test(&[15, 5, 3, 8, 5, 17, 7, 6, 9, 5]).ok_or("too few")?;
//! assert!((digits.chi_square - 23.5).abs() < 1e-9 && digits.chance < 0.01);
//! assert!(test(&[9, 0, 0, 0, 0, 9, 0, 0, 0, 0]).is_none());
//! # Ok::<(), &str>(())
//! ```
//!
//! # References
//!
//! - A worked page of the test (eighty digits, critical value 16.919), and scipy's chi-square distribution for the chance.
//! - Five expected of each kind: common practice with the chi-square test.

use statrs::function::gamma::gamma_ur;

/// Fewest digits of which something is said.
pub const FEWEST: u64 = 50;

/// What came of the test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Digits {
    /// How far from equal shares.
    pub chi_square: f64,
    /// How often chance alone would be as far or farther.
    pub chance: f64,
    /// The share of zeros and fives, by which rounding shows; a fifth is expected.
    pub zeros_and_fives: f64,
}

/// Tests how often each digit from 0 to 9 came last; nothing where they are too few.
pub fn test(counts: &[u64; 10]) -> Option<Digits> {
    let all: u64 = counts.iter().sum();
    if all < FEWEST {
        return None;
    }
    let is_hidden = 10 * counts[0] < all;
    let kinds = &counts[usize::from(is_hidden)..];
    let expected = kinds.iter().sum::<u64>() as f64 / kinds.len() as f64;
    let off = kinds.iter().map(|count| (*count as f64 - expected).powi(2));
    let chi_square = off.sum::<f64>() / expected;
    let degrees = (kinds.len() - 1) as f64;
    Some(Digits {
        chi_square,
        // The library takes no zero.
        chance: match chi_square > 0.0 {
            true => gamma_ur(degrees / 2.0, chi_square / 2.0),
            false => 1.0,
        },
        zeros_and_fives: (counts[0] + counts[5]) as f64 / all as f64,
    })
}
