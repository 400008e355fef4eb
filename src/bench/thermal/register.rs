//! The trade's formulas, asked with bare numbers.

use crate::measure::Quantity;
use crate::trade::Formula;

/// What a formula of the register gives for numbers in its arguments' units; `otherwise` where they lie outside its range.
pub fn worked<const N: usize>(formula: &Formula, numbers: [f64; N], otherwise: f64) -> f64 {
    let given: Vec<Quantity> = numbers
        .iter()
        .zip(formula.arguments)
        .map(|(number, argument)| Quantity::new(*number, argument.scale))
        .collect();
    let result = formula.compute(&given);
    result.map_or(otherwise, |quantity| quantity.number_in(formula.result))
}
