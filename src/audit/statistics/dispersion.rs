//! Whether groups differ among each other by more than chance, for reasons that nobody measured.
//!
//! One technician works in old houses, another in new ones. Then most groups lie outside a funnel that knows of chance alone,
//! and lying outside says little. The factor says by how much more the groups scatter; the limits are widened by its root.
//!
//! # Equation
//!
//! `φ = Σ z² / m` over `m` groups, with `z = (p − p̄) / √(p̄(1 − p̄)/n)` held within its own tenth and nine tenths of the groups. It is
//! evident above `1 + 2 √(2/m)`, and only then used.
//!
//! # Range
//!
//! Twenty groups and more with calls: of fewer, one that really differs would be taken for scatter of all, and hide itself. Below that
//! nothing is said.
//!
//! # Example
//!
//! ```
//! use proofwalk::audit::statistics::{Count, dispersion};
//!
//! let alike = [Count::new(8, 100), Count::new(9, 110), Count::new(7, 95), Count::new(10, 102)].repeat(5);
//! let apart = [Count::new(2, 100), Count::new(19, 110), Count::new(3, 95), Count::new(9, 102)].repeat(5);
//! assert_eq!(dispersion::evident(&alike), None);
//! assert!(dispersion::evident(&apart).is_some_and(|factor| factor > 2.0));
//! ```
//!
//! # References
//!
//! - D. J. Spiegelhalter, *Funnel plots for comparing institutional performance*, Statistics in Medicine 24 (2005): the
//!   multiplicative model, winsorised at a tenth. The bound above which it is evident is from memory.

use statrs::function::erf::erfc;

use super::{Count, normal};

/// Fewest groups of which something is said.
const FEWEST: usize = 20;

/// The share of the groups at each end that is held to the next.
const TENTH: f64 = 0.1;

/// By how much more the groups scatter than chance alone, where that is evident.
pub fn evident(groups: &[Count]) -> Option<f64> {
    let rate = Count::sum(groups).rate()?;
    let spread = rate * (1.0 - rate);
    if spread <= 0.0 {
        return None;
    }
    let off = |group: &Count| Some((group.rate()? - rate) / (spread / group.of as f64).sqrt());
    let mut off: Vec<f64> = groups.iter().filter_map(off).collect();
    if off.len() < FEWEST {
        return None;
    }
    off.sort_by(f64::total_cmp);
    let cut = (TENTH * off.len() as f64) as usize;
    let (low, high) = (off[cut], off[off.len() - 1 - cut]);
    let many = off.len() as f64;
    let factor = off.iter().map(|z| z.clamp(low, high).powi(2)).sum::<f64>() / many;
    (factor > 1.0 + 2.0 * (2.0 / many).sqrt()).then_some(factor)
}

/// How often chance and that scatter together would put a group with this rate as far out, on either side.
pub fn chance(group: Count, rate: f64, factor: f64) -> f64 {
    let spread = factor * rate * (1.0 - rate);
    match group.rate() {
        Some(found) if spread > 0.0 => {
            let off = (found - rate).abs() / (spread / group.of as f64).sqrt();
            erfc(off * std::f64::consts::FRAC_1_SQRT_2)
        }
        _ => 1.0,
    }
}

/// The limits of a group of a size, as shares, where the groups scatter by such a factor.
pub fn limits(of: u64, rate: f64, level: f64, factor: f64) -> (f64, f64) {
    if of == 0 {
        return (0.0, 1.0);
    }
    let half = normal::two_sided(level) * (factor * rate * (1.0 - rate) / of as f64).sqrt();
    ((rate - half).max(0.0), (rate + half).min(1.0))
}
