//! What the trade computes: a register of formulas, and one file for each.
//!
//! A tree's readings may be worked out by one of these, by name. To add a formula, write its file (the headings of the
//! others: one sentence, the equation, its arguments with units, its range, a worked example, references) and give it a
//! line in the register; a test holds the file's text to what the register says.

mod argument;
mod atmosphere;
mod fan;
mod formula;
mod group;
mod limits;
mod register;
mod unfit;
mod warning;

pub mod air_density;
pub mod airflow_from_rise;
pub mod available_friction_rate;
pub mod capacitance_under_load;
pub mod co_air_free;
pub mod duct_friction_rate;
pub mod equivalent_round_diameter;
pub mod fan_airflow_at_speed;
pub mod fan_power_at_airflow;
pub mod fan_power_at_speed;
pub mod fan_pressure_at_speed;
pub mod input_at_manifold_pressure;
pub mod input_from_meter;
pub mod pressure_difference;
pub mod standard_airflow_from_rise;
pub mod static_at_airflow;
pub mod temperature_rise;
pub mod total_external_static;

#[cfg(test)]
mod tests;

pub use argument::{Argument, Usual};
pub use formula::Formula;
pub use group::Group;
pub use register::{all, find};
pub use unfit::Unfit;
pub use warning::Warning;
