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
//! - Where water reaches a port in the collector: memory, of the right order.

use super::condition::{Flue, Inducer, Room, Thermal};
use super::heat::towards;
use super::register::worked;
use super::spread::{Own, spread};
use super::way::{Cold, Way, narrowed};
use crate::bench::make::{Make, Taps};
use crate::trade::{air_density, theoretical_draft};

/// Seconds in which flue gas and vent get warm.
const WARMS: f64 = 7.0;
/// Air that finds its way with the inducer standing, against what it draws.
const STILL: f64 = 0.06;
/// What a closed furnace room and a tight house come to as suction, in.w.c.
const TIGHT_ROOM: f64 = 0.06;
/// What a dry trap lets in when all of it is open, share of the flue gas's flow.
const TRAP: f64 = 0.6;
/// Water that begins to cover a port in the collector, and that covers it, share of its height.
const WETS: f64 = 0.45;
const COVERS: f64 = 0.75;

/// Inducer and stack against the way of air and flue gas.
#[derive(Clone, Copy, Debug)]
pub struct Draft {
    taps: Taps,
    way: Way,
    cold: Cold,
    shut_off: f64,
    inner: f64,
    /// What leaks into the collector, as a share of what comes through the exchanger.
    leak: f64,
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
    /// Suction in the middle of the primary exchanger, in.w.c.
    pub suction: f64,
    /// Share of the draft that comes and goes.
    pub wavers: f64,
}

impl Draft {
    /// The draft of a furnace.
    pub fn new(make: &Make, flue: &Flue, inducer: &Inducer, room: &Room) -> Self {
        let right = Way::in_order(make);
        let whole = right.whole();
        let steep = spread(make.seed, Own::InducerCurve, 1.3, 1.5);
        let clean = 1.0 - inducer.wheel_dirty;
        // A condensing furnace breathes by its own intake, and its vent is too cool and too level to draw.
        let (stack, suction) = if make.condensing {
            (0.0, 0.0)
        } else {
            (stack_of(make), suction_of(room))
        };
        Self {
            taps: make.switch_taps,
            way: right.hindered(flue, inducer, make.condensing),
            cold: Cold::of(make),
            shut_off: steep * whole * clean,
            inner: (steep - 1.0) * whole / clean.max(0.1).powi(2),
            leak: inducer.gasket_leaks + TRAP * flue.trap_dry,
            speed: 1.0 - inducer.wheel_loose,
            stack: if flue.vent_parted > 0.5 { 0.0 } else { stack },
            against: 0.5 * flue.wind + suction,
            waver: 0.3 * inducer.wheel_loose + 0.9 * flue.wind / whole,
            sagging: flue.vent_sags,
            warm: 0.0,
        }
    }

    /// Goes on by some seconds, with a share of the rated speed, of the rated fire, and of the collector under water.
    pub fn step(&mut self, speed: f64, fire: f64, water: f64, seconds: f64) -> Drawn {
        self.warm = towards(self.warm, fire.sqrt().min(1.3), seconds, WARMS);
        let dense = self.cold.at(self.warm);
        let speed = speed * self.speed;
        let made = self.shut_off * speed * speed * dense.behind + self.stack * self.warm - self.against;
        let whole = (1.0 + self.leak).powi(2);
        let now = Way {
            intake: self.way.intake,
            primary: self.way.primary / dense.primary,
            secondary: self.way.secondary * narrowed(water) / dense.secondary,
            choke: self.way.choke / dense.behind * whole,
            vent: self.way.vent / dense.behind * whole,
        };
        let squared = made.max(0.0) / (now.whole() + self.inner / dense.behind * whole);
        let covered = match self.taps {
            Taps::CollectorToRoom | Taps::CollectorToBurnerBox => {
                ((water - WETS) / (COVERS - WETS)).clamp(0.0, 1.0)
            }
            Taps::AcrossChoke | Taps::BetweenCells => 0.0,
        };
        Drawn {
            air: squared.sqrt().max(STILL),
            leak: squared.sqrt() * self.leak,
            at_ports: squared * now.between(self.taps) * (1.0 - covered),
            suction: squared * (now.intake + now.primary / 2.0),
            wavers: self.waver + 0.25 * (water - 0.2).max(0.0) + 0.3 * (self.sagging - 0.2).max(0.0),
        }
    }
}

/// What the switch would come to see, cold and at steady fire, in.w.c., of two stages on low; hoses and water are not looked at.
pub fn draft_of(make: &Make, thermal: &Thermal) -> (f64, f64) {
    let Thermal {
        flue, inducer, room, ..
    } = thermal;
    let mut draft = Draft::new(make, flue, inducer, room);
    let (speed, fire) = (make.low_speed(), make.low_fire());
    let cold = draft.step(speed, 0.0, 0.0, 1.0).at_ports;
    (cold, draft.step(speed, fire, 0.0, 100.0 * WARMS).at_ports)
}

/// What a warm metal vent draws by itself, in.w.c.
fn stack_of(make: &Make) -> f64 {
    let height = spread(make.seed, Own::VentHeight, 12.0, 28.0);
    let vent = [height, make.outdoor, 300.0, make.altitude];
    worked(&theoretical_draft::FORMULA, vent, 0.0)
}

/// What the room holds back, in.w.c.
fn suction_of(room: &Room) -> f64 {
    room.negative + TIGHT_ROOM * room.starved.powi(3)
}

/// Suction in the connector of a warm metal vent, in.w.c.; below 0 where flue gas is pushed out of its joints.
///
/// The vent's height draws, and what is in the vent takes from it: half of what it draws in order, as tables size vents so that
/// draft is left over (memory, of the right order).
pub fn vent_suction(make: &Make, thermal: &Thermal) -> f64 {
    let flue = &thermal.flue;
    let stack = if flue.vent_parted > 0.5 {
        0.0
    } else {
        stack_of(make)
    };
    let in_vent = [flue.terminal_blocked, flue.vent_obstructed, flue.vent_sags].map(narrowed);
    let loses = 0.5 * in_vent.iter().product::<f64>() * (1.0 + flue.vent_overlong);
    stack * (1.0 - loses) - suction_of(&thermal.room) - 0.5 * flue.wind
}

/// How dense air is at an altitude, against sea level.
pub fn density(altitude: f64) -> f64 {
    let at = |feet: f64| worked(&air_density::FORMULA, [feet, 70.0], 0.0749);
    at(altitude) / at(0.0)
}
