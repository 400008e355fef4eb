//! What the trade computes: a register of formulas, and one file for each.
//!
//! A tree's readings may be worked out by one of these, by name. To add a formula, write its file (the headings of the
//! others: one sentence, the equation, its arguments with units, its range, a worked example, references) and give it a
//! line in the register; a test holds the file's text to what the register says.

mod argument;
mod copper;
mod enthalpy;
mod flue;
mod formula;
mod fuel;
mod group;
mod register;
mod saturation;
mod stack;
mod thermistor;
mod unfit;
mod warning;

pub mod cable_voltage_drop;
pub mod capacitance_under_load;
pub mod capacitor_deviation;
pub mod co2_from_o2;
pub mod co_air_free;
pub mod co_air_free_from_co2;
pub mod combustion_efficiency_natural;
pub mod combustion_efficiency_natural_from_co2;
pub mod combustion_efficiency_propane;
pub mod combustion_efficiency_propane_from_co2;
pub mod condensate_natural;
pub mod condensate_propane;
pub mod condensed_share_natural;
pub mod condensed_share_propane;
pub mod copper_resistance;
pub mod drain_drop;
pub mod drain_slope;
pub mod excess_air_natural;
pub mod excess_air_natural_from_co2;
pub mod excess_air_propane;
pub mod excess_air_propane_from_co2;
pub mod flame_signal_margin;
pub mod flue_gas_dew_point_natural;
pub mod flue_gas_dew_point_propane;
pub mod input_at_manifold_pressure;
pub mod input_from_meter;
pub mod motor_load;
pub mod net_stack_temperature;
pub mod o2_from_co2;
pub mod pressure_difference;
pub mod temperature_rise;
pub mod thermistor_beta;
pub mod thermistor_resistance;
pub mod thermistor_temperature;
pub mod total_external_static;
pub mod transformer_apparent_power;
pub mod transformer_load;
pub mod transformer_secondary_current;
pub mod trap_depth;
pub mod ultimate_co2;
pub mod ultimate_co2_of_gas;
pub mod winding_temperature;
pub mod wire_resistance;

#[cfg(test)]
mod tests;

pub use argument::{Argument, Usual};
pub use formula::Formula;
pub use group::Group;
pub use register::{all, find};
pub use unfit::Unfit;
pub use warning::Warning;
