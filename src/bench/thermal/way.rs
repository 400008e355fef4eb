//! The way of air and flue gas, part by part.
//!
//! # References
//!
//! - How the parts share the loss, and how much thinner the gas is hot: memory, of the right order.

use super::condition::{Flue, Inducer};
use super::spread::{Own, spread};
use crate::bench::make::{Make, Taps};

/// What each part loses with all that a furnace in order draws hot, in.w.c.
#[derive(Clone, Copy, Debug)]
pub struct Way {
    /// Intake and burner box.
    pub intake: f64,
    /// Primary exchanger.
    pub primary: f64,
    /// Secondary exchanger, where there is one.
    pub secondary: f64,
    /// The choke at the inducer.
    pub choke: f64,
    /// Vent to the outdoors.
    pub vent: f64,
}

/// How many times denser the gas is cold than hot.
#[derive(Clone, Copy, Debug)]
pub struct Cold {
    /// In the primary, on the mean of its loss.
    pub primary: f64,
    /// In the secondary.
    pub secondary: f64,
    /// From the inducer on.
    pub behind: f64,
}

impl Way {
    /// The way that a maker chose with the switch, so that a furnace in order holds it well closed: with two stages, on the
    /// lower speed of its inducer.
    pub fn in_order(make: &Make) -> Self {
        let shares = if make.condensing {
            Self {
                intake: 0.12,
                primary: 0.28,
                secondary: 0.28,
                choke: 0.12,
                vent: 0.20,
            }
        } else {
            Self {
                intake: 0.03,
                primary: 0.57,
                secondary: 0.0,
                choke: 0.16,
                vent: 0.24,
            }
        };
        let hot = make.switch_set_point * spread(make.seed, Own::Draft, 1.45, 1.8);
        // Draft goes with the square of the speed.
        let whole = hot / shares.between(make.switch_taps) / make.low_speed().powi(2);
        Self {
            intake: whole * shares.intake,
            primary: whole * shares.primary,
            secondary: whole * shares.secondary,
            choke: whole * shares.choke,
            vent: whole * shares.vent,
        }
    }

    /// The same with what is in it.
    pub fn hindered(&self, flue: &Flue, inducer: &Inducer, sealed: bool) -> Self {
        let at_intake = if sealed { flue.intake_blocked } else { 0.0 };
        let in_vent = [flue.terminal_blocked, flue.vent_obstructed, flue.vent_sags].map(narrowed);
        Self {
            intake: self.intake * narrowed(at_intake),
            primary: self.primary * narrowed(flue.primary_sooted),
            secondary: self.secondary * narrowed(flue.secondary_plugged),
            choke: self.choke * (1.0 - inducer.choke_wrong),
            vent: self.vent
                * in_vent.iter().product::<f64>()
                * (1.0 + flue.vent_overlong)
                * (1.0 - flue.vent_parted).powi(2),
        }
    }

    /// What is lost up to the collector.
    pub fn before_inducer(&self) -> f64 {
        self.intake + self.primary + self.secondary
    }

    /// The whole.
    pub fn whole(&self) -> f64 {
        self.before_inducer() + self.choke + self.vent
    }

    /// What is lost between the ports of a switch, where draft counts as positive.
    pub fn between(&self, taps: Taps) -> f64 {
        match taps {
            Taps::CollectorToRoom => self.before_inducer(),
            Taps::CollectorToBurnerBox => self.primary + self.secondary,
            Taps::AcrossChoke => self.choke,
            Taps::BetweenCells => self.intake + self.primary,
        }
    }
}

impl Cold {
    /// By how hot a furnace's gas leaves.
    pub fn of(make: &Make) -> Self {
        if make.condensing {
            Self {
                primary: 2.0,
                secondary: 1.3,
                behind: 1.1,
            }
        } else {
            Self {
                primary: 2.2,
                secondary: 1.3,
                behind: 1.5,
            }
        }
    }

    /// The densities against hot ones, at a warmth from 0, cold, to 1.
    pub fn at(&self, warm: f64) -> Self {
        let now = |cold: f64| cold.powf(1.0 - warm);
        Self {
            primary: now(self.primary),
            secondary: now(self.secondary),
            behind: now(self.behind),
        }
    }
}

/// How many times the resistance is what it was, where a share of the area is blocked.
pub fn narrowed(blocked: f64) -> f64 {
    (1.0 - blocked.clamp(0.0, 0.97)).powi(-2)
}
