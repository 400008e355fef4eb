//! What can be wrong on the electric side.

pub use super::call::{Call, Interlock, Thermostat};
pub use super::chain::{Chain, Switch};
pub use super::control::Control;
pub use super::gas_valve::Coil;
pub use super::ignition::Igniter;
pub use super::line::{Feed, Ground, Line};
pub use super::motor::Motor;
pub use super::outputs::Board;
pub use super::sensing::Sensing;
pub use super::stages::Stages;
pub use super::thermocouple::Thermocouple;
pub use super::twin::Twin;

/// The electric condition of a furnace; the default is one in order.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Electric {
    /// Line, ground, door switch.
    pub line: Line,
    /// Transformer, fuse and what loads them.
    pub control: Control,
    /// Thermostat, its cable and what lies in it.
    pub call: Call,
    /// Limits and rollout switches.
    pub chain: Chain,
    /// The pressure switch's contact and ports.
    pub switch: Switch,
    /// The control board.
    pub board: Board,
    /// Igniter or spark.
    pub igniter: Igniter,
    /// The gas valve's coil and its wires.
    pub coil: Coil,
    /// Flame rod, its lead and the way back.
    pub sensing: Sensing,
    /// The inducer's motor.
    pub inducer: Motor,
    /// The blower's motor.
    pub blower: Motor,
    /// The second stage.
    pub stages: Stages,
    /// A standing pilot's thermocouple and its magnet.
    pub thermocouple: Thermocouple,
    /// What joins it to a twin.
    pub twin: Twin,
}
