//! What the inducer draws through intake, exchanger and vent, and what a pressure switch sees of it.
//!
//! # Equations
//!
//! Every part of the way loses pressure with the square of the mass that flows and with how thin the gas is there, and the
//! inducer makes `pressure = density * shut_off * speed² - inner * mass² / density`. Draft of the stack adds to it; wind and
//! a room under suction take from it. So `mass = sqrt(pressure made / sum of resistances)`. Mass and densities count as 1 when
//! hot and in order; a leak into the way goes with the suction's root, so with the mass, and only adds a share to it.
//!
//! What a switch sees is the loss between its ports. That is why a blocked vent weakens it wherever it taps, and a blocked
//! intake or exchanger weakens or strengthens it by where it taps.
//!
//! # References
//!
//! - Fan laws: the register's `fan_pressure_at_speed`. Stack: `theoretical_draft`.
//! - How the parts of the way share the loss, and how much thinner the gas is hot: memory, of the right order.

use super::condition::{Flue, Inducer, Room, Thermal};
use super::register::worked;
use super::spread::spread;
use crate::bench::make::{Make, Taps};
use crate::trade::{air_density, theoretical_draft};

/// Seconds in which flue gas and vent get warm.
const WARMS: f64 = 7.0;
/// Air that finds its way with the inducer standing, against what it draws.
const STILL: f64 = 0.06;
/// What a closed furnace room and a tight house come to as suction, in.w.c.
const TIGHT_ROOM: f64 = 0.06;

/// The way of air and flue gas.
#[derive(Clone, Copy, Debug)]
pub struct Draft {
    taps: Taps,
    shut_off: f64,
    inner: f64,
    intake: f64,
    primary: f64,
    secondary: f64,
    choke: f64,
    vent: f64,
    /// Leaks into the collector: what they add, as a share of what comes through the exchanger, for 1 of it.
    leak: f64,
    /// How much denser the gas is cold than hot: in the primary, in the secondary, and from the inducer on.
    cold: [f64; 3],
    speed: f64,
    stack: f64,
    against: f64,
    waver: f64,
    sagging: f64,
    warm: f64,
}

/// What is drawn at a moment.
#[derive(Clone, Copy, Debug, Default)]
pub struct Drawn {
    /// Air through the burners, against that of a furnace in order and hot.
    pub air: f64,
    /// Room air that leaks in behind the exchanger, in the same measure.
    pub leak: f64,
    /// Between the switch's ports, as its label counts it, in.w.c.
    pub at_ports: f64,
    /// Suction in the middle of the exchanger, in.w.c.
    pub suction: f64,
    /// Share of the draft that comes and goes.
    pub wavers: f64,
}

