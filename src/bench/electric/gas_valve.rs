//! The gas valve electrically: its coil, and the wires between it and the board.

use super::wire::{OPEN, divided, parallel};

/// What is wrong with coil and wires.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Coil {
    /// Whether the coil is open.
    pub open: bool,
    /// Resistance of a coil whose turns are shorted, Ω.
    pub shorted: Option<f64>,
    /// Resistance in the valve's wires or their crimps beyond sound ones', Ω.
    pub wire_ohms: f64,
    /// Resistance of a short between the valve's wires, Ω.
    pub wire_short: Option<f64>,
}

/// A coil pulls in from here on, V: about three quarters of 24 V, common practice.
const PULLS_IN: f64 = 18.0;

/// And holds down to here, V.
const HOLDS: f64 = 12.0;

impl Coil {
    /// The coil's own resistance, where a sound one has `sound` Ω.
    pub fn ohms(&self, sound: f64) -> f64 {
        match (self.open, self.shorted) {
            (true, _) => OPEN,
            (false, Some(ohms)) => ohms,
            (false, None) => sound,
        }
    }

    /// The whole circuit at the board's plug, valve connected, Ω.
    pub fn circuit_ohms(&self, sound: f64) -> f64 {
        let valve = self.ohms(sound) + self.wire_ohms;
        self.wire_short.map_or(valve, |short| parallel(valve, short))
    }

    /// What arrives at the valve's terminals of some volts at the board's pin.
    pub fn at_valve(&self, pin: f64, sound: f64) -> f64 {
        divided(pin, self.wire_ohms, self.ohms(sound))
    }

    /// Whether the valve is pulled in at these volts, having been so before or not.
    pub fn pulled(&self, volts: f64, before: bool) -> bool {
        let works = !self.open && self.shorted.is_none();
        works && volts >= if before { HOLDS } else { PULLS_IN }
    }
}
