//! The normal distribution.

use statrs::function::erf::erfc_inv;

/// Where the standard normal distribution has left a share below it.
pub(super) fn quantile(share: f64) -> f64 {
    -std::f64::consts::SQRT_2 * erfc_inv(2.0 * share)
}

/// How many standard deviations each side of an interval of this level lies away: 1.96 for 95 %.
pub(super) fn two_sided(level: f64) -> f64 {
    quantile(0.5 + 0.5 * level)
}
