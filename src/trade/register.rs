//! The register of formulas.

use super::formula::Formula;
use super::*;

/// Every formula, by name.
static REGISTER: &[&Formula] = &[
    &air_density::FORMULA,
    &airflow_from_rise::FORMULA,
    &available_friction_rate::FORMULA,
    &capacitance_under_load::FORMULA,
    &co_air_free::FORMULA,
    &combustion_air_mechanical::FORMULA,
    &connector_length_by_diameter::FORMULA,
    &connector_length_double_wall::FORMULA,
    &connector_length_single_wall::FORMULA,
    &connector_rise::FORMULA,
    &converted_manifold_pressure::FORMULA,
    &converted_orifice_diameter::FORMULA,
    &derated_input_above_2000_ft::FORMULA,
    &derated_input_from_sea_level::FORMULA,
    &duct_friction_rate::FORMULA,
    &equivalent_round_diameter::FORMULA,
    &fan_airflow_at_speed::FORMULA,
    &fan_power_at_airflow::FORMULA,
    &fan_power_at_speed::FORMULA,
    &fan_pressure_at_speed::FORMULA,
    &gas_pipe_capacity_natural::FORMULA,
    &gas_pipe_capacity_propane::FORMULA,
    &gas_pipe_pressure_drop_natural::FORMULA,
    &gas_pipe_pressure_drop_propane::FORMULA,
    &gas_pipe_size_natural::FORMULA,
    &gas_pipe_size_propane::FORMULA,
    &gas_volume_correction::FORMULA,
    &input_at_altitude::FORMULA,
    &input_at_manifold_pressure::FORMULA,
    &input_deviation::FORMULA,
    &input_from_meter::FORMULA,
    &input_from_uncompensated_meter::FORMULA,
    &input_with_other_gas::FORMULA,
    &louver_area::FORMULA,
    &louver_area_metal::FORMULA,
    &louver_area_wood::FORMULA,
    &opening_between_rooms::FORMULA,
    &opening_between_storeys::FORMULA,
    &opening_outdoors_direct::FORMULA,
    &opening_outdoors_horizontal::FORMULA,
    &opening_outdoors_single::FORMULA,
    &orifice_diameter_for_input::FORMULA,
    &orifice_drill_for_input::FORMULA,
    &orifice_flow::FORMULA,
    &orifice_flow_by_drill::FORMULA,
    &pressure_difference::FORMULA,
    &room_volume_known_infiltration::FORMULA,
    &room_volume_standard::FORMULA,
    &standard_airflow_from_rise::FORMULA,
    &static_at_airflow::FORMULA,
    &temperature_rise::FORMULA,
    &theoretical_draft::FORMULA,
    &timing_error::FORMULA,
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