impl Draft {
    /// The way of a furnace.
    pub fn new(make: &Make, flue: &Flue, inducer: &Inducer, room: &Room) -> Self {
        // Shares of the whole loss: intake and burner box, primary, secondary, choke, vent.
        let shares = if make.condensing {
            [0.12, 0.28, 0.28, 0.12, 0.20]
        } else {
            [0.03, 0.57, 0.00, 0.16, 0.24]
        };
        let seen = match make.switch_taps {
            Taps::CollectorToRoom => shares[0] + shares[1] + shares[2],
            Taps::CollectorToBurnerBox => shares[1] + shares[2],
            Taps::AcrossChoke => shares[3],
            Taps::BetweenCells => shares[0] + shares[1],
        };
        let whole = make.switch_set_point * spread(make.seed, 10, 1.45, 1.8) / seen;
        let steep = spread(make.seed, 11, 1.3, 1.5);
        let of = |share: f64, blocked: f64| whole * share * narrowed(blocked);
        let sealed = if make.condensing { flue.intake_blocked } else { 0.0 };
        let vent = of(shares[4], flue.terminal_blocked)
            * narrowed(flue.vent_obstructed)
            * narrowed(flue.vent_sags)
            * (1.0 + flue.vent_overlong)
            * (1.0 - flue.vent_parted).powi(2);
        let cold = if make.condensing {
            [2.0, 1.3, 1.1]
        } else {
            [2.2, 1.3, 1.5]
        };
        let height = if make.condensing {
            0.0
        } else {
            spread(make.seed, 12, 12.0, 28.0)
        };
        let stack = worked(
            &theoretical_draft::FORMULA,
            [height, make.outdoor, 300.0, make.altitude],
            0.0,
        );
        let suction = if make.condensing {
            0.0
        } else {
            room.negative + TIGHT_ROOM * room.starved.powi(3)
        };
        Self {
            taps: make.switch_taps,
            shut_off: steep * whole * (1.0 - inducer.wheel_dirty),
            inner: (steep - 1.0) * whole / (1.0 - inducer.wheel_dirty).max(0.1).powi(2),
            intake: of(shares[0], sealed),
            primary: of(shares[1], flue.primary_sooted),
            secondary: of(shares[2], flue.secondary_plugged),
            choke: of(shares[3], 0.0) * (1.0 - inducer.choke_wrong),
            vent,
            leak: inducer.gasket_leaks + 0.6 * flue.trap_dry,
            cold,
            speed: 1.0 - inducer.wheel_loose,
            stack: if flue.vent_parted > 0.5 { 0.0 } else { stack },
            against: flue.wind * 0.5 + suction,
            waver: 0.3 * inducer.wheel_loose + flue.wind * 0.9 / whole,
            sagging: flue.vent_sags,
            warm: 0.0,
        }
    }

    /// Goes on by some seconds, with a share of the rated speed, of the rated fire, and of the collector under water.
    pub fn step(&mut self, speed: f64, fire: f64, water: f64, seconds: f64) -> Drawn {
        let goal = fire.sqrt().min(1.3);
        self.warm = goal + (self.warm - goal) * (-seconds / WARMS).exp();
        let [in_primary, in_secondary, behind] = self.cold.map(|cold| cold.powf(1.0 - self.warm));
        let speed = speed * self.speed;
        let made = self.shut_off * speed * speed * behind + self.stack * self.warm - self.against;
        let whole = 1.0 + self.leak;
        let secondary = self.secondary * narrowed(water) / in_secondary;
        let before = self.intake + self.primary / in_primary + secondary;
        let after = (self.inner + self.choke + self.vent) / behind * whole * whole;
        let squared = made.max(0.0) / (before + after);
        let between = match self.taps {
            Taps::CollectorToRoom => before,
            Taps::CollectorToBurnerBox => before - self.intake,
            Taps::AcrossChoke => self.choke / behind * whole * whole,
            Taps::BetweenCells => self.intake + self.primary / in_primary,
        };
        Drawn {
            air: squared.sqrt().max(STILL),
            leak: squared.sqrt() * self.leak,
            at_ports: squared * between,
            suction: squared * (self.intake + self.primary / in_primary / 2.0),
            wavers: self.waver + 0.25 * (water - 0.2).max(0.0) + 0.3 * (self.sagging - 0.2).max(0.0),
        }
    }
}

/// What the switch would come to see, cold and at steady fire, in.w.c.; hoses and water are not looked at.
pub fn draft_of(make: &Make, thermal: &Thermal) -> (f64, f64) {
    let Thermal {
        flue, inducer, room, ..
    } = thermal;
    let mut draft = Draft::new(make, flue, inducer, room);
    let cold = draft.step(1.0, 0.0, 0.0, 1.0).at_ports;
    (cold, draft.step(1.0, 1.0, 0.0, 100.0 * WARMS).at_ports)
}

/// How many times the resistance is what it was, where a share of the area is blocked.
pub fn narrowed(blocked: f64) -> f64 {
    (1.0 - blocked.clamp(0.0, 0.97)).powi(-2)
}

/// How dense air is at an altitude, against sea level.
pub fn density(altitude: f64) -> f64 {
    let at = |feet: f64| worked(&air_density::FORMULA, [feet, 70.0], 0.0749);
    at(altitude) / at(0.0)
}
