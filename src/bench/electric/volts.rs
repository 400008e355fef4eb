//! What electric probes could show at an instant, and what a call leaves behind.

use super::blower::BlowerVolts;
use super::call::CallVolts;
use super::chain::ChainVolts;
use super::control::{ControlVolts, Latches};
use super::ignition::Glow;
use super::line::LineVolts;
use super::stages::StageVolts;
use super::thermocouple::Held;

/// Everything electric that a probe could show at an instant.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Volts {
    /// Line.
    pub line: LineVolts,
    /// Transformer and control voltage.
    pub control: ControlVolts,
    /// Call.
    pub call: CallVolts,
    /// Chain of safeties.
    pub chain: ChainVolts,
    /// At the board's inducer pin.
    pub inducer_pin: f64,
    /// At the inducer's plug.
    pub inducer_plug: f64,
    /// Share of its speed that the inducer makes.
    pub inducer_turns: f64,
    /// At the board's igniter pins.
    pub igniter_pin: f64,
    /// At the igniter.
    pub glow: Glow,
    /// At the board's valve pin.
    pub valve_pin: f64,
    /// At the valve's terminals.
    pub valve: f64,
    /// The second stage.
    pub stage: StageVolts,
    /// A standing pilot's thermocouple.
    pub thermocouple: Held,
    /// Blower.
    pub blower: BlowerVolts,
    /// Flame current in the sensor's lead, µA.
    pub flame_current: f64,
    /// How well flame stands before the sensor.
    pub bathed: f64,
    /// Whether a motor is just starting, and the line shows it.
    pub starting: bool,
}

/// What a call leaves behind for the next one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Latched {
    /// Fuse and transformer's breaker.
    pub control: Latches,
    /// The rollout switch has tripped.
    pub rollout: bool,
}
