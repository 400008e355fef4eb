//! What is broken in a furnace: every physical cause as a number or a state that is in order by default.

pub use super::electric::condition::Electric;
pub use super::thermal::condition::Thermal;

/// The condition of a furnace; `Condition::default()` is one in order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Condition {
    /// Power, wires, switches, motors' electric side, board, thermostat.
    pub electric: Electric,
    /// Gas, burners, vent, water, air, exchanger, motors' wheels.
    pub thermal: Thermal,
}
