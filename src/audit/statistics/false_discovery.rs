//! Which of many groups to look at, when one looks at all of them: the procedure of Benjamini and Hochberg.
//!
//! Of forty technicians who all work alike, two stand out at 5 % by chance. A group whose adjusted value is at most 5 %
//! belongs to a list of which at most a twentieth, on average, stands there by chance.
//!
//! # Equation
//!
//! With the values in order, `p(1) ≤ … ≤ p(m)`: the adjusted value of the one at place `i` is the least of `m p(j) / j` over
//! all places `j ≥ i`, and at most 1.
//!
//! # Range
//!
//! Values from 0 to 1, of tests that do not work against each other. Values that may also be too large, as those of
//! counts are, make the list shorter, not worse.
//!
//! # Example
//!
//! ```
//! use proofwalk::audit::statistics::false_discovery::adjusted;
//!
//! assert_eq!(adjusted(&[0.04, 0.01, 0.5]), [0.06, 0.03, 0.5]);
//! ```
//!
//! # References
//!
//! - Y. Benjamini, Y. Hochberg, *Controlling the false discovery rate*, Journal of the Royal Statistical Society B 57 (1995):
//!   its example of fifteen values, of which four are taken.

/// The adjusted values, in the order of what was given.
pub fn adjusted(values: &[f64]) -> Vec<f64> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order.sort_by(|one, other| values[*one].total_cmp(&values[*other]));
    let mut adjusted = vec![1.0; values.len()];
    let mut least = 1.0_f64;
    for (place, at) in order.iter().enumerate().rev() {
        least = least.min(values[*at] * values.len() as f64 / (place + 1) as f64);
        adjusted[*at] = least;
    }
    adjusted
}
