//! The room the furnace stands in: the air it gives, and what comes back into it.
//!
//! # Equations
//!
//! In the steady state `CO in the room = what spills * its CO / (what spills + fresh air)`, flows in ft³/min.
//!
//! # References
//!
//! - About 10 ft³ of air for 1,000 BTU of gas, and the flue gas a little more (common practice). Fresh air of a basement:
//!   memory, of the right order.

use super::condition::{Flue, Room as Wrong};
use super::flame::Burns;
use super::heat::towards;
use super::shown::Shape;
use super::spread::{Own, spread};
use crate::bench::make::Make;

/// Flue gas for each BTU/h burned with just enough air, ft³/min.
const FLUE: f64 = 10.5 / 1_000.0 / 60.0;
/// Seconds in which a closed room fills with what spills, and a terminal with what it draws back.
const ROOM_FILLS: f64 = 600.0;
const TERMINAL_FILLS: f64 = 40.0;
/// Share of the flue gas that comes into the room where flame rolls back.
const ROLLED_OUT: f64 = 0.1;
/// Flue gas of a water heater that spills, ft³/min, and its CO, ppm.
const HEATER: f64 = 8.0;
const HEATER_CO: f64 = 250.0;

/// What the room and the terminal mix into the burners' air.
#[derive(Clone, Copy, Debug)]
pub struct Surroundings {
    drawn_back: f64,
    from_room: f64,
    parted: f64,
    spills: f64,
    fresh: f64,
    room: f64,
    terminal: f64,
}

impl Surroundings {
    /// Those of a furnace; one with a sealed intake breathes outdoor air, whatever its room is like.
    pub fn new(make: &Make, flue: &Flue, wrong: &Wrong) -> Self {
        let closed = wrong.starved.powi(2);
        Self {
            drawn_back: if make.condensing { flue.drawn_back } else { 0.0 },
            from_room: if make.condensing {
                0.0
            } else {
                0.22 * closed + 0.08 * flue.vent_parted
            },
            parted: flue.vent_parted,
            spills: wrong.spills + 0.5 * closed + (wrong.negative * 20.0).min(1.0) * 0.5,
            fresh: spread(make.seed, Own::FreshAir, 40.0, 120.0) * (1.0 - 0.8 * wrong.starved),
            room: 0.0,
            terminal: 0.0,
        }
    }

    /// Goes on by some seconds; gives the share of flue gas in the burners' air.
    pub fn step(&mut self, lit: bool, seconds: f64) -> f64 {
        let burning = f64::from(u8::from(lit));
        self.room = towards(self.room, self.from_room * burning, seconds, ROOM_FILLS);
        self.terminal = towards(self.terminal, self.drawn_back * burning, seconds, TERMINAL_FILLS);
        self.room + self.terminal
    }

    /// CO that the room comes to with the furnace burning so, ppm.
    pub fn co(&self, burns: &Burns) -> f64 {
        let rolls_back = burns.shape == Shape::RollsBack;
        let share = self.parted + if rolls_back { ROLLED_OUT } else { 0.0 };
        let out = FLUE * burns.heat * burns.air.max(0.5) * share;
        let heater = HEATER * self.spills.min(1.0);
        (out * burns.co + heater * HEATER_CO) / (out + heater + self.fresh)
    }
}
