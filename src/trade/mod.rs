//! What the trade computes: a register of formulas, and one file for each.
//!
//! A tree's readings may be worked out by one of these, by name. To add a formula, write its file (the headings of the
//! others: one sentence, the equation, its arguments with units, its range, a worked example, references) and give it a
//! line in the register; a test holds the file's text to what the register says.

mod argument;
mod formula;
mod given;
mod group;
mod register;
mod unfit;
mod warning;
mod worked;

pub mod capacitance_under_load;
pub mod co_air_free;
pub mod input_at_manifold_pressure;
pub mod input_from_meter;
pub mod pressure_difference;
pub mod temperature_rise;
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
