//! The register of formulas.

use super::formula::Formula;
use super::*;

/// Every formula, by name.
static REGISTER: &[&Formula] = &[
    &capacitance_under_load::FORMULA,
    &co_air_free::FORMULA,
    &input_at_manifold_pressure::FORMULA,
    &input_from_meter::FORMULA,
    &pressure_difference::FORMULA,
    &temperature_rise::FORMULA,
    &total_external_static::FORMULA,
];

/// Every formula of the trade, in the order of their names.
pub fn all() -> &'static [&'static Formula] {
    REGISTER
}

/// The formula of a name.
pub fn find(name: &str) -> Option<&'static Formula> {
    REGISTER.iter().copied().find(|formula| formula.name == name)
}
