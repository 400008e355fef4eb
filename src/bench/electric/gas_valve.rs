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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_valve_pulls_in_at_what_it_would_not_need_to_hold() {
        let coil = Coil::default();
        assert!(!coil.pulled(15.0, false) && coil.pulled(15.0, true) && coil.pulled(20.4, false));
    }

    #[test]
    fn an_open_coil_keeps_its_volts_and_a_bad_wire_takes_them() {
        let open = Coil {
            open: true,
            ..Coil::default()
        };
        assert!(open.at_valve(24.0, 60.0) > 23.9 && !open.pulled(24.0, false));
        let wire = Coil {
            wire_ohms: 60.0,
            ..Coil::default()
        };
        assert!(
            (wire.at_valve(24.0, 60.0) - 12.0).abs() < 1e-9,
            "half of it, by Ohm's law"
        );
    }

    #[test]
    fn a_short_shows_at_the_plug_and_only_a_shorted_coil_with_its_wires_off() {
        let wires = Coil {
            wire_short: Some(0.5),
            ..Coil::default()
        };
        assert!(wires.circuit_ohms(60.0) < 3.0 && wires.ohms(60.0) > 3.0);
        let coil = Coil {
            shorted: Some(0.5),
            ..Coil::default()
        };
        assert!(coil.circuit_ohms(60.0) < 3.0 && coil.ohms(60.0) < 3.0);
    }
}
