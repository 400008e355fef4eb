//! Whether values change with time, or only scatter: the test of a correlation.
//!
//! # Equation
//!
//! `t = r √((n − 2)/(1 − r²))` against Student's distribution with `n − 2` degrees of freedom, two-sided: the regularised
//! incomplete beta function of `1 − r²` with `(n − 2)/2` and 1/2.
//!
//! # Range
//!
//! At least three pairs that do not all lie at one time or one value. The scatter about the line is taken to be normal, and each
//! value to be taken anew.
//!
//! # Example
//!
//! Published: for five pairs, a correlation of 0.878 is the one that chance reaches once in twenty times.
//!
//! ```
//! let chance = proofwalk::audit::statistics::trend::chance(0.878, 5).ok_or("too few")?;
//! assert!((chance - 0.05).abs() < 0.001);
//! # Ok::<(), &str>(())
//! ```
//!
//! # References
//!
//! - R. A. Fisher, F. Yates, *Statistical Tables for Biological, Agricultural and Medical Research*: critical values of the
//!   correlation coefficient, quoted from memory (three degrees of freedom, 0.8783 at 5 %).

use super::beta;

/// How often chance alone would correlate so many pairs as strongly, either way; nothing where they are too few.
pub fn chance(correlation: f64, pairs: u64) -> Option<f64> {
    let left = 1.0 - correlation * correlation;
    if pairs < 3 || left.is_nan() {
        return None;
    }
    Some(beta::below((pairs - 2) as f64 / 2.0, 0.5, left))
}
