//! The register of formulas.

use super::formula::Formula;
use super::*;

/// Every formula, by name.
static REGISTER: &[&Formula] = &[
    &cable_voltage_drop::FORMULA,
    &capacitance_under_load::FORMULA,
    &capacitor_deviation::FORMULA,
    &co2_from_o2::FORMULA,
    &co_air_free::FORMULA,
    &co_air_free_from_co2::FORMULA,
    &combustion_efficiency_natural::FORMULA,
    &combustion_efficiency_natural_from_co2::FORMULA,
    &combustion_efficiency_propane::FORMULA,
    &combustion_efficiency_propane_from_co2::FORMULA,
    &condensate_natural::FORMULA,
    &condensate_propane::FORMULA,
    &condensed_share_natural::FORMULA,
    &condensed_share_propane::FORMULA,
    &copper_resistance::FORMULA,
    &drain_drop::FORMULA,
    &drain_slope::FORMULA,
    &excess_air_natural::FORMULA,
    &excess_air_natural_from_co2::FORMULA,
    &excess_air_propane::FORMULA,
    &excess_air_propane_from_co2::FORMULA,
    &flame_signal_margin::FORMULA,
    &flue_gas_dew_point_natural::FORMULA,
    &flue_gas_dew_point_propane::FORMULA,
    &input_at_manifold_pressure::FORMULA,
    &input_from_meter::FORMULA,
    &motor_load::FORMULA,
    &net_stack_temperature::FORMULA,
    &o2_from_co2::FORMULA,
    &pressure_difference::FORMULA,
    &temperature_rise::FORMULA,
    &thermistor_beta::FORMULA,
    &thermistor_resistance::FORMULA,
    &thermistor_temperature::FORMULA,
    &total_external_static::FORMULA,
    &transformer_apparent_power::FORMULA,
    &transformer_load::FORMULA,
    &transformer_secondary_current::FORMULA,
    &trap_depth::FORMULA,
    &ultimate_co2::FORMULA,
    &ultimate_co2_of_gas::FORMULA,
    &winding_temperature::FORMULA,
    &wire_resistance::FORMULA,
];

/// Every formula of the trade, in the order of their names.
pub fn all() -> &'static [&'static Formula] {
    REGISTER
}

/// The formula of a name.
pub fn find(name: &str) -> Option<&'static Formula> {
    REGISTER.iter().copied().find(|formula| formula.name == name)
}
