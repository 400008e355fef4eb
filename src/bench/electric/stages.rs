//! The second stage: its call, its pressure switch, and the valve's second solenoid.
//!
//! A furnace of two stages lights on low. When the board is asked, by W2 or by its own timer, it brings inducer and blower to
//! full speed and feeds the valve's second solenoid by way of a second pressure switch, which the higher draft closes. Common
//! practice; some makers light on high and change over.

use super::call::CALLED;
use super::chain::SWITCH_OPENS;
use crate::bench::make::{StagedBy, Staging};

/// What is wrong with the second stage.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stages {
    /// Whether the second call does not come to the board.
    pub call_lost: bool,
    /// Whether thermostat or board is set for one stage.
    pub set_for_one: bool,
    /// Share of its set point by which the second pressure switch closes later than its label says.
    pub switch_drift: f64,
    /// Whether the inducer stays on its low speed.
    pub speed_stays_low: bool,
    /// Whether the board's output for the second stage stays dead.
    pub no_output: bool,
    /// Whether the wire to the valve's second terminal is open.
    pub wire_open: bool,
}

/// The second stage at an instant.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StageVolts {
    /// At the board, W2 to C.
    pub call: f64,
    /// Across the second pressure switch.
    pub switch: f64,
    /// At the board's own pin for the second stage.
    pub pin: f64,
    /// At the valve's second terminal.
    pub valve: f64,
    /// Whether the board asks for high fire.
    pub told: bool,
}

impl Stages {
    /// W2 to C at the board, where W has so many volts.
    pub fn call(&self, staging: Staging, first: f64) -> f64 {
        let by_thermostat = staging.by == StagedBy::Thermostat;
        match by_thermostat && !self.call_lost && !self.set_for_one {
            true => first,
            false => 0.0,
        }
    }

    /// Whether the board may go high once its delay is over.
    pub fn is_asked(&self, staging: Staging, call: f64) -> bool {
        match staging.by {
            StagedBy::Thermostat => call >= CALLED,
            StagedBy::Timer => !self.set_for_one,
        }
    }

    /// Where the second pressure switch stands with this draft, having been closed before or not.
    pub fn closed(&self, marked: f64, draft: f64, before: bool) -> bool {
        let closes = marked * (1.0 + self.switch_drift);
        draft >= closes * if before { SWITCH_OPENS } else { 1.0 }
    }

    /// The voltages with the board told to go high or not, where the valve's pin has so many volts.
    pub fn volts(&self, call: f64, told: bool, pin: f64, closed: bool) -> StageVolts {
        let pin = if told && !self.no_output { pin } else { 0.0 };
        let carried = if closed && !self.wire_open { pin } else { 0.0 };
        StageVolts {
            call,
            switch: if closed { 0.0 } else { pin },
            pin,
            valve: carried,
            told,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const BY_THERMOSTAT: Staging = Staging {
        low_manifold: 1.7,
        by: StagedBy::Thermostat,
        after: 120.0,
    };

    #[test]
    fn an_open_second_switch_has_the_volts_and_the_valve_none() {
        let open = Stages::default().volts(24.0, true, 24.0, false);
        // Common practice: about 24 V across what is open, about nothing across what is closed.
        assert!(open.switch == 24.0 && open.valve == 0.0);
        let closed = Stages::default().volts(24.0, true, 24.0, true);
        assert!(closed.switch == 0.0 && closed.valve == 24.0);
    }

    #[test]
    fn a_timer_needs_no_second_call_and_a_thermostat_does() {
        let by_timer = Staging {
            by: StagedBy::Timer,
            ..BY_THERMOSTAT
        };
        let sound = Stages::default();
        assert!(sound.call(by_timer, 24.0) == 0.0 && sound.is_asked(by_timer, 0.0));
        assert!(sound.is_asked(BY_THERMOSTAT, sound.call(BY_THERMOSTAT, 24.0)));
        let lost = Stages {
            call_lost: true,
            ..Stages::default()
        };
        assert!(!lost.is_asked(BY_THERMOSTAT, lost.call(BY_THERMOSTAT, 24.0)));
    }

    #[test]
    fn the_second_switch_opens_lower_than_it_closes() {
        let sound = Stages::default();
        assert!(!sound.closed(1.0, 0.95, false) && sound.closed(1.0, 0.95, true));
        assert!(!sound.closed(1.0, 0.8, true));
    }
}
