//! Power, wires, chain, board and sequence: what is switched on by what is sensed.

mod blower;
mod call;
mod chain;
pub mod condition;
mod control;
mod controls;
mod gas_valve;
mod ignition;
mod line;
mod motor;
mod outputs;
pub mod probe;
mod sensing;
mod sequence;
mod sound;
mod stages;
mod thermocouple;
mod twin;
mod volts;
mod wire;

pub use blower::BlowerVolts;
pub use call::CallVolts;
pub use chain::ChainVolts;
pub use control::{ControlVolts, Latches};
pub use controls::Controls;
pub use ignition::{Glow, Spark};
pub use line::LineVolts;
pub use motor::{SLIP, capacitor_for, speed_to_slip};
pub use outputs::Output;
pub use sequence::Phase;
pub use sound::{ABOVE, Sound};
pub use stages::StageVolts;
pub use thermocouple::Held;
pub use volts::{Latched, Volts};
pub use wire::{OPEN, shown};
