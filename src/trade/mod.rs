//! What the trade computes: a register of formulas, and one file for each.
//!
//! A tree's readings may be worked out by one of these, by name. To add a formula, write its file (the headings of
//! the others: one sentence, the equation, its arguments with units, its range, a worked example, references) and
//! give it a line in the register; a test holds the file's text to what the register says. Physics and tables that
//! several formulas share stand in private files: the atmosphere, fans, orifices, drills, pipe.

mod argument;
mod atmosphere;
mod drills;
mod fan;
mod formula;
mod gas_pipe;
mod given;
mod group;
mod limits;
mod metered;
mod orifice;
mod register;
mod unfit;
mod warning;
mod worked;

pub mod air_density;
pub mod airflow_from_rise;
pub mod available_friction_rate;
pub mod capacitance_under_load;
pub mod co_air_free;
pub mod combustion_air_mechanical;
pub mod connector_length_by_diameter;
pub mod connector_length_double_wall;
pub mod connector_length_single_wall;
pub mod connector_rise;
pub mod converted_manifold_pressure;
pub mod converted_orifice_diameter;
pub mod derated_input_above_2000_ft;
pub mod derated_input_from_sea_level;
pub mod duct_friction_rate;
pub mod equivalent_round_diameter;
pub mod fan_airflow_at_speed;
pub mod fan_power_at_airflow;
pub mod fan_power_at_speed;
pub mod fan_pressure_at_speed;
pub mod gas_pipe_capacity_natural;
pub mod gas_pipe_capacity_propane;
pub mod gas_pipe_pressure_drop_natural;
pub mod gas_pipe_pressure_drop_propane;
pub mod gas_pipe_size_natural;
pub mod gas_pipe_size_propane;
pub mod gas_volume_correction;
pub mod input_at_altitude;
pub mod input_at_manifold_pressure;
pub mod input_deviation;
pub mod input_from_meter;
pub mod input_from_uncompensated_meter;
pub mod input_with_other_gas;
pub mod louver_area;
pub mod louver_area_metal;
pub mod louver_area_wood;
pub mod opening_between_rooms;
pub mod opening_between_storeys;
pub mod opening_outdoors_direct;
pub mod opening_outdoors_horizontal;
pub mod opening_outdoors_single;
pub mod orifice_diameter_for_input;
pub mod orifice_drill_for_input;
pub mod orifice_flow;
pub mod orifice_flow_by_drill;
pub mod pressure_difference;
pub mod room_volume_known_infiltration;
pub mod room_volume_standard;
pub mod standard_airflow_from_rise;
pub mod static_at_airflow;
pub mod temperature_rise;
pub mod theoretical_draft;
pub mod timing_error;
pub mod total_external_static;

#[cfg(test)]
mod tests;

pub use argument::{Argument, Usual};
pub use formula::Formula;
pub use given::{Given, Origin};
pub use group::Group;
pub use register::{all, find};
pub use unfit::Unfit;
pub use warning::Warning;
pub use worked::{Named, Worked};
