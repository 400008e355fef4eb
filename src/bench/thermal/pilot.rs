//! The pilot: a small flame of its own that lights the burners.
//!
//! # Equations
//!
//! Gas through the pilot's orifice goes with the root of the pressure before it, and so does the flame's size.
//!
//! # References
//!
//! - From which size it lights the burners, and which is too small to burn: memory, of the right order.

use super::condition::{Gas, Shut};
use crate::bench::make::{Make, Pilot};
use crate::bench::process::Drive;

/// Share of the lowest supply pressure on the plate from which a pilot has its whole size: its regulator sees to the rest.
const ENOUGH: f64 = 0.6;
/// Sizes below which it does not burn, and from which it lights the burners.
const DIES: f64 = 0.1;
const LIGHTS: f64 = 0.4;

/// The pilot of a furnace, or none.
#[derive(Clone, Copy, Debug)]
pub struct PilotBurner {
    kind: Option<Pilot>,
    size: f64,
    lit: bool,
    held: bool,
}

impl PilotBurner {
    /// The pilot of a furnace whose supply stands at so much at rest, in.w.c.
    pub fn new(make: &Make, gas: &Gas, at_rest: f64) -> Self {
        let supply = (at_rest / (ENOUGH * make.inlet_min)).clamp(0.0, 1.0).sqrt();
        let open = gas.shut == Shut::Open && gas.air_in_line == 0.0;
        let size = if open {
            supply * (1.0 - gas.pilot_clogged)
        } else {
            0.0
        };
        Self {
            kind: make.pilot(),
            size: if size < DIES { 0.0 } else { size },
            lit: false,
            held: false,
        }
    }

    /// Goes on; gives the flame's size, of a standing one with its knob held in.
    pub fn step(&mut self, drive: &Drive) -> f64 {
        self.held = drive.pilot_fed;
        self.lit = match self.kind {
            None => false,
            Some(Pilot::Standing) => true,
            Some(Pilot::OnCall) => drive.pilot_fed && (self.lit || drive.igniting),
        };
        if self.lit { self.size } else { 0.0 }
    }

    /// Whether it lets gas to the burners: a standing one only while its thermocouple holds.
    pub fn lets_gas(&self) -> bool {
        self.kind != Some(Pilot::Standing) || (self.held && self.size > 0.0)
    }

    /// Whether something lights the burners: the pilot where there is one.
    pub fn lights(&self, igniting: bool) -> bool {
        match self.kind {
            None => igniting,
            Some(_) => self.lit && self.lets_gas() && self.size >= LIGHTS,
        }
    }

    /// How well the sensor's place is bathed: by the pilot where that is what is watched.
    pub fn bathes(&self, main: f64) -> f64 {
        match self.kind {
            Some(Pilot::OnCall) if self.lit => (self.size / LIGHTS).min(1.0),
            Some(Pilot::OnCall) => 0.0,
            Some(Pilot::Standing) | None => main,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::make::Kind;

    fn make(pilot: Pilot) -> Make {
        let made = (0..500)
            .map(Make::random)
            .find(|make| make.pilot() == Some(pilot));
        made.unwrap_or_else(|| unreachable!("no furnace with {pilot:?}"))
    }

    #[test]
    fn a_standing_pilot_that_is_not_held_lets_no_gas_to_the_burners() {
        let make = make(Pilot::Standing);
        let mut pilot = PilotBurner::new(&make, &Gas::default(), 7.0);
        assert!(pilot.step(&Drive::default()) > 0.9 && !pilot.lets_gas() && !pilot.lights(true));
        let held = Drive {
            pilot_fed: true,
            ..Drive::default()
        };
        assert!(pilot.step(&held) > 0.9 && pilot.lets_gas() && pilot.lights(false));
    }

    #[test]
    fn one_that_is_lit_on_call_needs_gas_and_a_spark() {
        let make = make(Pilot::OnCall);
        let mut pilot = PilotBurner::new(&make, &Gas::default(), 7.0);
        let fed = Drive {
            pilot_fed: true,
            ..Drive::default()
        };
        assert_eq!(pilot.step(&fed), 0.0);
        let sparked = Drive {
            igniting: true,
            ..fed
        };
        assert!(pilot.step(&sparked) > 0.9 && pilot.step(&fed) > 0.9 && pilot.bathes(0.0) > 0.9);
        assert_eq!(pilot.step(&Drive::default()), 0.0);
    }

    #[test]
    fn a_clogged_orifice_and_a_starved_supply_leave_a_small_flame_or_none() {
        let make = make(Pilot::Standing);
        let size = |clogged: f64, supply: f64| {
            let gas = Gas {
                pilot_clogged: clogged,
                ..Gas::default()
            };
            PilotBurner::new(&make, &gas, supply).step(&Drive::default())
        };
        assert_eq!(size(1.0, 7.0), 0.0);
        assert_eq!(size(0.0, 0.0), 0.0);
        assert!(size(0.6, 20.0) < 0.5);
        // The root of a quarter is a half.
        assert!((size(0.0, 0.25 * ENOUGH * make.inlet_min) - 0.5).abs() < 1e-9);
        assert!(matches!(make.kind, Kind::Pilot(_)));
    }
}
