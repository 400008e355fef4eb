//! Condensate, from the secondary exchanger through the trap.
//!
//! # References
//!
//! - How much water there is: the register's `condensate_natural`; what collectors and traps hold and let off: memory, of the
//!   right order.

use super::condition::Flue;
use super::register::worked;
use crate::bench::make::Make;
use crate::trade::condensate_natural;

/// Share of the water that a secondary exchanger condenses.
const CONDENSES: f64 = 70.0;
/// What a collector holds, gallons.
const HOLDS: f64 = 0.12;
/// What an open trap lets off, times what a furnace makes.
const LETS_OFF: f64 = 4.0;

/// Water in the collector.
#[derive(Clone, Copy, Debug)]
pub struct Water {
    /// Share of the collector that fills in a second of full fire.
    fills: f64,
    /// The same, that runs off.
    drains: f64,
    level: f64,
}

impl Water {
    /// The collector of a furnace, as its last call left it.
    pub fn new(make: &Make, flue: &Flue) -> Self {
        if !make.condensing {
            return Self {
                fills: 0.0,
                drains: 1.0,
                level: 0.0,
            };
        }
        let made = worked(&condensate_natural::FORMULA, [make.input, CONDENSES], 0.6);
        let fills = made / 3_600.0 / HOLDS;
        let drains = LETS_OFF * fills * (1.0 - flue.trap_blocked);
        let backs_up = (1.0 - drains / fills).max(0.0);
        Self {
            fills,
            drains,
            level: 0.7 * backs_up * flue.trap_blocked,
        }
    }

    /// Goes on by some seconds at a share of the rated fire; gives the share of the collector that is under water.
    pub fn step(&mut self, fire: f64, seconds: f64) -> f64 {
        let change = (self.fills * fire - self.drains * self.level.min(1.0).sqrt()) * seconds;
        self.level = (self.level + change).clamp(0.0, 0.95);
        self.level
    }
}
