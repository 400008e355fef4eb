//! The beta distribution.
//!
//! The share below a point is worked out here: the library's own ends its continued fraction after 140 terms, in silence, and
//! is wrong from some ten thousand calls on.

use statrs::function::gamma::ln_gamma;

/// Halvings after which nothing smaller can be told in a double near 1, and little near 0.
const HALVINGS: usize = 80;

/// Most terms of the continued fraction. It needs as many as the root of the number of calls.
const TERMS: usize = 100_000;

/// The share of a beta distribution that lies below a point; both parameters above 0.
///
/// By Lentz's method, on the side of the mean where the fraction converges fast.
pub(super) fn below(alpha: f64, beta: f64, point: f64) -> f64 {
    if point <= 0.0 {
        return 0.0;
    }
    if point >= 1.0 {
        return 1.0;
    }
    match point > (alpha + 1.0) / (alpha + beta + 2.0) {
        true => 1.0 - tail(beta, alpha, 1.0 - point),
        false => tail(alpha, beta, point),
    }
}

fn tail(alpha: f64, beta: f64, point: f64) -> f64 {
    let whole = ln_gamma(alpha + beta) - ln_gamma(alpha) - ln_gamma(beta);
    let front = (whole + alpha * point.ln() + beta * (-point).ln_1p()).exp() / alpha;
    let mut above = 1.0;
    let mut under = inverse(1.0 - (alpha + beta) * point / (alpha + 1.0));
    let mut fraction = under;
    for term in 1..TERMS {
        let term = term as f64;
        let place = alpha + 2.0 * term;
        let even = term * (beta - term) * point / ((place - 1.0) * place);
        let odd = -(alpha + term) * (alpha + beta + term) * point / (place * (place + 1.0));
        let mut change = 1.0;
        for step in [even, odd] {
            under = inverse(1.0 + step * under);
            above = not_zero(1.0 + step / above);
            change *= under * above;
        }
        fraction *= change;
        if (change - 1.0).abs() <= f64::EPSILON {
            break;
        }
    }
    (front * fraction).min(1.0)
}

fn inverse(value: f64) -> f64 {
    1.0 / not_zero(value)
}

/// Lentz's method may not divide by nothing.
fn not_zero(value: f64) -> f64 {
    match value.abs() < f64::MIN_POSITIVE {
        true => f64::MIN_POSITIVE,
        false => value,
    }
}

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
        match below(alpha, beta, middle) < share {
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
