//! The beta distribution.

use statrs::function::beta::beta_reg;

/// Halvings after which nothing smaller can be told in a double near 1, and little near 0.
const HALVINGS: usize = 80;

/// Where a beta distribution has left a share below it.
///
/// By halving: the usual faster iteration can stall where a parameter is below 1, which is where small groups lie.
pub(super) fn quantile(alpha: f64, beta: f64, share: f64) -> f64 {
    let (mut low, mut high) = (0.0_f64, 1.0_f64);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if middle <= low || middle >= high {
            break;
        }
        match beta_reg(alpha, beta, middle) < share {
            true => low = middle,
            false => high = middle,
        }
    }
    0.5 * (low + high)
}

/// Both ends of its middle part of a level.
pub(super) fn middle(alpha: f64, beta: f64, level: f64) -> (f64, f64) {
    let tail = 0.5 * (1.0 - level);
    (quantile(alpha, beta, tail), quantile(alpha, beta, 1.0 - tail))
}
