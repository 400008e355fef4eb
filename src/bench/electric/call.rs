//! The call for heat: thermostat, its cable, and what lies in R.

use super::wire::{OPEN, divided};

/// What is wrong with the call.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Call {
    /// The thermostat.
    pub thermostat: Thermostat,
    /// Resistance of the W pin between the thermostat and its base, Ω.
    pub base_ohms: f64,
    /// Resistance in the cable's R wire beyond a sound one's, Ω.
    pub r_ohms: f64,
    /// Resistance in the cable's W wire beyond a sound one's, Ω.
    pub w_ohms: f64,
    /// Volts that a broken wire picks up from its neighbours, as a meter shows them.
    pub ghost: f64,
    /// What lies in R and is open.
    pub interlock: Option<Interlock>,
}

/// The thermostat itself.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Thermostat {
    /// Calls when it is set above the room.
    #[default]
    Sound,
    /// Says that it calls, and its contact does not close.
    ContactOpen,
    /// Has power and stays blank.
    Blank,
    /// Is set to something else.
    NotCalling,
    /// Calls, and waits out its own delay.
    Delaying,
    /// Has flat batteries.
    BatteriesFlat,
}

/// A device in R that is open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Interlock {
    /// A float switch that water lifts.
    FloatWet,
    /// A float switch over a dry pan.
    FloatDry,
    /// A carbon monoxide, gas or leak interlock.
    Alarm,
    /// A zone panel, relay or end switch.
    Panel,
}

/// What the board's W terminal loads a call with, Ω.
const W_LOAD: f64 = 1500.0;

/// What a thermostat that lives on R and C draws, Ω.
const OWN_LOAD: f64 = 1200.0;

/// What a technician puts across R and C to measure there, a relay's coil, Ω.
const TEST_LOAD: f64 = 600.0;

/// A thermostat on less is blank, V.
const AWAKE: f64 = 15.0;

/// From here on a board takes W for a call, V.
pub const CALLED: f64 = 12.0;

/// Voltages of the call at an instant.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct CallVolts {
    /// At the board, W to C.
    pub board: f64,
    /// At the thermostat's base with it taken off and a relay's coil in its place, R to C.
    pub base: f64,
    /// Across R and W with the thermostat on its base.
    pub r_to_w: f64,
    /// Across the device in R.
    pub interlock: f64,
    /// Whether the thermostat shows anything.
    pub awake: bool,
}

impl Call {
    /// The voltages at this control voltage; `wanted` whether the thermostat is set to call, `batteries` whether it lives
    /// on its own, `high_water` whether a pump's float switch in R is lifted.
    pub fn volts(&self, control: f64, wanted: bool, batteries: bool, high_water: bool) -> CallVolts {
        let open = self.interlock.is_some() || high_water;
        let fed = if open { 0.0 } else { control };
        let broken = self.r_ohms >= OPEN;
        // Under the load that is put across it a bad joint shows, and the ghost on a broken wire is all but gone.
        let base = match broken {
            true => 0.1 * self.ghost.min(fed),
            false => divided(fed, self.r_ohms, TEST_LOAD),
        };
        let own = match broken {
            true => 0.0,
            false => divided(fed, self.r_ohms, OWN_LOAD),
        };
        let powered = match self.thermostat {
            Thermostat::BatteriesFlat | Thermostat::Blank => false,
            _ => batteries || own >= AWAKE,
        };
        let closed = wanted && powered && self.thermostat == Thermostat::Sound;
        let path = self.r_ohms + self.base_ohms + self.w_ohms;
        let carried = match closed {
            true => divided(fed, path, W_LOAD),
            false => 0.0,
        };
        let board = match self.w_ohms >= OPEN {
            true => self.ghost.min(control),
            false => carried,
        };
        let r_to_w = match (closed, self.w_ohms >= OPEN) {
            (true, _) => carried / W_LOAD * self.base_ohms,
            (false, true) => (base - self.ghost).max(0.0),
            (false, false) => base,
        };
        CallVolts {
            board,
            base,
            r_to_w,
            interlock: if open { control } else { 0.0 },
            awake: powered,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn volts(call: &Call) -> CallVolts {
        call.volts(24.0, true, false, false)
    }

    #[test]
    fn a_call_arrives_and_none_is_none() {
        let calling = volts(&Call::default());
        assert!(calling.board > 23.0 && calling.r_to_w < 0.1 && calling.awake);
        let resting = Call::default().volts(24.0, false, false, false);
        assert!(resting.board == 0.0 && resting.r_to_w > 23.0);
    }

    #[test]
    fn a_bad_joint_takes_its_share_under_load() {
        let call = Call {
            r_ohms: 3_000.0,
            ..Call::default()
        };
        let volts = volts(&call);
        // Ohm's law: a relay's coil of 600 Ω behind 3000 Ω.
        assert!((volts.base - 24.0 * 600.0 / 3_600.0).abs() < 1e-9, "{volts:?}");
        assert!(!volts.awake && volts.board < CALLED, "{volts:?}");
    }

    #[test]
    fn a_broken_wire_shows_its_ghost_to_a_meter_and_no_call_to_a_board() {
        let call = Call {
            w_ohms: OPEN,
            ghost: 6.0,
            ..Call::default()
        };
        let volts = volts(&call);
        assert!(volts.board == 6.0 && volts.board < CALLED);
    }

    #[test]
    fn an_open_interlock_has_the_volts_across_itself() {
        let call = Call {
            interlock: Some(Interlock::FloatWet),
            ..Call::default()
        };
        let volts = volts(&call);
        assert!(volts.interlock == 24.0 && volts.base == 0.0 && volts.board == 0.0);
    }
}
